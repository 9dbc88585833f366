// A session lives in its row: ending, expiring, disabling or taking a role away works at the very next request.
import { randomUUID } from 'node:crypto'
import { encode } from 'next-auth/jwt'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom, requestWith } from '../support/request'
import { buildSchool, couponForm, type School } from '../support/school'
import { changePassword, savePreferences } from '@/app/account/actions'
import { sendCoupon } from '@/app/learn/actions'
import { resetPassword } from '@/app/teach/actions'
import { openSession, sealSession, type SessionToken } from '@/app/_server/auth/cookie'
import { leave } from '@/app/_server/auth/enter'
import { homeOf, safeBack } from '@/app/_server/auth/home'
import { hashPassword } from '@/app/_server/auth/passwords'
import { endSession, startSession } from '@/app/_server/auth/sessions'
import { signInWithPassword } from '@/app/_server/auth/sign-in'
import { currentViewer, viewerForCookie } from '@/app/_server/auth/viewer'
import { isSameOrigin } from '@/app/_server/same-origin'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let slug: string
let school: School
let token: SessionToken
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  slug = randomUUID()
  school = await buildSchool(slug)
  token = await startSession(school.programId, school.people.student, null)
})

const seen = async (of: SessionToken = token) => viewerForCookie(await sealSession(of))
const set = (change: string) => database.query(`update "SignInSession" set ${change} where id = $1`, [token.sessionId])

describe('a session', () => {
  it('is its person, with roles read at this request', async () => {
    expect(await seen()).toEqual({
      programId: school.programId, personId: school.people.student, sessionId: token.sessionId, tabletId: null, roles: ['student'],
      locale: 'en', units: 'in', name: 'student Test', mustChangePassword: false,
    })
    await database.query(`update "Person" set locale = 'es', units = 'si' where id = $1`, [school.people.student])
    expect(await seen()).toMatchObject({ locale: 'es', units: 'mm' })
  })

  it('is over at once when it is ended', async () => {
    await endSession(token)
    expect(await seen()).toBeNull()
  })

  it('is over when it expires, whatever the cookie says', async () => {
    await set(`"expiresAt" = now() - interval '1 second'`)
    expect(await seen()).toBeNull()
  })

  it('is over after two hours without use, and not before', async () => {
    await set(`"lastSeenAt" = now() - interval '119 minutes'`)
    expect(await seen()).not.toBeNull()
    await set(`"lastSeenAt" = now() - interval '121 minutes'`)
    expect(await seen()).toBeNull()
  })

  it('is kept alive by use, written no more than once a minute', async () => {
    const lastSeen = async () => (await database.query<{ at: Date }>('select "lastSeenAt" as at from "SignInSession" where id = $1', [token.sessionId]))[0]?.at.getTime() ?? 0
    await set(`"lastSeenAt" = now() - interval '90 minutes'`)
    await seen()
    const first = await lastSeen()
    expect(Date.now() - first).toBeLessThan(60_000)
    await seen()
    expect(await lastSeen()).toBe(first)
  })

  it('is over when its person is disabled', async () => {
    await database.query('update "Person" set "disabledAt" = now() where id = $1', [school.people.student])
    expect(await seen()).toBeNull()
  })

  it('loses a role at the next request, and is over with the last one', async () => {
    await database.query(`insert into "Membership" ("programId", "personId", role) values ($1, $2, 'instructor')`, [school.programId, school.people.student])
    expect((await seen())?.roles.toSorted()).toEqual(['instructor', 'student'])
    await database.query(`delete from "Membership" where "personId" = $1 and role = 'instructor'`, [school.people.student])
    expect((await seen())?.roles).toEqual(['student'])
    await database.query('delete from "Membership" where "personId" = $1', [school.people.student])
    expect(await seen()).toBeNull()
  })

  it('is nobody’s in another program', async () => {
    const foreign = await buildSchool(randomUUID())
    expect(await seen({ programId: foreign.programId, sessionId: token.sessionId })).toBeNull()
  })

  it('ends with its cookie when the person leaves', async () => {
    await requestFrom({ school, who: 'student' })
    expect(await currentViewer()).not.toBeNull()
    await leave()
    expect(await currentViewer()).toBeNull()
    expect(await database.query('select 1 as row from "SignInSession" where "programId" = $1 and "endedAt" is null', [school.programId])).toHaveLength(1) // the one of beforeEach
  })
})

describe('a cookie', () => {
  const secret = process.env.NEXTAUTH_SECRET!

  it.each([['nothing', undefined], ['an empty one', ''], ['rubbish', 'rubbish'], ['dots', '....'], ['a token that nobody signed', `${btoa('{"alg":"none"}')}.${btoa('{"programId":"x","sessionId":"y"}')}.`]])(
    'that is %s is nobody', async (_what, cookie) => {
      expect(await viewerForCookie(cookie)).toBeNull()
    })

  it('sealed with another secret is nobody', async () => {
    expect(await openSession(await encode({ token: { ...token }, secret: `${secret}!`, maxAge: 3600 }))).toBeNull()
    expect(await openSession(await encode({ token: { ...token }, secret, maxAge: 3600 })), 'with ours it opens').toEqual(token)
  })

  it('that has expired is nobody', async () => {
    expect(await openSession(await encode({ token: { ...token }, secret, maxAge: -60 }))).toBeNull()
  })

  it('of another shape is nobody', async () => {
    expect(await openSession(await encode({ token: { sub: school.people.student, role: 'coordinator' }, secret }))).toBeNull()
    expect(await openSession(await encode({ token: { programId: 7, sessionId: token.sessionId }, secret }))).toBeNull()
  })

  it('changed in any part is nobody', async () => {
    const cookie = await sealSession(token)
    expect(await openSession(cookie)).toEqual(token)
    const parts = cookie.split('.')
    for (const [index, part] of parts.entries()) {
      if (part === '') continue // the middle part of a directly encrypted token is empty
      const changed = parts.with(index, part.replace(/./, (first) => (first === 'A' ? 'B' : 'A'))).join('.')
      expect(await openSession(changed), `part ${index}`).toBeNull()
    }
  })

  it('holds two ids and nothing about the person', async () => {
    expect(Object.keys((await openSession(await sealSession(token)))!)).toEqual(['programId', 'sessionId'])
  })
})

describe('its attributes', () => {
  const url = process.env.NEXTAUTH_URL!
  afterEach(() => {
    process.env.NEXTAUTH_URL = url
    vi.resetModules()
  })

  it('keep it from scripts, and over https from everything but this host', async () => {
    process.env.NEXTAUTH_URL = 'https://weld.example.org'
    vi.resetModules()
    const secure = await import('@/app/_server/auth/cookie')
    expect(secure.sessionCookieName()).toBe('__Host-toeline.session')
    // The __Host- prefix of RFC 6265bis asks for Secure, Path=/ and no Domain.
    expect(secure.sessionCookieOptions()).toEqual({ httpOnly: true, sameSite: 'lax', path: '/', secure: true })
  })

  it('let it work on plain http in development', async () => {
    vi.resetModules()
    const plain = await import('@/app/_server/auth/cookie')
    expect(plain.sessionCookieName()).toBe('toeline.session')
    expect(plain.sessionCookieOptions()).toEqual({ httpOnly: true, sameSite: 'lax', path: '/', secure: false })
  })
})

describe('a password', () => {
  const OLD = 'copper lathe winch tongs'
  const NEW = 'seven quiet herons wading'
  beforeEach(async () => {
    await database.query('update "Person" set "passwordHash" = $1 where id = $2', [await hashPassword(OLD), school.people.student])
  })
  const signIn = (password: string) => signInWithPassword({ programSlug: slug, signInName: 'student', password, address: slug, device: null })

  it('that is changed ends every other session and keeps this one', async () => {
    const here = await requestFrom({ school, who: 'student' })
    expect(await changePassword({ current: OLD, password: NEW })).toEqual({ ok: true, value: {} })
    expect(await seen(here!)).toMatchObject({ mustChangePassword: false })
    expect(await seen()).toBeNull()
    expect(await database.query(`select action from "AuditEvent" where "programId" = $1`, [school.programId])).toEqual([{ action: 'person.password' }])
  })

  it('is not changed by someone who does not know it, nor to a weak one, and guesses at it are counted', async () => {
    await requestFrom({ school, who: 'student' })
    expect(await changePassword({ current: OLD, password: 'short' })).toMatchObject({ ok: false, code: 'INVALID', fields: { password: expect.stringContaining('15') } })
    for (let index = 0; index < 10; index += 1) {
      expect(await changePassword({ current: 'a guess', password: NEW })).toMatchObject({ ok: false, code: 'INVALID', fields: { current: expect.any(String) } })
    }
    expect(await changePassword({ current: OLD, password: NEW })).toMatchObject({ ok: false, code: 'TOO_MANY' })
    expect(await seen(), 'and no session was ended').not.toBeNull()
  })

  it('that an instructor resets ends every session and opens only the way to one’s own password', async () => {
    await requestFrom({ school, who: 'instructor' })
    const reset = await resetPassword({ studentId: school.people.student })
    if (!reset.ok) throw new Error(reset.message)
    expect(reset.value.password).toMatch(/^[a-z]+-[a-z]+-[a-z]+-[a-z]+-\d{4}$/)
    expect(await seen()).toBeNull()
    const given = JSON.stringify(await database.query('select * from "AuditEvent" where "programId" = $1', [school.programId]))
    expect(given).toContain('person.password.reset')
    expect(given).not.toContain(reset.value.password)

    const student = await requestFrom({ school, who: 'student' })
    expect(await currentViewer()).toMatchObject({ mustChangePassword: true })
    expect(await sendCoupon(couponForm(school, randomUUID())), 'nothing but a new password first').toMatchObject({ ok: false, code: 'NEW_PASSWORD' })
    expect(await savePreferences({ locale: 'es', units: 'us' })).toMatchObject({ ok: true })
    expect(await changePassword({ current: reset.value.password, password: NEW })).toEqual({ ok: true, value: {} })
    requestWith(await sealSession(student!))
    expect(await currentViewer()).toMatchObject({ mustChangePassword: false, locale: 'es' })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: true })
  })

  it('that an instructor resets works at once, however often the student guessed before', async () => {
    for (let index = 0; index < 10; index += 1) await signIn('a guess')
    expect(await signIn(OLD)).toEqual({ kind: 'throttled' })
    await requestFrom({ school, who: 'instructor' })
    const reset = await resetPassword({ studentId: school.people.student })
    expect(await signIn(reset.ok ? reset.value.password : '')).toMatchObject({ kind: 'in' })
  })
})

describe('the way back after signing in', () => {
  it.each(['/', '/learn', '/learn/coupons/1?photo=late#top', '/teach?x=//y'])('stays on this site: %s', (back) => {
    expect(safeBack(back)).toBe(back)
  })

  it.each([undefined, '', 'learn', '//evil.example', '/\\evil.example', '\\\\evil.example', 'https://evil.example', 'javascript:alert(1)', '/\t/evil.example', '/\n/evil.example', '/x\\..\\y', ' /learn', '/\u0000'])(
    'never leads off it: %o', (back) => {
      expect(safeBack(back)).toBe('/')
    })

  it('is where most of a person’s work is', () => {
    const home = (...roles: readonly string[]) => homeOf({ roles } as never)
    expect([home('student'), home('student', 'instructor'), home('coordinator'), home('coordinator', 'instructor')]).toEqual(['/learn', '/teach', '/program', '/teach'])
  })
})

describe('a writing request', () => {
  const from = (headers: Record<string, string>) => isSameOrigin(new Request('http://localhost:3000/api/photos', { method: 'POST', headers }))

  it('is ours when the browser says so, or when an old one sends our origin', () => {
    expect(from({ 'sec-fetch-site': 'same-origin' })).toBe(true)
    expect(from({ origin: 'http://localhost:3000' })).toBe(true)
  })

  it.each([
    {}, { 'sec-fetch-site': 'cross-site' }, { 'sec-fetch-site': 'same-site' }, { 'sec-fetch-site': 'none' }, { 'sec-fetch-site': 'cross-site', origin: 'http://localhost:3000' },
    { origin: 'https://evil.example' }, { origin: 'http://localhost:3001' }, { origin: 'null' }, { origin: 'http://localhost:3000.evil.example' }, { referer: 'http://localhost:3000/' },
  ])('is not ours with %o', (headers) => {
    expect(from(headers as Record<string, string>)).toBe(false)
  })
})

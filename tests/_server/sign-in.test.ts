// Signing in: one answer to every wrong guess, a limit on guesses that a flood cannot pass, and passwords kept only as argon2id.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { buildSchool, type School } from '../support/school'
import { authOptions } from '@/app/_server/auth/options'
import { hashPassword, passwordMatches } from '@/app/_server/auth/passwords'
import { signInWithPassword, type SignInAttempt } from '@/app/_server/auth/sign-in'
import { viewerForPerson } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'

const verifications = vi.hoisted(() => ({ count: 0 }))
vi.mock('@node-rs/argon2', async (original) => {
  const real = await original<typeof import('@node-rs/argon2')>()
  return { ...real, verify: (...given: Parameters<typeof real.verify>) => { verifications.count += 1; return real.verify(...given) } }
})

const PASSWORD = 'copper lathe winch tongs'
let database: TestDatabase
let school: School
let slug: string
let passwordHash: string
beforeAll(async () => {
  database = await testDatabase()
  passwordHash = await hashPassword(PASSWORD)
})
beforeEach(async () => {
  slug = randomUUID()
  school = await buildSchool(slug)
  await database.query('update "Person" set "passwordHash" = $1 where "programId" = $2', [passwordHash, school.programId])
})

const attempt = (given: Partial<SignInAttempt> = {}) =>
  signInWithPassword({ programSlug: slug, signInName: 'student', password: PASSWORD, address: slug, device: 'a phone', ...given })
const wrong = (given: Partial<SignInAttempt> = {}) => attempt({ password: 'not the password', ...given })
const inTurn = async <T>(times: number, work: () => Promise<T>): Promise<T[]> => {
  const results: T[] = []
  for (let index = 0; index < times; index += 1) results.push(await work())
  return results
}
/** The window of a limit ends; nothing else changes. */
const windowEnds = () => database.query(`update "RateLimit" set expire = now() - interval '1 second'`)

describe('the right name and password', () => {
  it('start a session of that person, with the device it was on', async () => {
    const result = await attempt()
    expect(result).toEqual({ kind: 'in', token: { programId: school.programId, sessionId: expect.any(String) } })
    expect(await database.query('select "personId", device, "endedAt" from "SignInSession" where "programId" = $1', [school.programId]))
      .toEqual([{ personId: school.people.student, device: 'a phone', endedAt: null }])
  })

  it('are forgiven capitals, spaces and full-width letters in the name, and nothing in the password', async () => {
    expect(await attempt({ signInName: '  STUDENT ' })).toMatchObject({ kind: 'in' })
    expect(await attempt({ signInName: 'ｓｔｕｄｅｎｔ' })).toMatchObject({ kind: 'in' })
    expect(await attempt({ password: PASSWORD.toUpperCase() })).toEqual({ kind: 'wrong' })
    expect(await attempt({ password: `${PASSWORD} ` })).toEqual({ kind: 'wrong' })
  })

  it('compare as the same text however the keyboard composed it', async () => {
    const stored = await hashPassword('contraseña larga de taller')
    expect(await passwordMatches(stored, 'contrasen\u0303a larga de taller')).toBe(true)
    expect(await passwordMatches(stored, 'contrasena larga de taller')).toBe(false)
  })

  it('need no program while there is only one, and need it once there are two', async () => {
    await database.reset()
    await buildSchool('only')
    await database.query('update "Person" set "passwordHash" = $1', [passwordHash])
    expect(await attempt({ programSlug: null })).toMatchObject({ kind: 'in' })
    await buildSchool('second')
    expect(await attempt({ programSlug: null })).toEqual({ kind: 'wrong' })
    expect(await attempt({ programSlug: 'only' })).toMatchObject({ kind: 'in' })
    await database.query('update "Person" set "passwordHash" = $1', [await hashPassword('the other school’s own')])
    expect(await attempt({ programSlug: 'second' }), 'the same name in another program is another person').toEqual({ kind: 'wrong' })
  })
})

describe('anything else', () => {
  it.each([
    ['a wrong password', () => wrong()],
    ['an unknown name', () => attempt({ signInName: 'nobody' })],
    ['an unknown program', () => attempt({ programSlug: 'nowhere' })],
    ['an empty name', () => attempt({ signInName: '' })],
    ['an empty password', () => attempt({ password: '' })],
    ['a name no database keeps', () => attempt({ signInName: 'stu\u0000dent\u0000x' })],
    ['a program no database keeps', () => attempt({ programSlug: 'no\u0000where' })],
    ['a huge name', () => attempt({ signInName: 'x'.repeat(100_000) })],
  ])('%s is one answer, after one check of a password, and no session', async (_what, work) => {
    await attempt() // the decoy is made at the first sign-in
    verifications.count = 0
    await database.query('delete from "SignInSession"')
    expect(await work()).toEqual({ kind: 'wrong' })
    expect(verifications.count).toBe(1)
    expect(await database.query('select 1 as row from "SignInSession"')).toEqual([])
  })

  it('is the same answer for a disabled person and one without a password, even with the right one', async () => {
    await database.query('update "Person" set "disabledAt" = now() where id = $1', [school.people.student])
    await database.query('update "Person" set "passwordHash" = null where id = $1', [school.people.classmate])
    verifications.count = 0
    expect(await attempt()).toEqual({ kind: 'wrong' })
    expect(await attempt({ signInName: 'classmate' })).toEqual({ kind: 'wrong' })
    expect(verifications.count).toBe(2)
    expect(await viewerForPerson(school.programId, school.people.student)).toBeNull()
  })
})

describe('guessing', () => {
  it('stops after ten wrong passwords for one name: then even the right one waits for the window’s end', async () => {
    expect((await inTurn(10, wrong)).map(({ kind }) => kind)).toEqual(Array.from({ length: 10 }, () => 'wrong'))
    expect(await attempt()).toEqual({ kind: 'throttled' })
    expect(await attempt({ signInName: ' Student ', address: 'elsewhere' }), 'however the name is typed, wherever from').toEqual({ kind: 'throttled' })
    expect(await attempt({ signInName: 'classmate' }), 'others are not held up').toMatchObject({ kind: 'in' })
    await windowEnds()
    expect(await attempt()).toMatchObject({ kind: 'in' })
  })

  it('does not lengthen its window by trying on', async () => {
    await inTurn(10, wrong)
    const [before] = await database.query<{ expire: Date }>('select max(expire) as expire from "RateLimit" where key like \'name%\'')
    await inTurn(5, wrong)
    expect(await database.query('select max(expire) as expire from "RateLimit" where key like \'name%\'')).toEqual([before])
  })

  it('begins anew after a success', async () => {
    await inTurn(9, wrong)
    expect(await attempt()).toMatchObject({ kind: 'in' })
    expect((await inTurn(10, wrong)).map(({ kind }) => kind)).toEqual(Array.from({ length: 10 }, () => 'wrong'))
    expect(await attempt()).toEqual({ kind: 'throttled' })
  })

  it('checks no more than ten passwords when forty arrive at the same moment', async () => {
    await attempt({ signInName: 'classmate' })
    verifications.count = 0
    const results = await Promise.all(Array.from({ length: 40 }, () => wrong()))
    expect(results.filter(({ kind }) => kind === 'wrong')).toHaveLength(10)
    expect(verifications.count).toBe(10)
  })

  it('counts by address too, over all names, and gives right passwords back', async () => {
    const address = 'one shop'
    await inTurn(5, () => attempt({ address }))
    const points = () => database.query<{ points: number }>(`select points from "RateLimit" where key like 'address%' order by expire desc limit 1`)
    expect(await points()).toEqual([{ points: 0 }])
    await wrong({ address, signInName: 'nobody.one' })
    await wrong({ address, signInName: 'nobody.two' })
    expect(await points()).toEqual([{ points: 2 }])
    await database.query(`update "RateLimit" set points = 200 where key like 'address%' and points = 2`)
    expect(await attempt({ address })).toEqual({ kind: 'throttled' })
    expect(await attempt({ address: 'another shop' }), 'and a blocked address holds up no name').toMatchObject({ kind: 'in' })
  })

  it('keeps no name and no address in its counters', async () => {
    await wrong({ address: '203.0.113.9' })
    const keys = JSON.stringify(await database.query('select * from "RateLimit"'))
    expect(keys).not.toContain('student')
    expect(keys).not.toContain('203.0.113.9')
    expect(keys).not.toContain(school.programId)
  })
})

describe('a stored password', () => {
  it('is argon2id with at least 19 MiB, two passes and a salt of its own', async () => {
    const [first, second] = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)])
    // OWASP Password Storage Cheat Sheet: argon2id, m=19456 (19 MiB), t=2, p=1.
    expect(first).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    expect(first).not.toBe(second)
    expect(await passwordMatches(first, PASSWORD)).toBe(true)
    expect(await passwordMatches(null, 'a password nobody has'), 'the decoy opens nothing').toBe(false)
  })

  it('is never in what the sign-in route gives out', async () => {
    const provider = authOptions().providers[0] as unknown as { options: { authorize: (given: Record<string, string>, request: { headers: Record<string, string> }) => Promise<unknown> } }
    const authorize = (password: string) => provider.options.authorize({ program: slug, signInName: 'student', password }, { headers: { 'user-agent': 'a phone', 'x-forwarded-for': '198.51.100.1, 203.0.113.7' } })
    const given = await authorize(PASSWORD)
    expect(given).toEqual({ id: expect.any(String), programId: school.programId, sessionId: expect.any(String) })
    expect(await authorize('not it')).toBeNull()
    await inTurn(9, () => authorize('not it'))
    await expect(authorize(PASSWORD)).rejects.toThrow('throttled')
  })
})

it('puts two ids in the token and nothing in the session it shows the browser', async () => {
  const { jwt, session } = authOptions().callbacks ?? {}
  const token = { programId: school.programId, sessionId: randomUUID() }
  expect(await jwt?.({ token: { sub: 'x', name: 'student' }, user: { id: 'x', ...token }, account: null } as never)).toEqual(token)
  expect(await jwt?.({ token, user: undefined } as never)).toEqual(token)
  expect(await session?.({ session: { expires: 'later', user: { name: 'student' } } } as never)).toEqual({ expires: 'later' })
  expect(await db().person.count({ where: { programId: school.programId } })).toBe(6)
})

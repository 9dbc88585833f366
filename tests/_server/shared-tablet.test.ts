// A tablet the class shares: a PIN opens it for its students only, briefly, and only while it is open.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestByItself, requestFrom, sessionInJar, signedOutHere } from '../support/request'
import { buildSchool, couponForm, type School } from '../support/school'
import { tabletSignIn } from '@/app/(door)/tablet/actions'
import { changePassword, savePin } from '@/app/account/actions'
import { sendCoupon } from '@/app/learn/actions'
import { closeSharedTablet, newPin, openTabletHere } from '@/app/teach/classes/[classId]/tablet/actions'
import { hashPassword } from '@/app/_server/auth/passwords'
import { TABLET_IDLE_SECONDS } from '@/app/_server/auth/sessions'
import { currentTablet, tabletNames } from '@/app/_server/auth/tablet'
import { currentViewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { pinProblem } from '@/lib/schemas/pin'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
let pin: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  requestByItself(false)
  school = await buildSchool(randomUUID())
  await requestFrom({ school, who: 'instructor' })
  const made = await newPin({ studentId: school.people.student })
  pin = made.ok ? made.value.pin : ''
  expect(await openTabletHere({ classId: school.classId, name: 'Bench tablet' })).toMatchObject({ ok: true })
})

const enter = (personId = school.people.student, typed = pin) => tabletSignIn({ personId, pin: typed, locale: 'en' })
const session = async () => (await sessionInJar())?.sessionId ?? ''
const wrong = { ok: false, code: 'INVALID' }

describe('opening', () => {
  it('signs the instructor out there and shows the class’s own students, by as little of the name as tells them apart', async () => {
    expect(await currentViewer()).toBeNull()
    const tablet = (await currentTablet())!
    expect(tablet).toMatchObject({ classId: school.classId, name: 'Bench tablet' })
    expect((await tabletNames(tablet)).map(({ id }) => id).sort()).toEqual([school.people.student, school.people.classmate].sort())
    expect(await database.query('select "secretHash" from "SharedTablet" where "programId" = $1', [school.programId])).toEqual([{ secretHash: expect.stringMatching(/^[0-9a-f]{64}$/) }])
  })
})

describe('a PIN', () => {
  it('lets its student in, with a student’s rights and nothing of the account', async () => {
    expect(await enter()).toEqual({ ok: true, value: {} })
    expect(await currentViewer()).toMatchObject({ personId: school.people.student, roles: ['student'], tabletId: (await currentTablet())!.id })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: true })
    expect(await changePassword({ current: 'x', password: 'four-words-in-a-row-7' })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    expect(await savePin({ current: '', pin: '2841' })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })

  it('of one’s own is set with the password on a device of one’s own, and with nothing on a shared tablet', async () => {
    const PASSWORD = 'copper lathe winch tongs'
    const key = { programId_id: { programId: school.programId, id: school.people.student } }
    await enter()
    await db().person.update({ where: key, data: { passwordHash: await hashPassword(PASSWORD) } })
    for (const current of [PASSWORD, pin, '']) expect(await savePin({ current, pin: '2841' })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    const { pinHash } = await db().person.findUniqueOrThrow({ where: key })

    await requestFrom({ school, who: 'student' })
    for (const current of ['', 'not it', pin]) expect(await savePin({ current, pin: '2841' })).toMatchObject({ ...wrong, fields: { current: 'This is not your current password.' } })
    await db().person.update({ where: key, data: { locale: 'es' } })
    expect(await savePin({ current: 'not it', pin: '2841' })).toMatchObject({ ...wrong, fields: { current: 'Esta no es tu contraseña actual.' } })
    expect(await savePin({ current: PASSWORD, pin: '1234' })).toMatchObject({ ...wrong, fields: { pin: expect.stringMatching(/adivinan/) } })
    expect((await db().person.findUniqueOrThrow({ where: key })).pinHash, 'still the old one').toBe(pinHash)
    expect(await savePin({ current: PASSWORD, pin: '2841' })).toEqual({ ok: true, value: {} })
    expect((await db().person.findUniqueOrThrow({ where: key })).pinHash).not.toBe(pinHash)
  })

  it('of one’s own cannot be tried for with guesses at the password', async () => {
    const PASSWORD = 'copper lathe winch tongs'
    await db().person.update({ where: { programId_id: { programId: school.programId, id: school.people.student } }, data: { passwordHash: await hashPassword(PASSWORD) } })
    await requestFrom({ school, who: 'student' })
    for (let tries = 0; tries < 10; tries += 1) expect(await savePin({ current: `guess ${tries}`, pin: '2841' })).toMatchObject(wrong)
    expect(await savePin({ current: PASSWORD, pin: '2841' })).toMatchObject({ ok: false, code: 'TOO_MANY' })
  })

  it('that is wrong, that nobody set, and of somebody who is not of the class are one answer', async () => {
    const answers = [await enter(school.people.student, '0517'), await enter(school.people.classmate, pin), await enter(school.people.otherStudent, pin), await enter(school.people.instructor, pin)]
    for (const answer of answers) expect(answer).toMatchObject(wrong)
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
    expect(await currentViewer()).toBeNull()
  })

  it('is guessed five times, then not even the right one opens until it is made anew', async () => {
    for (let tries = 0; tries < 5; tries += 1) expect(await enter(school.people.student, '0517')).toMatchObject(wrong)
    expect(await enter()).toMatchObject({ ok: false, code: 'TOO_MANY' })
    await db().person.update({ where: { programId_id: { programId: school.programId, id: school.people.classmate } }, data: { pinHash: (await db().person.findFirstOrThrow({ where: { id: school.people.student } })).pinHash } })
    expect(await enter(school.people.classmate), 'somebody else is not shut out').toMatchObject({ ok: true })
  })

  it('opens nothing on a device that is no tablet of the class', async () => {
    await requestFrom(null)
    expect(await enter()).toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })

  it.each(['0000', '1234', '987654', '1212', '123123', '2468'])('%s is refused', (weak) => expect(pinProblem(weak, 'en')).toMatch(/guessed first/))
  it.each(['123', '1234567', '12a4', '', '١٢٣٤'])('“%s” is no PIN', (none) => expect(pinProblem(none, 'en')).toMatch(/4 to 6 digits/))
  it.each(['4826', '90517'])('%s will do', (good) => expect(pinProblem(good, 'en')).toBeNull())
})

describe('a session on a tablet', () => {
  it('ends after five idle minutes, and not before', async () => {
    await enter()
    const idle = (seconds: number) => database.query(`update "SignInSession" set "lastSeenAt" = now() - make_interval(secs => $2) where id = $1`, [session_, seconds])
    const session_ = await session()
    await idle(TABLET_IDLE_SECONDS - 5)
    expect(await currentViewer()).not.toBeNull()
    await idle(TABLET_IDLE_SECONDS + 1)
    expect(await currentViewer()).toBeNull()
  })

  it('does not live on by what a device sends by itself, which is still taken while it lives', async () => {
    await enter()
    const id = await session()
    const lastSeen = async () => (await db().signInSession.findFirstOrThrow({ where: { id } })).lastSeenAt
    await database.query(`update "SignInSession" set "lastSeenAt" = now() - interval '4 minutes' where id = $1`, [id])
    const before = await lastSeen()
    requestByItself(true)
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: true })
    expect(await lastSeen()).toEqual(before)
    requestByItself(false)
    expect(await currentViewer()).not.toBeNull()
    expect((await lastSeen()).getTime(), 'somebody at work').toBeGreaterThan(before.getTime() + 3 * 60_000)
    await database.query(`update "SignInSession" set "lastSeenAt" = now() - interval '6 minutes' where id = $1`, [id])
    requestByItself(true)
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'SIGNED_OUT' })
  })

  it('ends when the next student comes in', async () => {
    await enter()
    const first = await session()
    await db().person.updateMany({ where: { id: school.people.classmate }, data: { pinHash: (await db().person.findFirstOrThrow({ where: { id: school.people.student } })).pinHash } })
    await enter(school.people.classmate)
    expect((await db().signInSession.findFirstOrThrow({ where: { id: first } })).endedAt).not.toBeNull()
    expect(await currentViewer()).toMatchObject({ personId: school.people.classmate })
  })

  it.each([
    ['closed', () => closeIt()],
    ['past its time', () => database.query(`update "SharedTablet" set "expiresAt" = now() - interval '1 minute' where "programId" = $1`, [school.programId])],
    ['of a class that is archived', () => database.query(`update "Class" set "archivedAt" = now() where id = $1`, [school.classId])],
    ['of a class the student has left', () => database.query(`update "Enrolment" set "withdrawnAt" = now() where "classId" = $1 and "personId" = $2`, [school.classId, school.people.student])],
  ])('ends at the next request when the tablet is %s, and cannot begin again', async (_what, happen) => {
    await enter()
    const viewer = await currentViewer()
    expect(viewer).not.toBeNull()
    await happen()
    expect(await currentViewer()).toBeNull()
    signedOutHere()
    expect(await enter()).toMatchObject({ ok: false })
  })

  it('ends when the PIN is made anew', async () => {
    await enter()
    const old = await session()
    await requestFrom({ school, who: 'instructor' })
    expect(await newPin({ studentId: school.people.student })).toMatchObject({ ok: true })
    expect((await db().signInSession.findFirstOrThrow({ where: { id: old } })).endedAt).not.toBeNull()
  })
})

/** As the instructor would from their own device: the tablet keeps its cookie. */
async function closeIt(): Promise<void> {
  const { id: tabletId } = (await currentTablet())!
  const jar = await import('../support/request')
  const kept = await jar.headersModule.cookies()
  const cookies = [...['toeline.tablet', '__Host-toeline.tablet']].flatMap((name) => kept.get(name) ?? [])
  const student = await sessionInJar()
  await requestFrom({ school, who: 'instructor' })
  expect(await closeSharedTablet({ tabletId })).toMatchObject({ ok: true })
  await requestFrom(null)
  for (const { name, value } of cookies) kept.set(name, value ?? '')
  const { sealSession, sessionCookieName } = await import('@/app/_server/auth/cookie')
  kept.set(sessionCookieName(), await sealSession(student!))
}

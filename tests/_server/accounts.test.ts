// Accounts as a coordinator looks after them: made, reset, disabled; what ends by it has ended at the next request.
import { randomUUID } from 'node:crypto'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, viewerOf, type School } from '../support/school'
import { passwordMatches } from '@/app/_server/auth/passwords'
import { liveSession, startSession } from '@/app/_server/auth/sessions'
import { signInWithPassword } from '@/app/_server/auth/sign-in'
import { viewerForPerson, type Viewer } from '@/app/_server/auth/viewer'
import { changeNames, endSessions, makeInstructor, resetPassword, setDisabled, setRole } from '@/app/_server/data/accounts'
import { addInstructor, removeInstructor } from '@/app/_server/data/class-instructors'
import { findTaughtClass } from '@/app/_server/data/classes'
import { changeOwnPassword } from '@/app/_server/data/people'
import { listAccountHistory } from '@/app/_server/data/people-list'
import { setStudentPin } from '@/app/_server/data/pins'
import { listTablets, openTablet } from '@/app/_server/data/shared-tablets'
import { db } from '@/app/_server/db'
import { addStaff } from '@/app/program/people/actions'
import { newClassCode } from '@/app/teach/actions'

vi.mock('next/headers', async () => ({ ...(await import('../support/request')).headersModule }))
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let school: School
let coordinator: Viewer
let slug: string
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  slug = randomUUID()
  school = await buildSchool(slug)
  coordinator = await viewerOf(school, 'coordinator')
})
afterEach(() => requestFrom(null))

const nell = { givenName: 'Nell', familyName: 'Quarrie', signInName: 'n.quarrie', classId: null }
const enter = (signInName: string, password: string) => signInWithPassword({ programSlug: slug, signInName, password, address: randomUUID(), device: null })
const audited = async (subjectId: string): Promise<string[]> =>
  (await db().auditEvent.findMany({ where: { programId: school.programId, subjectId }, orderBy: { at: 'asc' } })).map(({ action }) => action)
const secondCoordinator = async (): Promise<string> =>
  (await db().person.create({ data: { programId: school.programId, signInName: 'second', givenName: 'Second', familyName: 'Test', memberships: { create: { role: 'coordinator' } } } })).id

describe('a new instructor', () => {
  it('signs in with the first password, must replace it, and teaches the class they were made for', async () => {
    const { personId, password } = await makeInstructor(coordinator, { ...nell, classId: school.classId })
    expect(password).toMatch(/^([a-z]+-){4}\d{4}$/)
    expect(await enter('n.quarrie', password)).toMatchObject({ kind: 'in' })
    const viewer = await viewerForPerson(school.programId, personId)
    if (!viewer) throw new Error('The new instructor is nobody.')
    expect(viewer).toMatchObject({ roles: ['instructor'], mustChangePassword: true })
    expect(await findTaughtClass(viewer, school.classId)).toMatchObject({ id: school.classId })
    expect(await audited(personId)).toEqual(['person.make'])
    expect(await audited(school.classId)).toEqual(['class.instructor.add'])

    await changeOwnPassword(viewer, { current: password, password: 'barn-owl-over-nine-fields' })
    expect(await viewerForPerson(school.programId, personId)).toMatchObject({ mustChangePassword: false })
    expect(await enter('n.quarrie', password)).toEqual({ kind: 'wrong' })
  })

  it('does nothing before the password is replaced', async () => {
    const { personId } = await makeInstructor(coordinator, { ...nell, classId: school.classId })
    await requestFrom({ school: { ...school, people: { ...school.people, instructor: personId } }, who: 'instructor' })
    expect(await newClassCode({ classId: school.classId })).toMatchObject({ ok: false, code: 'NEW_PASSWORD' })
  })

  it('whose sign-in name is taken, or whose class was archived meanwhile, is not made, and the field says why', async () => {
    await expect(makeInstructor(coordinator, { ...nell, signInName: 'student' })).rejects.toMatchObject({ code: 'INVALID', fields: { signInName: expect.stringContaining('taken') as string } })
    await db().class.update({ where: { programId_id: { programId: school.programId, id: school.classId } }, data: { archivedAt: new Date() } })
    await expect(makeInstructor(coordinator, { ...nell, classId: school.classId })).rejects.toMatchObject({ code: 'INVALID', fields: { classId: expect.stringContaining('not open') as string } })
    expect(await db().person.count({ where: { programId: school.programId, signInName: 'n.quarrie' } })).toBe(0)
  })

  it('is refused by the action with a sentence at each bad field', async () => {
    await requestFrom({ school, who: 'coordinator' })
    expect(await addStaff({ givenName: ' ', familyName: 'Quarrie', signInName: 'N Quarrie!', classId: '' })).toMatchObject({
      ok: false, code: 'INVALID', fields: { givenName: expect.any(String) as string, signInName: expect.any(String) as string },
    })
  })
})

describe('names', () => {
  it('are changed with what was there before, and sessions stay', async () => {
    const personId = school.people.student
    const token = await startSession(school.programId, personId, null)
    const names = { personId, givenName: 'Olive', familyName: 'Tarrant', signInName: 'o.tarrant' }
    await changeNames(coordinator, names)
    await changeNames(coordinator, names)
    expect(await viewerForPerson(school.programId, personId)).toMatchObject({ name: 'Olive Tarrant' })
    expect(await liveSession(token)).toMatchObject({ personId })
    expect(await db().auditEvent.findMany({ where: { subjectId: personId }, select: { action: true, before: true } })).toEqual([
      { action: 'person.change', before: { givenName: 'student', familyName: 'Test', signInName: 'student' } },
    ])
  })

  it('do not take another one’s sign-in name', async () => {
    await expect(changeNames(coordinator, { personId: school.people.student, givenName: 'Olive', familyName: 'Tarrant', signInName: 'classmate' }))
      .rejects.toMatchObject({ code: 'INVALID', fields: { signInName: expect.stringContaining('taken') as string } })
  })
})

describe('the history of an account', () => {
  it('says what was done and by whom, the latest first, and nothing of practice', async () => {
    const personId = school.people.student
    await setStudentPin(await viewerOf(school, 'instructor'), { studentId: personId })
    await setDisabled(coordinator, { personId, disabled: true })
    await db().auditEvent.create({ data: { programId: school.programId, actorId: personId, action: 'staff-note.write', subjectType: 'person', subjectId: personId } })
    expect((await listAccountHistory(coordinator, personId)).map(({ text, by }) => [text, by])).toEqual([['Account disabled', 'coordinator Test'], ['New PIN made', 'instructor Test']])
  })
})

describe('a disabled account', () => {
  it('is signed out at the next request and cannot sign in, until it is enabled', async () => {
    const { personId, password } = await makeInstructor(coordinator, nell)
    const token = await startSession(school.programId, personId, null)
    await setDisabled(coordinator, { personId, disabled: true })
    await setDisabled(coordinator, { personId, disabled: true })
    expect(await liveSession(token)).toBeNull()
    expect(await viewerForPerson(school.programId, personId)).toBeNull()
    expect(await enter('n.quarrie', password)).toEqual({ kind: 'wrong' })

    await setDisabled(coordinator, { personId, disabled: false })
    expect(await liveSession(token)).toBeNull()
    expect(await enter('n.quarrie', password)).toMatchObject({ kind: 'in' })
    expect(await audited(personId)).toEqual(['person.make', 'person.disable', 'person.enable'])
  })

  it('closes the shared tablets it opened, with whoever is signed in on them, and no others; enabled again they stay closed', async () => {
    const { programId, classId, people } = school
    await db().classInstructor.create({ data: { programId, classId, personId: people.otherInstructor } })
    const { id: theirs } = await openTablet(await viewerOf(school, 'instructor'), { classId, name: 'Bench tablet' })
    const { id: another } = await openTablet(await viewerOf(school, 'otherInstructor'), { classId, name: 'Door tablet' })
    const onTablet = async (tabletId: string) => {
      const { sessionId } = await startSession(programId, people.student, null)
      await db().signInSession.updateMany({ where: { programId, id: sessionId }, data: { tabletId } })
      return sessionId
    }
    const [ended, live] = [await onTablet(theirs), await onTablet(another)]
    await setDisabled(coordinator, { personId: people.instructor, disabled: true })
    const other = await viewerOf(school, 'otherInstructor')
    const names = async () => (await listTablets(other, classId)).map(({ name }) => name)
    expect(await names()).toEqual(['Door tablet'])
    const sessions = await db().signInSession.findMany({ where: { programId, id: { in: [ended, live] } }, select: { id: true, endedAt: true } })
    expect(sessions.filter(({ endedAt }) => endedAt !== null).map(({ id }) => id)).toEqual([ended])
    expect(await audited(theirs)).toEqual(['tablet.open', 'tablet.close'])
    await setDisabled(coordinator, { personId: people.instructor, disabled: false })
    expect(await names()).toEqual(['Door tablet'])
  })

  it('is never one’s own', async () => {
    await secondCoordinator()
    const self = { personId: school.people.coordinator }
    await expect(setDisabled(coordinator, { ...self, disabled: true })).rejects.toMatchObject({ code: 'CONFLICT' })
    await expect(resetPassword(coordinator, self)).rejects.toMatchObject({ code: 'CONFLICT' })
    await expect(endSessions(coordinator, self)).rejects.toMatchObject({ code: 'CONFLICT' })
    expect(await audited(school.people.coordinator)).toEqual([])
  })

  it('is never the last coordinator’s, also when two coordinators disable each other at once', async () => {
    const other = await secondCoordinator()
    const otherViewer = await viewerForPerson(school.programId, other)
    if (!otherViewer) throw new Error('The second coordinator is nobody.')
    const both = await Promise.allSettled([
      setDisabled(coordinator, { personId: other, disabled: true }), setDisabled(otherViewer, { personId: school.people.coordinator, disabled: true }),
    ])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(both.find(({ status }) => status === 'rejected')).toMatchObject({ reason: { code: 'CONFLICT' } })
    expect(await db().person.count({ where: { programId: school.programId, disabledAt: null, memberships: { some: { role: 'coordinator' } } } })).toBe(1)
  })
})

describe('a role', () => {
  const rolesOf = async (personId: string) => (await viewerForPerson(school.programId, personId))?.roles.toSorted()

  it('is given and taken, and holds from the next request', async () => {
    const personId = school.people.instructor
    await setRole(coordinator, { personId, role: 'coordinator', held: true })
    await setRole(coordinator, { personId, role: 'coordinator', held: true })
    expect(await rolesOf(personId)).toEqual(['coordinator', 'instructor'])
    await setRole(coordinator, { personId, role: 'coordinator', held: false })
    expect(await rolesOf(personId)).toEqual(['instructor'])
    expect(await audited(personId)).toEqual(['person.role.give', 'person.role.take'])
  })

  it('of an instructor stays while they teach an open class', async () => {
    const personId = school.people.instructor
    const take = { personId, role: 'instructor', held: false } as const
    await expect(setRole(coordinator, take)).rejects.toMatchObject({ code: 'CONFLICT', message: 'They still teach Class one, Fall. Take them off first.' })
    await db().class.updateMany({ where: { id: school.classId }, data: { archivedAt: new Date() } })
    await setRole(coordinator, take)
    expect(await rolesOf(personId)).toBeUndefined()
  })

  it('of one’s own coordinator is never taken, but a coordinator may teach', async () => {
    const personId = school.people.coordinator
    await secondCoordinator()
    await expect(setRole(coordinator, { personId, role: 'coordinator', held: false })).rejects.toMatchObject({ code: 'CONFLICT' })
    await setRole(coordinator, { personId, role: 'instructor', held: true })
    expect(await rolesOf(personId)).toEqual(['coordinator', 'instructor'])
    await expect(setRole(await viewerOf(school, 'instructor'), { personId: school.people.instructor, role: 'instructor', held: true })).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  it('of coordinator is left with somebody, also when two take it from each other at once', async () => {
    const other = await secondCoordinator()
    const otherViewer = await viewerForPerson(school.programId, other)
    if (!otherViewer) throw new Error('The second coordinator is nobody.')
    const both = await Promise.allSettled([
      setRole(coordinator, { personId: other, role: 'coordinator', held: false }), setRole(otherViewer, { personId: school.people.coordinator, role: 'coordinator', held: false }),
    ])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await db().membership.count({ where: { programId: school.programId, role: 'coordinator' } })).toBe(1)
  })
})

describe('a reset', () => {
  it('of a password by the coordinator ends every session and works once', async () => {
    const personId = school.people.instructor
    const token = await startSession(school.programId, personId, null)
    const { password } = await resetPassword(coordinator, { personId })
    expect(await liveSession(token)).toBeNull()
    expect(await enter('instructor', password)).toMatchObject({ kind: 'in' })
    expect(await viewerForPerson(school.programId, personId)).toMatchObject({ mustChangePassword: true })
    expect(await audited(personId)).toEqual(['person.password.reset'])
  })

  it('of a tablet PIN is the coordinator’s for every student, and an instructor’s for their own', async () => {
    const studentId = school.people.student
    const { pin } = await setStudentPin(coordinator, { studentId })
    const { pinHash } = await db().person.findFirstOrThrow({ where: { id: studentId } })
    expect(await passwordMatches(pinHash, pin)).toBe(true)
    await expect(setStudentPin(await viewerOf(school, 'otherInstructor'), { studentId })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await expect(setStudentPin(coordinator, { studentId: school.people.instructor })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await audited(studentId)).toEqual(['person.pin.reset'])
  })

  it('of sessions leaves the password and signs out everywhere', async () => {
    const personId = school.people.student
    const tokens = [await startSession(school.programId, personId, null), await startSession(school.programId, personId, null)]
    expect(await endSessions(coordinator, { personId })).toEqual({ ended: 2 })
    expect(await endSessions(coordinator, { personId })).toEqual({ ended: 0 })
    expect(await Promise.all(tokens.map(liveSession))).toEqual([null, null])
    expect(await audited(personId)).toEqual(['session.end-all'])
  })
})

describe('a second instructor', () => {
  it('whose account is disabled does not count as one who stays', async () => {
    await addInstructor(coordinator, { classId: school.classId, instructorId: school.people.otherInstructor })
    await setDisabled(coordinator, { personId: school.people.otherInstructor, disabled: true })
    await expect(removeInstructor(coordinator, { classId: school.classId, instructorId: school.people.instructor })).rejects.toMatchObject({ code: 'CONFLICT' })
    await removeInstructor(coordinator, { classId: school.classId, instructorId: school.people.otherInstructor })
  })

  it('taken off the class while at work is refused at the next request', async () => {
    const place = { classId: school.classId, instructorId: school.people.otherInstructor }
    await addInstructor(coordinator, place)
    await requestFrom({ school, who: 'otherInstructor' })
    expect(await newClassCode({ classId: school.classId })).toMatchObject({ ok: true })
    await removeInstructor(coordinator, place)
    expect(await newClassCode({ classId: school.classId })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await expect(setStudentPin(await viewerOf(school, 'otherInstructor'), { studentId: school.people.student })).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })
})

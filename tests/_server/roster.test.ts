// A roster comes in whole or not at all, and only as it was shown; who leaves a class, and who teaches it no more, holds from the next request.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { buildSchool, viewerOf, type School } from '../support/school'
import { resetPassword, setDisabled, setRole } from '@/app/_server/data/accounts'
import { addInstructor, removeInstructor } from '@/app/_server/data/class-instructors'
import { findTaughtClass, listOwnClasses } from '@/app/_server/data/classes'
import { listRoster, ROSTER_A_PAGE } from '@/app/_server/data/class-roster'
import { moveStudent, readmitStudent, withdrawStudent } from '@/app/_server/data/enrolments'
import { setStudentPin } from '@/app/_server/data/pins'
import { dryRunRoster, importRoster } from '@/app/_server/data/roster'
import type { Viewer } from '@/app/_server/auth/viewer'

let database: TestDatabase
let school: School
let coordinator: Viewer
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  coordinator = await viewerOf(school, 'coordinator')
})

/** The first page of a roster, of everyone. */
const WHOLE = { search: '', after: null, before: null } as const
const HEAD = 'username,givenName,familyName,booth'
const file = (...lines: string[]) => ({ classId: school.classId, text: [HEAD, ...lines].join('\n') })
const count = async (table: 'Person' | 'Enrolment' | 'Membership' | 'AuditEvent'): Promise<number> =>
  Number((await database.query(`select count(*)::int as n from "${table}" where "programId" = $1`, [school.programId]))[0]?.['n'])
const everything = async () => Promise.all((['Person', 'Enrolment', 'Membership', 'AuditEvent'] as const).map(count))

describe('a roster', () => {
  it('is shown without writing anything, then does what was shown', async () => {
    await withdrawStudent(coordinator, { classId: school.classId, studentId: school.people.classmate })
    const roster = file('student,student,Test,1', 'classmate,classmate,Test,9', 'other.student,Olive,Test,3', 'a.quint,Ada,Quint,4', 'instructor,In,Structor,5')
    const before = await everything()
    const plan = await dryRunRoster(coordinator, roster)
    expect(await everything()).toEqual(before)
    expect(plan.lines.map(({ line, outcome }) => [line, outcome])).toEqual([[2, 'unchanged'], [3, 'changed'], [4, 'added'], [5, 'added'], [6, 'rejected']])

    expect(await importRoster(coordinator, { ...roster, shown: plan.shown })).toMatchObject({ imported: true })
    expect((await listRoster(coordinator, school.classId, WHOLE))?.students.map(({ name, signInName, booth, withdrawnAt }) => [name, signInName, booth, withdrawnAt])).toEqual([
      ['Ada Quint', 'a.quint', 4, null], ['Olive Test', 'other.student', 3, null], ['classmate Test', 'classmate', 9, null], ['student Test', 'student', 1, null],
    ])
    expect(await database.query('select "passwordHash", units from "Person" where "programId" = $1 and "signInName" = $2', [school.programId, 'a.quint'])).toEqual([{ passwordHash: null, units: 'us' }])
    expect(await database.query(`select action, after->>'what' as what from "AuditEvent" where "programId" = $1 and action like 'roster.%' order by 1, 2`, [school.programId])).toEqual([
      { action: 'roster.added', what: 'has an account, joins this class; name other.student Test → Olive Test' },
      { action: 'roster.added', what: 'new account' },
      { action: 'roster.changed', what: 'readmitted; booth 2 → 9' },
    ])
    expect((await dryRunRoster(coordinator, roster)).lines.slice(0, 4).map(({ outcome }) => outcome)).toEqual(Array(4).fill('unchanged'))
  })

  it('is not brought in when the people changed since it was shown: the new dry run comes instead', async () => {
    const roster = file('student,student,Test,1', 'a.quint,Ada,Quint,4')
    const { shown } = await dryRunRoster(coordinator, roster)
    await withdrawStudent(coordinator, { classId: school.classId, studentId: school.people.student })
    const people = await count('Person')
    const answer = await importRoster(coordinator, { ...roster, shown })
    expect(answer).toMatchObject({ imported: false, plan: { lines: [{ outcome: 'changed', reason: 'readmitted' }, { outcome: 'added' }] } })
    expect(await count('Person')).toBe(people)
    expect(await importRoster(coordinator, { ...roster, shown: answer.plan.shown })).toMatchObject({ imported: true })
  })

  it('says what is wrong with a file it cannot read', async () => {
    await expect(dryRunRoster(coordinator, { classId: school.classId, text: 'username\na.b' })).rejects.toMatchObject({ code: 'INVALID', fields: { text: expect.stringContaining('no column for') } })
  })

  it('of 5,000 students comes in within twenty seconds', async () => {
    const roster = file(...Array.from({ length: 5000 }, (_, index) => `s${index}.many,Given${index},Family${index},`))
    const { shown } = await dryRunRoster(coordinator, roster)
    const start = performance.now()
    expect(await importRoster(coordinator, { ...roster, shown })).toMatchObject({ imported: true })
    expect(performance.now() - start).toBeLessThan(20_000)
    expect((await listRoster(coordinator, school.classId, WHOLE))?.active).toBe(5002)
  }, 60_000)

  it('leaves nothing behind when the connection dies half-way', async () => {
    const roster = file('a.quint,Ada,Quint,4', 'b.ryder,Bo,Ryder,5')
    const { shown } = await dryRunRoster(coordinator, roster)
    const before = await everything()
    // The backend is ended from within, when the people are written and the enrolments are not.
    await database.query(`create function end_half_way() returns trigger language plpgsql as $$ begin perform pg_terminate_backend(pg_backend_pid()); return new; end $$`)
    await database.query(`create trigger end_half_way before insert on "Enrolment" for each row execute function end_half_way()`)
    try {
      await expect(importRoster(coordinator, { ...roster, shown })).rejects.toThrow()
    } finally {
      await database.query('drop trigger end_half_way on "Enrolment"')
      await database.query('drop function end_half_way()')
    }
    expect(await everything()).toEqual(before)
    expect(await importRoster(coordinator, { ...roster, shown })).toMatchObject({ imported: true })
  })
})

describe('the list of a class', () => {
  it('says who cannot get in yet, whose account is disabled, and who is staff as well', async () => {
    const of = async (who: 'student' | 'classmate') => (await listRoster(coordinator, school.classId, WHOLE))?.students.find(({ id }) => id === school.people[who])
    expect(await of('student')).toMatchObject({ hasPassword: false, hasPin: false, disabled: false, staff: false })
    await resetPassword(coordinator, { personId: school.people.student })
    await setStudentPin(coordinator, { studentId: school.people.student })
    await setDisabled(coordinator, { personId: school.people.student, disabled: true })
    await setRole(coordinator, { personId: school.people.classmate, role: 'instructor', held: true })
    expect(await of('student')).toMatchObject({ hasPassword: true, hasPin: true, disabled: true, staff: false })
    expect(await of('classmate')).toMatchObject({ hasPassword: false, hasPin: false, disabled: false, staff: true })
  })
})

describe('a student', () => {
  it('who is withdrawn keeps their record and has the class no more, until readmitted', async () => {
    const place = { classId: school.classId, studentId: school.people.student }
    const student = await viewerOf(school, 'student')
    await withdrawStudent(coordinator, place)
    expect(await listOwnClasses(student)).toEqual([])
    expect((await listRoster(coordinator, school.classId, WHOLE))?.students.at(-1)).toMatchObject({ id: place.studentId, withdrawnAt: expect.any(Date) })
    await readmitStudent(coordinator, place)
    await readmitStudent(coordinator, place)
    expect(await listOwnClasses(student)).toMatchObject([{ id: school.classId, booth: 1 }])
    expect(await database.query(`select action from "AuditEvent" where "programId" = $1 and "subjectId" = $2 order by at, id`, [school.programId, place.studentId]))
      .toEqual([{ action: 'enrolment.withdraw' }, { action: 'enrolment.readmit' }])
  })

  it('moves to another class in one step', async () => {
    await moveStudent(coordinator, { classId: school.classId, studentId: school.people.student, toClassId: school.otherClassId })
    expect(await listOwnClasses(await viewerOf(school, 'student'))).toMatchObject([{ id: school.otherClassId, booth: null }])
    await expect(moveStudent(coordinator, { classId: school.classId, studentId: school.people.classmate, toClassId: randomUUID() })).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })
})

describe('an instructor', () => {
  it('added to a class teaches it, and taken off it finds it no more', async () => {
    const second = { classId: school.classId, instructorId: school.people.otherInstructor }
    const viewer = await viewerOf(school, 'otherInstructor')
    expect(await findTaughtClass(viewer, school.classId)).toBeNull()
    await addInstructor(coordinator, second)
    expect(await findTaughtClass(viewer, school.classId)).toMatchObject({ id: school.classId })
    await removeInstructor(coordinator, second)
    expect(await findTaughtClass(viewer, school.classId)).toBeNull()
    await expect(withdrawStudent(viewer, { classId: school.classId, studentId: school.people.student })).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  it('who is the last stays, also when two are taken off at once', async () => {
    await addInstructor(coordinator, { classId: school.classId, instructorId: school.people.otherInstructor })
    const both = await Promise.allSettled([school.people.instructor, school.people.otherInstructor].map((instructorId) => removeInstructor(coordinator, { classId: school.classId, instructorId })))
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await database.query('select 1 as row from "ClassInstructor" where "classId" = $1', [school.classId])).toHaveLength(1)
  })

  it('who is only a student cannot be made one here', async () => {
    await expect(addInstructor(coordinator, { classId: school.classId, instructorId: school.people.student })).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })
})

describe('the roster of a large class', () => {
  it('is read page by page there and back, the withdrawn last, without missing or doubling anyone', async () => {
    await importRosterOf(120)
    const withdrawn = (await database.query(`select id from "Person" where "programId" = $1 and "signInName" in ('s3.many', 's70.many') order by "signInName" desc`, [school.programId])).map(({ id }) => String(id))
    for (const studentId of withdrawn) await withdrawStudent(coordinator, { classId: school.classId, studentId })
    const read = async (place: { after?: string; before?: string }) => (await listRoster(coordinator, school.classId, { ...WHOLE, ...place }))!
    const pages = [await read({})]
    while (pages.at(-1)?.after) pages.push(await read({ after: pages.at(-1)?.after ?? '' }))
    expect(pages.map(({ students }) => students.length)).toEqual([ROSTER_A_PAGE, ROSTER_A_PAGE, 22])
    const ids = pages.flatMap(({ students }) => students.map(({ id }) => id))
    expect(new Set(ids).size).toBe(122)
    expect(ids.slice(-2)).toEqual(withdrawn)
    expect(pages[0]).toMatchObject({ found: 122, active: 120, withdrawn: 2, withoutPassword: 120, before: null })

    const back = [pages[2]!]
    while (back[0]?.before) back.unshift(await read({ before: back[0].before }))
    expect(back.flatMap(({ students }) => students.map(({ id }) => id))).toEqual(ids)
    const [left] = withdrawn
    expect((await read({ before: left ?? '' })).students.at(-1)?.id, 'before the first who left is the last active one').toBe(ids.at(-3))
    expect((await read({ after: left ?? '' })).students.map(({ id }) => id)).toEqual(withdrawn.slice(1))
  })

  it('is searched by name and sign-in name, for staff of the class only', async () => {
    await importRosterOf(60)
    const found = await listRoster(coordinator, school.classId, { ...WHOLE, search: 'family57 GIVEN' })
    expect(found?.students.map(({ signInName }) => signInName)).toEqual(['s57.many'])
    expect(found).toMatchObject({ found: 1, active: 62, after: null, before: null })
    expect(await listRoster(await viewerOf(school, 'otherInstructor'), school.classId, WHOLE)).toBeNull()
    expect(await listRoster(await viewerOf(school, 'student'), school.classId, WHOLE)).toBeNull()
  })
})

async function importRosterOf(students: number): Promise<void> {
  const roster = file(...Array.from({ length: students }, (_, index) => `s${index}.many,Given${index},Family${index},`))
  await importRoster(coordinator, { ...roster, shown: (await dryRunRoster(coordinator, roster)).shown })
}

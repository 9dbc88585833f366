// The list of people: found by name, role, class and state, page by page without missing or doubling anyone, also of 5,000.
import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { buildSchool, viewerOf, type School } from '../support/school'
import { startSession } from '@/app/_server/auth/sessions'
import type { Viewer } from '@/app/_server/auth/viewer'
import { setDisabled } from '@/app/_server/data/accounts'
import { withdrawStudent } from '@/app/_server/data/enrolments'
import { findPerson, listPeople, PEOPLE_A_PAGE } from '@/app/_server/data/people-list'
import { db } from '@/app/_server/db'
import { PEOPLE_DEFAULTS, type PeopleOptions } from '@/lib/reports/people-options'

let school: School
let coordinator: Viewer
let database: TestDatabase
beforeAll(async () => {
  database = await testDatabase()
  await buildSchool('south')
  school = await buildSchool('north')
  coordinator = await viewerOf(school, 'coordinator')
})

async function page(viewer: Viewer, asked: Partial<PeopleOptions>) {
  const found = await listPeople(viewer, { ...PEOPLE_DEFAULTS, ...asked })
  if (!found) throw new Error('The list is not there for the coordinator.')
  return found
}
const names = async (asked: Partial<PeopleOptions>, viewer = coordinator): Promise<string[]> => (await page(viewer, asked)).people.map(({ signInName }) => signInName).sort()

describe('the list of people', () => {
  it('holds the people of the program and of no other', async () => {
    expect(await names({})).toEqual(['classmate', 'coordinator', 'instructor', 'other.instructor', 'other.student', 'student'])
  })

  it('narrows by role, class and state, and says what it knows of each', async () => {
    expect(await names({ role: 'instructor' })).toEqual(['instructor', 'other.instructor'])
    expect(await names({ classId: school.classId })).toEqual(['classmate', 'instructor', 'student'])
    expect(await names({ classId: school.classId, role: 'student' })).toEqual(['classmate', 'student'])
    expect(await names({ state: 'active' })).toEqual([])
    await db().person.update({ where: { programId_id: { programId: school.programId, id: school.people.student } }, data: { passwordHash: 'set' } })
    await setDisabled(coordinator, { personId: school.people.otherStudent, disabled: true })
    expect(await names({ state: 'active' })).toEqual(['student'])
    expect(await names({ state: 'disabled' })).toEqual(['other.student'])
    expect(await names({ state: 'no-password' })).toEqual(['classmate', 'coordinator', 'instructor', 'other.instructor'])
    await startSession(school.programId, school.people.student, null)
    expect((await page(coordinator, { search: 'student', state: 'active' })).people).toMatchObject([
      { name: 'student Test', roles: ['student'], classes: ['Class one'], state: 'active', lastSignIn: expect.any(Date) as Date },
    ])
    await withdrawStudent(coordinator, { classId: school.classId, studentId: school.people.classmate })
    expect(await names({ classId: school.classId })).toEqual(['instructor', 'student'])
  })

  it('finds every word of the search in a name or the sign-in name, whatever the case', async () => {
    await db().person.create({ data: { programId: school.programId, signInName: 'i.ashcombe_9', givenName: 'Inés', familyName: 'Ashcombe 50%' } })
    expect(await names({ search: 'ASHC inés' })).toEqual(['i.ashcombe_9'])
    expect(await names({ search: 'i.ash' })).toEqual(['i.ashcombe_9'])
    expect(await names({ search: 'ashcombe olive' })).toEqual([])
  })

  it('takes the signs of a pattern for themselves', async () => {
    expect(await names({ search: '%' })).toEqual(['i.ashcombe_9'])
    expect(await names({ search: '_' })).toEqual(['i.ashcombe_9'])
    expect(await names({ search: '\\' })).toEqual([])
  })
})

describe('of 5,000 people', () => {
  let many: School
  let viewer: Viewer
  const COUNT = 5000
  beforeAll(async () => {
    many = await buildSchool('many')
    viewer = await viewerOf(many, 'coordinator')
    // Names repeat, so that pages part people of one name.
    const people = Array.from({ length: COUNT }, (_, i) => ({ programId: many.programId, id: randomUUID(), signInName: `p${i}`, givenName: `Given${i % 7}`, familyName: `Family${i % 40}` }))
    await db().person.createMany({ data: people })
    await db().membership.createMany({ data: people.map(({ programId, id: personId }) => ({ programId, personId, role: 'student' as const })) })
    // What the database's own upkeep does after a while: without it the planner takes the school for an empty one.
    await database.query('analyze')
  }, 60_000)

  async function walk(asked: Partial<PeopleOptions>): Promise<{ ids: string[]; pages: number; last: Awaited<ReturnType<typeof page>> }> {
    const ids: string[] = []
    let last = await page(viewer, asked)
    for (let pages = 1; ; pages += 1) {
      ids.push(...last.people.map(({ id }) => id))
      if (last.after === null) return { ids, pages, last }
      last = await page(viewer, { ...asked, after: last.after })
    }
  }

  it('every page holds the next ones: nobody twice, nobody missing', async () => {
    const { ids, pages } = await walk({ role: 'student', search: 'given3' })
    const expected = await db().person.findMany({ where: { programId: many.programId, givenName: 'Given3' }, orderBy: [{ familyName: 'asc' }, { givenName: 'asc' }, { id: 'asc' }], select: { id: true } })
    expect(ids).toEqual(expected.map(({ id }) => id))
    expect(pages).toBe(Math.ceil(expected.length / PEOPLE_A_PAGE))
    expect((await page(viewer, {})).total).toBe(COUNT + 6)
  }, 60_000)

  it('the page before is the one that was there', async () => {
    const first = await page(viewer, {})
    const second = await page(viewer, { after: first.after })
    const third = await page(viewer, { after: second.after })
    expect(first.before).toBeNull()
    const back = await page(viewer, { before: third.before })
    expect(back.people.map(({ id }) => id)).toEqual(second.people.map(({ id }) => id))
    const start = await page(viewer, { before: back.before })
    expect(start.people.map(({ id }) => id)).toEqual(first.people.map(({ id }) => id))
    expect(start.before).toBeNull()
    expect(start.after).toBe(first.after)
  })

  it('somebody who comes meanwhile neither doubles nor hides a line', async () => {
    const first = await page(viewer, {})
    const second = await page(viewer, { after: first.after })
    await db().person.create({ data: { programId: many.programId, signInName: 'early', givenName: 'Early', familyName: 'AAA' } })
    expect((await page(viewer, { after: first.after })).people.map(({ id }) => id)).toEqual(second.people.map(({ id }) => id))
  })

  it('a page deep in is read from the index, not counted from the start', async () => {
    const { last } = await walk({ search: 'family39' })
    const start = performance.now()
    await page(viewer, { after: last.people[0]?.id ?? null })
    expect(performance.now() - start).toBeLessThan(1000)
  }, 60_000)

  it('a person of another program starts no page of this one', async () => {
    expect((await page(viewer, { after: school.people.student })).people.map(({ id }) => id)).toEqual((await page(viewer, {})).people.map(({ id }) => id))
  })
})

describe('one person', () => {
  it('is shown with classes, sessions and last sign-in', async () => {
    const id = school.people.classmate
    await startSession(school.programId, id, 'Mozilla/5.0 (Windows NT 10.0) Firefox/140.0')
    const ended = await startSession(school.programId, id, 'gone')
    await db().signInSession.update({ where: { programId_id: { programId: school.programId, id: ended.sessionId } }, data: { endedAt: new Date() } })
    const idle = await startSession(school.programId, id, 'idle')
    await db().signInSession.update({ where: { programId_id: { programId: school.programId, id: idle.sessionId } }, data: { lastSeenAt: new Date(Date.now() - 3 * 3600_000) } })
    const person = await findPerson(coordinator, id)
    expect(person).toMatchObject({ name: 'classmate Test', self: false, hasPin: false, lastSignIn: expect.any(Date) as Date, teaches: [], attends: [{ classId: school.classId, withdrawn: true, archived: false }] })
    expect(person?.sessions.map(({ device }) => device)).toEqual(['Mozilla/5.0 (Windows NT 10.0) Firefox/140.0'])
    expect(await findPerson(coordinator, school.people.coordinator)).toMatchObject({ self: true })
  })
})

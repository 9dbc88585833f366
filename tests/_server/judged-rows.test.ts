// What was judged stays as it was judged: the database itself refuses to change it, whoever asks.
import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'

let database: TestDatabase
let school: School
beforeAll(async () => {
  database = await testDatabase()
  school = await buildSchool('north')
  await logAs(school, await viewerOf(school, 'student'), randomUUID())
})

const everyRow = (table: string) => database.query<{ row: Record<string, unknown> }>(`select to_json(t) as row from "${table}" t order by to_json(t)::text`)

const KEPT: readonly (readonly [table: string, change: string])[] = [
  ['Scorecard', `verdict = 'accept'`],
  ['Scorecard', 'mark = 100'],
  ['Scorecard', `"scoringVersion" = 'newer'`],
  ['Finding', `verdict = 'accept'`],
  ['Finding', 'measured = 0'],
  ['Finding', `detail = '{}'`],
  ['Inspection', `readings = '{}'`],
  ['Inspection', `"submittedAt" = now()`],
  ['Inspection', '"revision" = 9'],
  ['Inspection', `kind = 'instructor'`],
  ['Inspection', '"inspectorId" = "inspectorId"'],
  ['CriteriaSet', `document = '{}'`],
  ['CriteriaSet', `title = 'Softer'`],
  ['ExerciseVersion', '"lengthMm" = 1'],
  ['AuditEvent', `action = 'nothing'`],
]

describe.each(KEPT)('%s', (table, change) => {
  it(`refuses to set ${change}`, async () => {
    const before = await everyRow(table)
    expect(before.length).toBeGreaterThan(0)
    await expect(database.query(`update "${table}" set ${change}`)).rejects.toThrow(`Rows of ${table} are only ever added.`)
    expect(await everyRow(table)).toEqual(before)
  })
})

describe.each(['Scorecard', 'Finding', 'Inspection', 'CriteriaSet', 'ExerciseVersion', 'AuditEvent'])('%s', (table) => {
  it('refuses to be deleted from', async () => {
    const before = await everyRow(table)
    await expect(database.query(`delete from "${table}"`)).rejects.toThrow()
    expect(await everyRow(table)).toEqual(before)
  })
})

it('lets an inspection be superseded, which is how a correction is made', async () => {
  await database.query('update "Inspection" set "supersededAt" = now()')
  expect((await everyRow('Inspection')).map(({ row }) => row['supersededAt'])).toEqual([expect.any(String)])
})

it('refuses a row that points into another program', async () => {
  const foreign = await buildSchool('south')
  await expect(database.query('insert into "Enrolment" ("programId", "classId", "personId") values ($1, $2, $3)', [school.programId, school.classId, foreign.people.student]))
    .rejects.toThrow('foreign key')
  await expect(database.query('insert into "Comment" ("programId", id, "couponId", "authorId", body) select $1, gen_random_uuid(), id, $2, \'hello\' from "Coupon"', [foreign.programId, foreign.people.student]))
    .rejects.toThrow('foreign key')
})

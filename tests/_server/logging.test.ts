// A coupon on its way in: one transaction, once, numbered in order, and only where the student belongs.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { countRows, withoutAudit } from '../support/rows'
import { buildSchool, cleanReadings, couponForm, logAs, viewerOf, type School } from '../support/school'
import { sendCoupon } from '@/app/learn/actions'
import { findCoupon } from '@/app/_server/data/coupon-record'
import { holdSkill } from '@/app/_server/data/skills'
import { db } from '@/app/_server/db'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  await requestFrom({ school, who: 'student' })
})

const NOTHING = { Coupon: 0, Pass: 0, Inspection: 0, Scorecard: 0, Finding: 0, SkillSummary: 0, Comment: 0, AuditEvent: 0 }
const hidden = { ok: false, code: 'NOT_FOUND', message: 'This is not here, or not yours to see.', fields: {} }

describe('one coupon', () => {
  it('becomes a coupon, its pass, inspection, scorecard, findings, skill and audit row', async () => {
    const id = randomUUID()
    expect(await sendCoupon(couponForm(school, id))).toEqual({ ok: true, value: { id, number: 1, created: true } })
    const { Finding, ...counts } = await countRows(database, school.programId)
    expect(counts).toEqual({ ...NOTHING, Finding: undefined, Coupon: 1, Pass: 1, Inspection: 1, Scorecard: 1, SkillSummary: 1, AuditEvent: 1 })
    expect(Finding).toBeGreaterThan(5)
    expect(await database.query('select action, "actorId", "subjectId", after from "AuditEvent" where "programId" = $1', [school.programId])).toEqual([
      { action: 'coupon.log', actorId: school.people.student, subjectId: id, after: { exerciseId: school.exerciseId, version: 1, number: 1, verdict: 'accept' } },
    ])
    expect(await database.query('select "couponCount", "waitingCount", "inspectedCount", "lastVerdict" from "SkillSummary" where "programId" = $1', [school.programId]))
      .toEqual([{ couponCount: 1, waitingCount: 1, inspectedCount: 0, lastVerdict: 'accept' }])
    expect(await database.query('select "selfVerdict", verdict, mark, booth, "waitingSince" is not null as waiting from "Coupon" where id = $1', [id]))
      .toEqual([{ selfVerdict: 'accept', verdict: null, mark: null, booth: 1, waiting: true }])
  })

  it('leaves nothing at all when its audit row cannot be written', async () => {
    const failure = await withoutAudit(database, () => sendCoupon(couponForm(school, randomUUID())))
    expect(failure).toBeInstanceOf(Error)
    expect(String(failure)).toContain('the audit trail is full')
    expect(await countRows(database, school.programId)).toEqual(NOTHING)
    expect(await sendCoupon(couponForm(school, randomUUID())), 'and the next try is the first').toMatchObject({ ok: true, value: { number: 1 } })
  })

  it('keeps the readings as typed beside the millimetres, and reads both back', async () => {
    const readings = cleanReadings()
    const typed = ['5/16', '.312', ' 8 mm ', '6,5 mm', '1/4"']
    const form = couponForm(school, randomUUID(), {
      ...readings,
      stations: readings.stations.map((row, index) => ({ ...row, legA: typed[index] ?? '' })),
      indications: [{ kind: 'undercut', toe: 'B', at: '2', length: '1', depth: '1/64', diameter: '', height: '' }],
    })
    await sendCoupon(form)
    const found = await findCoupon(await viewerOf(school, 'student'), form.id)
    const stored = found?.inspections[0]?.readings
    expect(stored?.typed).toEqual({ stations: form.readings.stations, indications: form.readings.indications })
    const legs = stored?.inspection.stations.map((station) => station.legAMm)
    ;[7.9375, 7.9248, 8, 6.5, 6.35].forEach((mm, index) => expect(legs?.[index]).toBeCloseTo(mm, 9))
    expect(stored?.inspection.indications).toEqual([{ kind: 'undercut', toe: 'B', atMm: 50.8, lengthMm: 25.4, depthMm: 0.396875 }])
    expect(stored?.inspection.lookedFor).toEqual(form.readings.lookedFor)
  })

  it('keeps an empty box as absent and a 0 as 0', async () => {
    const readings = cleanReadings()
    const form = couponForm(school, randomUUID(), {
      ...readings, stations: readings.stations.map((row, index) => ({ ...row, convexity: index === 0 ? '0' : '' })),
    })
    form.passes = [{ ...form.passes[0]!, amps: '0', volts: '' }]
    await sendCoupon(form)
    const found = await findCoupon(await viewerOf(school, 'student'), form.id)
    const [first, second] = found?.inspections[0]?.readings.inspection.stations ?? []
    expect(first?.convexityMm).toBe(0)
    expect(second).toBeDefined()
    expect(second).not.toHaveProperty('convexityMm')
    expect(found?.passes[0]).toMatchObject({ amps: 0, volts: null })
    expect(await database.query('select amps, volts from "Pass" where "couponId" = $1', [form.id])).toEqual([{ amps: 0, volts: null }])
  })
})

describe('sending again', () => {
  it('makes nothing new and tells the same number', async () => {
    const form = couponForm(school, randomUUID())
    await sendCoupon(form)
    const before = await countRows(database, school.programId)
    expect(await sendCoupon({ ...form, note: 'sent again with another note' })).toEqual({ ok: true, value: { id: form.id, number: 1, created: false } })
    expect(await countRows(database, school.programId)).toEqual(before)
    expect((await findCoupon(await viewerOf(school, 'student'), form.id))?.note, 'the first sending stands').toBeNull()
  })

  it('makes one coupon of five sendings at the same moment', async () => {
    const form = couponForm(school, randomUUID())
    const answers = await Promise.all(Array.from({ length: 5 }, () => sendCoupon(form)))
    expect(answers.map((answer) => answer.ok && answer.value.number)).toEqual([1, 1, 1, 1, 1])
    expect(answers.filter((answer) => answer.ok && answer.value.created)).toHaveLength(1)
    expect(await countRows(database, school.programId)).toMatchObject({ Coupon: 1, Inspection: 1, AuditEvent: 1 })
  })

  it('numbers two coupons sent at the same moment 1 and 2', async () => {
    const answers = await Promise.all([randomUUID(), randomUUID()].map((id) => sendCoupon(couponForm(school, id))))
    expect(answers.map((answer) => answer.ok && answer.value.number).sort()).toEqual([1, 2])
    expect(await countRows(database, school.programId)).toMatchObject({ Coupon: 2, SkillSummary: 1 })
  })

  it('takes the coupons of a whole class at the same moment', async () => {
    const viewer = await viewerOf(school, 'student')
    const numbers = await Promise.all(Array.from({ length: 25 }, async () => (await logAs(school, viewer, randomUUID())).number))
    expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 25 }, (_, index) => index + 1))
  })

  it('waits rather than fails when the database is slow for longer than a few seconds', async () => {
    const viewer = await viewerOf(school, 'student')
    await logAs(school, viewer, randomUUID())
    const key = { programId: school.programId, studentId: viewer.personId, exerciseId: school.exerciseId }
    const slow = db().$transaction(async (tx) => {
      await holdSkill(tx, key)
      await tx.$executeRaw`select pg_sleep(6)`
    })
    expect(await logAs(school, viewer, randomUUID())).toMatchObject({ number: 2, created: true })
    await slow
  })

  it('tells nothing of a coupon that another student sent under the same id', async () => {
    const form = couponForm(school, randomUUID())
    await sendCoupon({ ...form, note: 'a private note' })
    const before = await countRows(database, school.programId)
    await requestFrom({ school, who: 'classmate' })
    expect(await sendCoupon(form)).toEqual(hidden)
    expect(await countRows(database, school.programId)).toEqual(before)
  })

  it('tells nothing when two students send the same id at the same moment, and keeps one', async () => {
    const id = randomUUID()
    const answers = await Promise.allSettled([
      logAs(school, await viewerOf(school, 'student'), id), logAs(school, await viewerOf(school, 'classmate'), id),
    ])
    expect(answers.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(answers.find((answer) => answer.status === 'rejected')).toMatchObject({ reason: { code: 'NOT_FOUND' } })
    expect(await countRows(database, school.programId)).toMatchObject({ Coupon: 1, Inspection: 1, AuditEvent: 1 })
  })
})

describe('where a student does not belong', () => {
  const refused = async (form: unknown, answer: unknown = hidden): Promise<void> => {
    expect(await sendCoupon(form)).toEqual(answer)
    expect(await countRows(database, school.programId)).toEqual(NOTHING)
  }

  it('is refused in a class one is not in', () => refused({ ...couponForm(school, randomUUID()), classId: school.otherClassId }))

  it('is refused after withdrawing', async () => {
    await database.query('update "Enrolment" set "withdrawnAt" = now() where "personId" = $1', [school.people.student])
    await refused(couponForm(school, randomUUID()))
  })

  it('is refused for an exercise that is not in the class', async () => {
    await database.query('delete from "ClassExercise" where "classId" = $1', [school.classId])
    await database.query('delete from "SafetyAcknowledgement" where "studentId" = $1', [school.people.student])
    await refused(couponForm(school, randomUUID()))
  })

  it('is told that an exercise they could log was taken off the list', async () => {
    await database.query('delete from "ClassExercise" where "classId" = $1', [school.classId])
    await refused(couponForm(school, randomUUID()), { ok: false, code: 'CONFLICT', message: expect.stringMatching(/^This exercise is no longer on the list of your class/) as string, fields: {} })
  })

  it('is refused for an exercise that was archived', async () => {
    await database.query('update "Exercise" set "archivedAt" = now() where id = $1', [school.exerciseId])
    await refused(couponForm(school, randomUUID()))
  })

  it('is told that their class was archived', async () => {
    await database.query('update "Class" set "archivedAt" = now() where id = $1', [school.classId])
    await refused(couponForm(school, randomUUID()), { ok: false, code: 'CONFLICT', message: expect.stringMatching(/^This class has been archived/) as string, fields: {} })
  })

  it('is refused in another program, and for ids of another program', async () => {
    const foreign = await buildSchool(randomUUID())
    await refused(couponForm(foreign, randomUUID()))
    await refused({ ...couponForm(school, randomUUID()), exerciseId: foreign.exerciseId })
    expect(await countRows(database, foreign.programId)).toEqual(NOTHING)
  })

  it.each([
    ['no uuid', '12'], ['an empty id', ''], ['a path', '../../etc/passwd'], ['SQL', "' or 1=1 --"], ['a number', 7], ['nothing', undefined], ['a list', [randomUUID()]],
  ])('is refused for an id that is %s', async (_what, id) => {
    await refused({ ...couponForm(school, randomUUID()), id })
    await refused({ ...couponForm(school, randomUUID()), classId: id })
    await refused({ ...couponForm(school, randomUUID()), exerciseId: id })
  })

  it.each([[null], [undefined], ['coupon'], [[]], [{}]])('is refused when what arrives is %o', (raw) => refused(raw))

  it('is refused to an instructor, who logs no coupons', async () => {
    await requestFrom({ school, who: 'instructor' })
    await refused(couponForm(school, randomUUID()))
  })
})

describe('cautions', () => {
  it('come first: without their confirmation the coupon is not taken and nothing is written', async () => {
    await database.query('delete from "SafetyAcknowledgement" where "studentId" = $1', [school.people.student])
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'SAFETY' })
    expect(await countRows(database, school.programId)).toEqual(NOTHING)
  })

  it('are asked again in another term', async () => {
    const term = await db().term.create({ data: { programId: school.programId, name: 'Spring', startsOn: new Date('2027-01-11'), endsOn: new Date('2027-05-14') } })
    await database.query('update "Class" set "termId" = $1 where id = $2', [term.id, school.classId])
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'SAFETY' })
  })
})

it('keeps the exercise as it was when the coupon was welded', async () => {
  const form = couponForm(school, randomUUID())
  await sendCoupon(form)
  await database.query(`insert into "ExerciseVersion" select "programId", "exerciseId", 2, 'Renamed', process, joint, "weldType", position, progression, "plateThicknessMm",
    material, "electrodeClass", "electrodeDiameterMm", "nominalLegMm", "lengthMm", "passCount", "stationCount", gauge, "boothCard", "criteriaId", "criteriaVersion", now()
    from "ExerciseVersion" where "exerciseId" = $1`, [school.exerciseId])
  await database.query('update "Exercise" set "currentVersion" = 2 where id = $1', [school.exerciseId])
  const later = couponForm(school, randomUUID())
  await sendCoupon(later)
  const viewer = await viewerOf(school, 'student')
  expect((await findCoupon(viewer, form.id))?.exercise).toMatchObject({ version: 1, title: '2F lap, E71T-11 0.045' })
  expect((await findCoupon(viewer, later.id))?.exercise).toMatchObject({ version: 2, title: 'Renamed' })
})

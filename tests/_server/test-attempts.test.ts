// A test as its witness records it: judged, kept with what had been said of it as of that day, carried to the standing.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { practised, type Bead } from '../support/practice'
import { modelRow } from '../support/readiness-model'
import { withoutAudit } from '../support/rows'
import { buildSchool, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { findReadiness, listClassSkills } from '@/app/_server/data/skills'
import { listAttempts, recordAttempt } from '@/app/_server/data/test-attempts'
import { readinessFilter } from '@/lib/readiness/filter'
import { MODEL_VERSION, SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import { testPartsSchema } from '@/lib/schemas/test-attempt'
import { testFormSchema, type TestPartsForm } from '@/lib/schemas/test-form'

let database: TestDatabase
let school: School
let instructor: Viewer
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  instructor = await viewerOf(school, 'instructor')
})

const NOW = new Date('2026-11-25T18:00:00Z')
const nothing: TestPartsForm = { visual: '', bends: null, filletBreak: null, macroetch: null }
const broken = (over: Partial<NonNullable<TestPartsForm['filletBreak']>> = {}): TestPartsForm => ({ ...nothing, visual: 'accept', filletBreak: { foldedFlat: 'no', rootFused: 'yes', inclusions: ['1 mm'], ...over } })
const form = (over: Record<string, unknown> = {}) => ({
  id: randomUUID(), classId: school.classId, studentId: school.people.student, exerciseId: school.exerciseId, testedOn: '2026-11-20', parts: broken(), plateIdentity: '', wireIdentity: '', note: '', ...over,
})
const record = (over: Record<string, unknown> = {}, viewer = instructor) => recordAttempt(viewer, testFormSchema(instructor).parse(form(over)), NOW)
const beads = (...days: number[]): Bead[] => days.map((day, index) => ({ on: `2026-11-${String(day).padStart(2, '0')}`, widthMm: index % 3 === 1 ? 7.2 : 6.3 }))
const attempt = (id: string) => db().testAttempt.findFirstOrThrow({ where: { id } })
const count = () => db().testAttempt.count({ where: { programId: school.programId } })
const key = () => ({ studentId: school.people.student, exerciseId: school.exerciseId })

describe('the forecast', () => {
  it('is the model’s own, before the program’s correction, as of the day of the test', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 16, 17))
    const coupons = (await findReadiness(instructor, key(), NOW))!.evidence.judged.map(({ coupon }) => coupon)
    const testDay = Date.UTC(2026, 10, 20) / 86_400_000
    const said = readinessFilter(coupons, testDay).probability
    // Results that would correct the estimate: all failed, where 0.9 had been said.
    await db().testAttempt.createMany({ data: Array.from({ length: 30 }, () => ({
      programId: school.programId, classId: school.classId, studentId: school.people.classmate, exerciseId: school.exerciseId, exerciseVersion: 1, witnessId: school.people.instructor,
      testedOn: new Date('2026-11-02'), passed: false, parts: {}, forecast: 0.9, modelVersion: MODEL_VERSION,
    })) })
    const { id, forecast } = await record()
    expect(forecast).toBeCloseTo(said, 12)
    const { assessment } = (await findReadiness(instructor, key(), NOW))!
    expect(assessment.kind === 'estimate' && assessment.probability).toBeLessThan(said - 0.05)
    expect(await attempt(id)).toMatchObject({ passed: true, forecast, modelVersion: MODEL_VERSION, exerciseVersion: 1, witnessId: instructor.personId, testedOn: new Date('2026-11-20') })
  })

  it('does not know the coupons welded after the test', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 16))
    const early = await record()
    await database.query('delete from "TestAttempt" where id = $1', [early.id])
    await practised(school, school.people.classmate, [...beads(9, 10, 11, 12, 16), { on: '2026-11-21', widthMm: 8 }, { on: '2026-11-22', widthMm: 8 }])
    const late = await record({ studentId: school.people.classmate })
    expect(late.forecast).toBeCloseTo(early.forecast!, 12)
  })

  it('is the model’s in use, by name', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 16))
    const coupons = (await findReadiness(instructor, key(), NOW))!.evidence.judged.map(({ coupon }) => coupon)
    await db().readinessModel.create({ data: { ...modelRow(school.programId, 'refit-1', { m0: 0.3 }), adoptedAt: NOW } })
    const { id } = await record()
    const said = readinessFilter(coupons, Date.UTC(2026, 10, 20) / 86_400_000, { parameters: { ...SHIPPED_PARAMETERS, m0: 0.3 } }).probability
    const row = await attempt(id)
    expect(row.modelVersion).toBe('refit-1')
    expect(row.forecast).toBeCloseTo(said, 12)
  })

  it('is absent, not 0, with too few coupons before the test', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 21))
    const { id } = await record()
    expect(await attempt(id)).toMatchObject({ forecast: null, modelVersion: null, passed: true })
  })
})

describe('the result', () => {
  it('comes from what was examined, not from the form', async () => {
    const failed = await record({ parts: broken({ rootFused: 'no' }) })
    expect(failed).toMatchObject({ passed: false, created: true })
    expect(testPartsSchema.parse((await attempt(failed.id)).parts)).toEqual({ visual: 'accept', bends: null, filletBreak: { foldedFlat: false, rootFused: false, inclusionsMm: [1] }, macroetch: null })
    expect(await record({ parts: { ...nothing, visual: 'reject' } })).toMatchObject({ passed: false })
    expect(testFormSchema(instructor).safeParse(form({ passed: true })).success).toBe(false)
  })

  it('is refused while something was not examined or a specimen is to be replaced, with the reason at the field', async () => {
    const corner = { face: 'root', seen: 'some', indications: [{ size: '9 mm', corner: true, fromSlagOrFusion: false }] }
    await expect(record({ parts: { ...nothing, visual: 'accept' } })).rejects.toMatchObject({ code: 'INVALID', message: 'Incomplete. The fillet break has not been done.', fields: { parts: 'The fillet break has not been done.' } })
    await expect(record({ parts: { ...broken(), visual: '' } })).rejects.toMatchObject({ code: 'INVALID' })
    await expect(record({ parts: { ...nothing, visual: 'accept', bends: [corner, { face: 'root', seen: 'none', indications: [] }] } })).rejects.toMatchObject({ code: 'INVALID', message: expect.stringContaining('another one') })
    expect(await count()).toBe(0)
  })

  it('of a day to come is refused, by the calendar of the program’s place', async () => {
    await expect(record({ testedOn: '2026-11-26' })).rejects.toMatchObject({ code: 'INVALID', fields: { testedOn: expect.stringContaining('future') } })
    // 02:00 in London on the 26th is still the 25th in Chicago.
    const input = () => testFormSchema(instructor).parse(form({ testedOn: '2026-11-26' }))
    await expect(recordAttempt(instructor, input(), new Date('2026-11-26T02:00:00Z'))).rejects.toMatchObject({ code: 'INVALID' })
    expect(await recordAttempt(instructor, input(), new Date('2026-11-26T07:00:00Z'))).toMatchObject({ created: true })
  })

  it('cannot be garbage', () => {
    for (const bad of [{ testedOn: '2026-02-30' }, { testedOn: 'yesterday' }, { parts: { ...nothing, extra: 1 } }, { parts: broken({ inclusions: ['-1'] }) }, { parts: broken({ inclusions: ['1e999'] }) }, { note: 'x'.repeat(3000) }, { parts: { ...nothing, visual: 'accept', bends: [{ face: 'root', seen: '', indications: [] }] } }, { parts: { ...nothing, visual: 'accept', bends: [{ face: 'root', seen: 'some', indications: [] }] } }, { parts: broken({ foldedFlat: '' }) }, { studentId: 'me' }]) {
      expect(testFormSchema(instructor).safeParse(form(bad)).success, JSON.stringify(bad)).toBe(false)
    }
  })
})

describe('recording', () => {
  it('carries a failed test to the standing, and shows it in the record', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 16))
    const { id } = await record({ parts: broken({ rootFused: 'no' }), note: '  Root missed at the start. ' })
    const { assessment } = (await findReadiness(instructor, key(), NOW))!
    expect(assessment).toMatchObject({ reasons: expect.arrayContaining(['failed-test-needs-coupons']), resultsUsed: 1 })
    const stored = await db().skillSummary.findFirstOrThrow({ where: key() })
    expect(stored.advice).not.toBe('test')
    expect((await listClassSkills(instructor, school.classId, NOW)).map(({ advice }) => advice)).toEqual([assessment.kind === 'estimate' ? assessment.advice : null])
    expect(await listAttempts(instructor, school.people.student)).toMatchObject([{ id, passed: false, note: 'Root missed at the start.' }])
  })

  it('works for a student who never logged a coupon', async () => {
    expect(await record()).toMatchObject({ passed: true, forecast: null })
    expect(await db().skillSummary.findFirstOrThrow({ where: key() })).toMatchObject({ couponCount: 0, couponsUsed: 0, probability: null, modelVersion: MODEL_VERSION })
  })

  it('twice with one id makes one test', async () => {
    const input = testFormSchema(instructor).parse(form())
    expect(await recordAttempt(instructor, input, NOW)).toMatchObject({ created: true })
    expect(await recordAttempt(instructor, input, NOW)).toMatchObject({ id: input.id, created: false, passed: true })
    await expect(recordAttempt(instructor, { ...input, studentId: school.people.classmate }, NOW)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await count()).toBe(1)
  })

  it('is for students of a class one teaches, in its exercises, and never for oneself', async () => {
    const { programId, classId, otherClassId, people } = school
    for (const over of [{ classId: otherClassId, studentId: people.otherStudent }, { studentId: people.otherStudent }, { exerciseId: randomUUID() }, { classId: otherClassId }]) {
      await expect(record(over), JSON.stringify(over)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    }
    await db().membership.create({ data: { programId, personId: people.instructor, role: 'student' } })
    await db().enrolment.create({ data: { programId, classId, personId: people.instructor } })
    await expect(record({ studentId: people.instructor })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await count()).toBe(0)
  })

  it('leaves an audit row, or nothing at all', async () => {
    await practised(school, school.people.student, beads(9, 10, 11, 12, 16))
    const before = await db().skillSummary.findFirstOrThrow({ where: key() })
    expect(await withoutAudit(database, () => record())).toBeInstanceOf(Error)
    expect(await count()).toBe(0)
    expect(await db().skillSummary.findFirstOrThrow({ where: key() })).toEqual(before)
    const { id, forecast } = await record()
    expect(await db().auditEvent.findMany({ where: { programId: school.programId, action: 'test.record' } })).toMatchObject([
      { actorId: instructor.personId, subjectType: 'test', subjectId: id, after: { studentId: school.people.student, passed: true, testedOn: '2026-11-20', forecast, modelVersion: MODEL_VERSION } },
    ])
  })
})

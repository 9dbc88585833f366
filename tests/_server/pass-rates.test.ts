// Pass rates from real rows: what is counted, for whom, and that the file holds what the screen does.
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, viewerOf, type School } from '../support/school'
import { requestFrom } from '../support/request'
import { GET } from '@/app/api/exports/pass-rates/route'
import { saveReadinessRule } from '@/app/program/actions'
import { db } from '@/app/_server/db'
import { passRatesView } from '@/app/_server/views/pass-rates'
import { programReadiness } from '@/app/_server/views/program-readiness'
import { wereWeRightView } from '@/app/_server/views/were-we-right'
import type { Viewer } from '@/app/_server/auth/viewer'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

const asOf = new Date('2026-11-25T18:00:00Z')
let school: School
let coordinator: Viewer

type Row = { readonly classId: string; readonly verdict: 'accept' | 'reject' | 'incomplete' | null; readonly self?: 'accept' }

let number = 0
async function addCoupons(rows: readonly Row[]): Promise<void> {
  const { programId, exerciseId, people: { student: studentId } } = school
  await db().coupon.createMany({
    data: rows.map(({ classId, verdict, self }) => ({
      programId, classId, studentId, exerciseId, exerciseVersion: 1, number: (number += 1), weldedAt: asOf, receivedAt: asOf, verdict, selfVerdict: self ?? null,
    })),
  })
}

async function addTest(classId: string, studentId: string, testedOn: string, passed: boolean, forecast: number | null): Promise<void> {
  const { programId, exerciseId, people: { instructor: witnessId } } = school
  await db().testAttempt.create({ data: { programId, classId, studentId, exerciseId, exerciseVersion: 1, witnessId, testedOn: new Date(testedOn), passed, parts: {}, forecast } })
}

const times = (n: number, row: Row): Row[] => Array.from({ length: n }, () => row)

beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  const foreign = await buildSchool('south')
  coordinator = await viewerOf(school, 'coordinator')
  const { programId, exerciseId, classId, otherClassId, people } = school
  const earlier = await db().term.create({ data: { programId, name: 'Spring', startsOn: new Date('2026-01-12'), endsOn: new Date('2026-05-08') } })
  const past = await db().class.create({ data: { programId, termId: earlier.id, name: 'Class one', archivedAt: asOf } })
  await db().term.create({ data: { programId, name: 'Next spring', startsOn: new Date('2027-01-11'), endsOn: new Date('2027-05-07') } })
  await addCoupons([
    ...times(9, { classId, verdict: 'accept' }), ...times(3, { classId, verdict: 'reject' }), ...times(2, { classId, verdict: 'incomplete' }),
    ...times(4, { classId, verdict: null, self: 'accept' }), ...times(2, { classId: otherClassId, verdict: 'accept' }), ...times(6, { classId: past.id, verdict: 'reject' }),
  ])
  await db().coupon.create({
    data: {
      programId: foreign.programId, classId: foreign.classId, studentId: foreign.people.student, exerciseId: foreign.exerciseId, exerciseVersion: 1, number: 1, weldedAt: asOf, verdict: 'accept',
    },
  })
  // The student fails in spring, fails and passes in fall; the classmate passes at once.
  await addTest(past.id, people.student, '2026-04-02', false, null)
  await addTest(classId, people.student, '2026-10-01', false, 0.55)
  await addTest(classId, people.student, '2026-10-20', true, 0.7)
  await addTest(classId, people.classmate, '2026-11-03', true, 0.66)
  await db().classExercise.deleteMany({ where: { programId, exerciseId } }) // taken off every course: its coupons still count
})
afterEach(() => requestFrom(null))

describe('the coordinator’s pass rates', () => {
  it('count accepted of accepted and rejected by the instructor, never a student’s own verdict', async () => {
    const { overall, term } = await passRatesView(coordinator, undefined, asOf)
    expect(term?.name).toBe('Fall')
    expect(overall).toMatchObject({ coupons: { passed: 11, n: 14 }, incomplete: 2, uninspected: 4 })
  })

  it('keep an archived class and an exercise taken off the course, and the terms beside each other', async () => {
    const rates = await passRatesView(coordinator, 'all', asOf)
    expect(rates.byTerm.map(({ term, coupons: { passed, n } }) => [term, passed, n])).toEqual([['Fall', 11, 14], ['Spring', 0, 6]])
    expect(rates.byClass.map(({ className, term, coupons: { n } }) => [className, term, n])).toEqual([['Class one', 'Fall', 12], ['Class two', 'Fall', 2], ['Class one', 'Spring', 6]])
    expect(rates.byExercise.map(({ exercise }) => exercise)).toEqual(['2F lap, E71T-11 0.045', '2F lap, E71T-11 0.045'])
  })

  it('say no rate of a class with two coupons', async () => {
    const { byClass } = await passRatesView(coordinator, undefined, asOf)
    expect(byClass.find(({ className }) => className === 'Class two')?.coupons).toEqual({ passed: 2, n: 2, share: null })
  })

  it('count each test, and of first tests one for each student and exercise, in the class where it was taken', async () => {
    const [all, fall] = [await passRatesView(coordinator, 'all', asOf), await passRatesView(coordinator, undefined, asOf)]
    expect(all.overall).toMatchObject({ tests: { passed: 2, n: 4 }, firstTests: { passed: 1, n: 2 } })
    expect(fall.overall).toMatchObject({ tests: { passed: 2, n: 3 }, firstTests: { passed: 1, n: 1 } })
  })

  it('take a term that is none for the latest that has begun', async () => {
    expect((await passRatesView(coordinator, 'no-such-term', asOf)).term?.name).toBe('Fall')
    expect((await passRatesView(coordinator, undefined, new Date('2026-02-01'))).term?.name).toBe('Spring')
  })

  it('show an instructor only the classes they teach', async () => {
    const rates = await passRatesView(await viewerOf(school, 'otherInstructor'), 'all', asOf)
    expect(rates.byClass.map(({ className }) => className)).toEqual(['Class two'])
    expect(rates.overall.coupons.n).toBe(2)
  })
})

describe('the file of pass rates', () => {
  const ask = (query = ''): Promise<Response> => GET(new Request(`http://localhost:3000/api/exports/pass-rates${query}`))

  it('holds the numbers of the screen', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const response = await ask('?term=all')
    expect(response.headers.get('content-disposition')).toContain('pass-rates.csv')
    expect(response.headers.get('cache-control')).toBe('no-store')
    const lines = (await response.text()).replace('\uFEFF', '').split('\r\n')
    const { overall: { coupons } } = await passRatesView(coordinator, 'all', asOf)
    const four = (share: number | undefined): string => String(Math.round((share ?? 0) * 10_000) / 10_000)
    expect(lines[0]).toBe('group,term,class,exercise,counted,passed,of,rate,low_95,high_95,incomplete,not_inspected,note')
    expect(lines[1]).toBe(`all,,,,coupons accepted by the instructor,11,20,${four(coupons.share?.rate)},${four(coupons.share?.low)},${four(coupons.share?.high)},2,4,`)
    expect(lines).toContain('class,Fall,Class two,,coupons accepted by the instructor,2,2,,,,0,0,too few to compare')
  })

  it.each(['student', 'instructor', null] as const)('is not there for %s', async (who) => {
    await requestFrom(who && { school, who })
    expect((await ask()).status).toBe(404)
  })
})

describe('the readiness rule', () => {
  it('is saved with who changed what from what, and every standing follows', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const { programId, exerciseId, people } = school
    await db().skillSummary.create({ data: { programId, studentId: people.classmate, exerciseId, couponCount: 99 } })
    const result = await saveReadinessRule({ readinessThreshold: '0.70', minimumCoupons: '6', staleAfterDays: '30' })
    expect(result).toEqual({ ok: true, value: { standings: 1 } })
    expect(await db().program.findUnique({ where: { id: programId } })).toMatchObject({ readinessThreshold: 0.7, minimumCoupons: 6, staleAfterDays: 30 })
    expect(await db().skillSummary.findFirst({ where: { studentId: people.classmate } })).toMatchObject({ couponCount: 0 })
    const audit = await db().auditEvent.findFirst({ where: { programId, action: 'program.readiness' } })
    expect(audit).toMatchObject({
      actorId: people.coordinator,
      before: { readinessThreshold: 0.65, minimumCoupons: 5, staleAfterDays: 45 }, after: { readinessThreshold: 0.7, minimumCoupons: 6, staleAfterDays: 30 },
    })
  })

  it('is left as it was when the form is wrong, with a sentence at the field', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const before = await db().program.findUnique({ where: { id: school.programId } })
    const result = await saveReadinessRule({ readinessThreshold: '65', minimumCoupons: '5', staleAfterDays: '45' })
    expect(result).toMatchObject({ ok: false, code: 'INVALID', fields: { readinessThreshold: '“65” is no such chance. Write one from 0.30 to 0.95, like 0.65.' } })
    expect(await db().program.findUnique({ where: { id: school.programId } })).toEqual(before)
  })

  it('stands beside what a failed test costs, as typed or as usual', async () => {
    expect((await programReadiness(coordinator, '40')).cost).toEqual({ used: 40, typed: '40', problem: null })
    expect((await programReadiness(coordinator, undefined)).cost).toEqual({ used: 15, typed: '15', problem: null })
    expect((await programReadiness(coordinator, 'dear')).cost).toEqual({ used: 15, typed: 'dear', problem: 'Write a number of coupons from 0 to 200.' })
  })
})

it('compares forecasts with tests, apart from those that had none, and says nothing of so few', async () => {
  expect(await wereWeRightView(coordinator)).toEqual({ kind: 'few', n: 3, passed: 2, least: 20, withoutForecast: 1 })
})

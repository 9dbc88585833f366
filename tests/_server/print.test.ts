// What is printed about a student: the same figures as on the screens, for the same people, and nothing a viewer may not see.
import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, cleanReadings, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import { viewerForPerson, type Viewer } from '@/app/_server/auth/viewer'
import { submitInspection } from '@/app/_server/data/inspections'
import { db } from '@/app/_server/db'
import { boothCardSheet } from '@/app/_server/views/booth-card-sheet'
import { progressSummary } from '@/app/_server/views/progress-summary'
import { readinessReport } from '@/app/_server/views/readiness-report'
import { readinessView } from '@/app/_server/views/readiness-view'
import { studentRecord } from '@/app/_server/views/student-record'
import { chanceText } from '@/lib/reports/readiness-track'
import { inspectionSchema } from '@/lib/schemas/inspection'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'

const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') } as const
const LETTER = { paper: 'letter' } as const
let school: School
let student: Viewer
let instructor: Viewer
let asOf: Date

/** Narrower than the rule for the bead allows, at every station. */
const narrow = () => ({ ...cleanReadings(), stations: cleanReadings().stations.map((row) => ({ ...row, width: '1/8' })) })

async function weld(self: 'clean' | 'narrow', inspected: 'clean' | 'narrow' | null): Promise<void> {
  const couponId = randomUUID()
  await logAs(school, student, couponId, self === 'clean' ? cleanReadings() : narrow())
  if (inspected) await submitInspection(instructor, inspectionSchema(frame).parse({ couponId, revision: 1, comment: '', readings: inspected === 'clean' ? cleanReadings() : narrow() }))
}

beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  await buildSchool('south')
  student = await viewerOf(school, 'student')
  instructor = await viewerOf(school, 'instructor')
  await weld('clean', 'narrow')
  await weld('narrow', 'narrow')
  await weld('clean', 'clean')
  await weld('clean', 'clean')
  await weld('clean', 'clean')
  await weld('narrow', 'clean')
  await weld('clean', null)
  const { programId, classId, exerciseId, people } = school
  await db().testAttempt.create({
    data: { programId, classId, studentId: people.student, exerciseId, exerciseVersion: 1, witnessId: people.instructor, testedOn: new Date('2026-11-20'), passed: false, parts: {}, forecast: 0.6 },
  })
  asOf = new Date()
})

describe('the progress summary', () => {
  it('counts coupons, the last ten accepted, the median mark and agreement from what the instructor saw', async () => {
    const summary = await progressSummary(student, school.people.student, LETTER, asOf)
    expect(summary?.rows).toHaveLength(1)
    expect(summary?.rows[0]).toMatchObject({ title: '2F lap, E71T-11 0.045', coupons: 7, lastTen: '4 of 6', agrees: '4 of 6' })
    const marks = (await db().coupon.findMany({ where: { studentId: school.people.student, mark: { not: null } }, select: { mark: true } })).map(({ mark }) => mark ?? 0).sort((a, b) => a - b)
    expect(summary?.rows[0]?.medianMark).toBe(String(Math.round(((marks[2] ?? 0) + (marks[3] ?? 0)) / 2)))
  })

  it('gives the chance the screens give', async () => {
    const [summary, record, view] = await Promise.all([
      progressSummary(student, school.people.student, LETTER, asOf), studentRecord(student, school.people.student), readinessView(student, { studentId: school.people.student, exerciseId: school.exerciseId }, asOf),
    ])
    const { probability, low, high } = record?.skills[0]?.skill ?? {}
    expect(probability).toBeTypeOf('number')
    expect(summary?.rows[0]?.chance).toBe(`${chanceText(probability ?? 0)} (${chanceText(low ?? 0)} to ${chanceText(high ?? 0)})`)
    expect(summary?.answer).toContain(`2F lap, E71T-11 0.045: ${view?.answer ?? '?'}`)
    expect(summary?.exercise?.track).toEqual(view?.track)
  })

  it('draws every coupon with its verdict, and says which only the student looked at', async () => {
    const { exercise } = (await progressSummary(student, school.people.student, LETTER, asOf)) ?? {}
    expect(exercise?.strips.map(({ label, verdict, note }) => [label, verdict, note])).toEqual([
      ['No. 1', 'reject', null], ['No. 2', 'reject', null], ['No. 3', 'accept', null], ['No. 4', 'accept', null], ['No. 5', 'accept', null], ['No. 6', 'accept', null], ['No. 7', 'accept', 'own look'],
    ])
    expect(exercise?.ownLooks).toBe('One of these is the student’s own look: no instructor has inspected it yet.')
  })

  it('sets early defects against late ones in what the instructor rejected', async () => {
    const { exercise } = (await progressSummary(student, school.people.student, LETTER, asOf)) ?? {}
    expect(exercise?.defects).toEqual({ each: 3, rows: [{ name: 'Bead width', first: 2, last: 0 }] })
  })

  it('names classes, tests, criteria with their version, scoring and model, and the date', async () => {
    const summary = await progressSummary(student, school.people.student, LETTER, asOf)
    expect(summary?.classes).toBe('Class one, Fall · north')
    expect(summary?.notes.at(-1)).toBe('Tests taken: 2F lap, E71T-11 0.045, Nov 20, 2026: not passed.')
    expect(summary?.foot.join(' ')).toMatch(/^Criteria: Shop rule for a practice bead, version 1\. Scoring version \S+\. Readiness model: margin-state-space-1\. Printed \w+ \d+, \d{4}\.$/)
    expect(summary?.arcTime).toBe('arc time not recorded')
  })

  it('speaks the reader’s language', async () => {
    await db().person.updateMany({ where: { id: school.people.coordinator }, data: { locale: 'es', units: 'si' } })
    const reader = await viewerForPerson(school.programId, school.people.coordinator)
    const summary = reader && await progressSummary(reader, school.people.student, LETTER, asOf)
    expect(summary?.rows[0]?.lastTen).toBe('4 de 6')
    expect(summary?.exercise?.stripsTitle).toBe('Cada probeta, de vieja a nueva')
  })

  it.each(['student', 'instructor', 'coordinator'] as const)('is there for the %s', async (who) => {
    expect(await progressSummary(await viewerOf(school, who), school.people.student, LETTER, asOf)).toMatchObject({ name: 'student Test', coupons: 7 })
  })

  it.each(['classmate', 'otherStudent', 'otherInstructor'] as const)('is not there for the %s', async (who) => {
    const viewer = await viewerOf(school, who)
    expect(await progressSummary(viewer, school.people.student, LETTER, asOf)).toBeNull()
    expect(await readinessReport(viewer, { studentId: school.people.student, exerciseId: school.exerciseId }, asOf)).toBeNull()
  })

  it('says so of a student without a coupon', async () => {
    const summary = await progressSummary(await viewerOf(school, 'classmate'), school.people.classmate, LETTER, asOf)
    expect(summary).toMatchObject({ coupons: 0, rows: [], exercise: null, dates: null, answer: ['No coupons logged yet.'] })
  })

  it('draws the exercise asked for, or the one practised last when it is none of the student’s', async () => {
    const asked = await progressSummary(student, school.people.student, { ...LETTER, exerciseId: randomUUID() }, asOf)
    expect(asked?.exercise?.title).toBe('2F lap, E71T-11 0.045')
  })
})

describe('the readiness report', () => {
  it('lists every coupon used, and why others were left out', async () => {
    const report = await readinessReport(instructor, { studentId: school.people.student, exerciseId: school.exerciseId }, asOf)
    expect(report?.readiness.kind).toBe('estimate')
    expect(report?.evidence.map(({ number, verdict, by }) => [number, verdict, by])).toEqual([
      [1, 'reject', 'instructor'], [2, 'reject', 'instructor'], [3, 'accept', 'instructor'], [4, 'accept', 'instructor'], [5, 'accept', 'instructor'], [6, 'accept', 'instructor'],
      [7, 'accept', 'student, weight 0.25'], // 4 of 6 agreed: 2 · 5/8 − 1
    ])
    expect(report?.evidence[0]?.closest).toMatchObject({ rule: 'Bead width', scaled: expect.stringMatching(/^−\d/) as string })
    expect(report?.numbers).toContainEqual({ term: 'Coupons used', value: '7' })
    expect(report?.numbers).toContainEqual({ term: 'Model', value: 'margin-state-space-1' })
    expect(report?.numbers).toContainEqual({ term: 'Threshold of this program', value: '0.65' })
    expect(report?.notMeasured).toEqual(['Every rule was judged on every coupon used.'])
    expect(report?.tests).toMatchObject([{ passed: false }])
  })

  it('is not there for an exercise the student never practised', async () => {
    expect(await readinessReport(instructor, { studentId: school.people.student, exerciseId: randomUUID() }, asOf)).toBeNull()
    expect(await readinessReport(instructor, { studentId: school.people.classmate, exerciseId: school.exerciseId }, asOf)).toBeNull()
  })
})

describe('the booth card', () => {
  it('numbers each source once, and every caution points to one that is listed', async () => {
    const sheet = await boothCardSheet(student, school.exerciseId, asOf)
    const listed = [...(sheet?.sources.join(' ') ?? '').matchAll(/\[(\d+)\]/g)].map(([, number]) => Number(number)).sort((a, b) => a - b)
    expect(listed).toEqual(listed.map((_, i) => i + 1))
    const cited = sheet?.cautions.flatMap(({ items }) => items.map(({ source }) => source)) ?? []
    expect(cited.length).toBeGreaterThan(10)
    expect(new Set(cited)).toEqual(new Set(listed))
    expect(sheet?.card.settings.find(({ key }) => key === 'polarity')?.value).toBe('DCEN, electrode negative')
  })

  it('is not there for an exercise of another program', async () => {
    const other = await db().exercise.findFirstOrThrow({ where: { programId: { not: school.programId } } })
    expect(await boothCardSheet(student, other.id, asOf)).toBeNull()
    expect(await boothCardSheet(await viewerOf(school, 'coordinator'), other.id, asOf)).toBeNull()
  })
})

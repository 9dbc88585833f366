// Standings are kept on write and carried to today: what is stored is what working everything out anew would give.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { buildSchool, cleanReadings, couponForm, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { logCoupon } from '@/app/_server/data/coupons'
import { submitInspection } from '@/app/_server/data/inspections'
import { findReadiness, listClassSkills, listStudentSkills, type SkillRecord } from '@/app/_server/data/skills'
import { stateAfter } from '@/lib/readiness/incremental'
import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { couponSchema } from '@/lib/schemas/coupon'
import { filterStateSchema } from '@/lib/schemas/filter-state'
import { inspectionSchema } from '@/lib/schemas/inspection'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'

let database: TestDatabase
let school: School
let student: Viewer
let instructor: Viewer
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  student = await viewerOf(school, 'student')
  instructor = await viewerOf(school, 'instructor')
})

const DAY_MS = 24 * 3600 * 1000
const FRAME = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') } as const
const readingsOf = (width: string): ReadingsForm => ({ ...cleanReadings(), stations: cleanReadings().stations.map((row) => ({ ...row, width })) })
const CLEAN = '1/4'
const TOO_WIDE = '3/8'

async function weld(weldedAt: Date, readings = readingsOf(CLEAN)): Promise<string> {
  const id = randomUUID()
  await logCoupon(student, couponSchema(FRAME, new Date()).parse({ ...couponForm(school, id, readings), weldedAt: weldedAt.toISOString() }))
  return id
}

const inspect = (couponId: string, width = CLEAN, revision = 1) =>
  submitInspection(instructor, inspectionSchema(FRAME).parse({ couponId, revision, comment: '', readings: readingsOf(width) }))

/** So many coupons, one a day, the last `daysAgo` days ago, each inspected. Widths are cycled through. */
async function practise(count: number, widths: readonly string[] = [CLEAN], daysAgo = 0): Promise<string[]> {
  const ids: string[] = []
  for (let index = 0; index < count; index += 1) {
    const id = await weld(new Date(Date.now() - (count - 1 - index + daysAgo) * DAY_MS))
    await inspect(id, widths[index % widths.length])
    ids.push(id)
  }
  return ids
}

const key = () => ({ studentId: student.personId, exerciseId: school.exerciseId })
const stored = async () => {
  const [row] = await database.query<{ probability: number | null; couponsUsed: number; advice: string | null; filterState: unknown }>(
    'select probability, "couponsUsed", advice, "filterState" from "SkillSummary" where "studentId" = $1', [student.personId])
  return row
}
async function board(asOf: Date): Promise<SkillRecord> {
  const rows = await listClassSkills(instructor, school.classId, asOf)
  expect(rows.map(({ studentId }) => studentId)).toEqual([student.personId])
  return rows[0]!
}
const figures = ({ probability, low, high, level, advice }: { probability: number | null; low: number | null; high: number | null; level: number | null; advice: string | null }) =>
  ({ probability, low, high, level, advice })
async function detail(asOf: Date) {
  const found = await findReadiness(instructor, key(), asOf)
  if (found?.assessment.kind !== 'estimate') throw new Error('There is no estimate.')
  return found.assessment
}

async function recordTest(daysAgo: number, passed: boolean, forecast: number | null): Promise<void> {
  await database.query(
    `insert into "TestAttempt" ("programId", id, "classId", "studentId", "exerciseId", "exerciseVersion", "witnessId", "testedOn", passed, parts, forecast, "modelVersion")
     values ($1, gen_random_uuid(), $2, $3, $4, 1, $5, $6::date, $7, '{"visual":"accept","bends":null,"filletBreak":null}', $8, $9)`,
    [school.programId, school.classId, student.personId, school.exerciseId, instructor.personId, new Date(Date.now() - daysAgo * DAY_MS).toISOString().slice(0, 10), passed, forecast, forecast === null ? null : MODEL_VERSION])
}

describe('how many coupons it takes', () => {
  it('says not enough with four, and gives an estimate with five', async () => {
    await practise(4)
    expect(await findReadiness(instructor, key(), new Date())).toMatchObject({ assessment: { kind: 'insufficient', have: 4, need: 5 } })
    expect(await stored()).toMatchObject({ probability: null, advice: null, couponsUsed: 4 })
    expect(await board(new Date())).toMatchObject({ couponCount: 4, probability: null, low: null, high: null, advice: null, couponsUsed: 4 })
    await practise(1)
    expect(await findReadiness(instructor, key(), new Date())).toMatchObject({ assessment: { kind: 'estimate', couponsUsed: 5 } })
    const row = await board(new Date())
    expect(row).toMatchObject({ couponCount: 5, inspectedCount: 5, acceptedCount: 5, waitingCount: 0, couponsUsed: 5 })
    expect(row.probability).toBeGreaterThan(0.5)
    expect(row.low).toBeLessThan(row.probability!)
    expect(row.high).toBeGreaterThan(row.probability!)
  })

  it('does not count a student’s own looks while nobody has compared them', async () => {
    for (let index = 0; index < 6; index += 1) await weld(new Date())
    expect(await findReadiness(instructor, key(), new Date())).toMatchObject({ assessment: { kind: 'insufficient', have: 0, need: 5 } })
    expect(await board(new Date())).toMatchObject({ couponCount: 6, waitingCount: 6, inspectedCount: 0, couponsUsed: 0, probability: null })
  })

  it('does not count an inspection that left something unmeasured as an accept', async () => {
    const ids = await practise(4)
    const id = await weld(new Date())
    await submitInspection(instructor, inspectionSchema(FRAME).parse({ couponId: id, revision: 1, comment: '', readings: { ...cleanReadings(), lookedFor: [] } }))
    expect(await board(new Date())).toMatchObject({ couponCount: 5, inspectedCount: 4, acceptedCount: 4, waitingCount: 0, couponsUsed: 4 })
    expect(ids).toHaveLength(4)
  })
})

describe('what is stored', () => {
  it('is what all coupons give when worked out anew', async () => {
    await practise(8, [CLEAN, TOO_WIDE, CLEAN])
    const evidence = (await findReadiness(instructor, key(), new Date()))!.evidence
    const state = filterStateSchema.parse((await stored())?.filterState)
    const anew = stateAfter(evidence.judged.map(({ coupon }) => coupon))
    expect(state.coupons).toBe(8)
    expect(state.day).toBe(anew.day)
    state.mass.forEach((mass, index) => expect(mass).toBeCloseTo(anew.mass[index]!, 12))
  })

  it('changes with an instructor’s look at an old coupon, and with a correction', async () => {
    const ids = [await weld(new Date(Date.now() - 9 * DAY_MS)), ...(await practise(6, [CLEAN], 1))]
    const before = await board(new Date())
    await inspect(ids[0]!, TOO_WIDE)
    const late = await board(new Date())
    expect([before.couponsUsed, late.couponsUsed], 'the student’s own look counted until then').toEqual([7, 7])
    expect(late.probability).toBeLessThan(before.probability!)
    await inspect(ids[6]!, TOO_WIDE, 2)
    const corrected = await board(new Date())
    expect(corrected.probability).toBeLessThan(late.probability!)
    expect(corrected).toMatchObject({ couponsUsed: 7, inspectedCount: 7, acceptedCount: 5, lastVerdict: 'reject' })
  })

  it('takes days from the program’s place, not the server’s', async () => {
    // 03:30 in London is still the evening before in Chicago, and already the next morning in Kathmandu.
    await weld(new Date('2026-11-20T03:30:00Z'))
    await inspect((await database.query<{ id: string }>('select id from "Coupon" where "studentId" = $1', [student.personId]))[0]!.id)
    expect(filterStateSchema.parse((await stored())?.filterState).day).toBe(Date.UTC(2026, 10, 19) / DAY_MS)
  })

  it('keeps days going forward when a device’s clock was behind', async () => {
    await practise(5)
    const id = await weld(new Date(Date.now() - 300 * DAY_MS))
    await inspect(id)
    const { evidence } = (await findReadiness(instructor, key(), new Date()))!
    const days = evidence.judged.map(({ coupon }) => coupon.day)
    expect(days).toEqual(days.toSorted((a, b) => a - b))
    expect(await board(new Date())).toMatchObject({ couponsUsed: 6 })
  })
})

describe('the board and the page that explains it', () => {
  it.each([0, 1, 10, 44, 60])('agree to the last digit %i days on', async (days) => {
    await practise(7, [CLEAN, CLEAN, TOO_WIDE])
    const asOf = new Date(Date.now() + days * DAY_MS)
    const seen = await board(asOf)
    expect(figures(seen)).toEqual(figures(await detail(asOf)))
    expect(seen.advice === 'stale').toBe(days > 45)
    expect((await listStudentSkills(student, student.personId, asOf)).map(figures), 'and so does the student’s own page').toEqual([figures(seen)])
  })

  it('agree when test results have corrected the estimate', async () => {
    await practise(7)
    const plain = await board(new Date())
    for (let index = 0; index < 12; index += 1) await recordTest(1, index % 3 !== 0, 0.9)
    const asOf = new Date()
    const seen = await board(asOf)
    expect(seen.probability).not.toBe(plain.probability)
    const { probability, low, high } = await detail(asOf)
    expect([seen.probability, seen.low, seen.high]).toEqual([probability, low, high])
  })

  it.each([
    ['raise a chance past the threshold', [CLEAN, CLEAN, TOO_WIDE], true, 0.2, 'test'],
    ['raise a chance that something else holds back', [CLEAN, CLEAN, CLEAN, CLEAN, TOO_WIDE, TOO_WIDE, TOO_WIDE], true, 0.05, 'close'],
    ['lower a chance', [CLEAN], false, 0.9, 'practise'],
  ] as const)('agree on the advice when the results of other students %s', async (_what, widths, passed, forecast, advice) => {
    await practise(7, widths)
    for (let index = 0; index < 40; index += 1) await recordTest(60, passed, forecast)
    await database.query('update "TestAttempt" set "studentId" = $1 where "programId" = $2', [school.people.classmate, school.programId])
    const asOf = new Date()
    const explained = await detail(asOf)
    expect(explained.advice).toBe(advice)
    expect(figures(await board(asOf))).toEqual(figures(explained))
  })

  it('stand still when nothing is written', async () => {
    await practise(6)
    const asOf = new Date()
    expect(await board(asOf)).toEqual(await board(asOf))
    expect(await detail(asOf)).toEqual(await detail(asOf))
  })
})

describe('a test', () => {
  it('does not stop a late inspection of a coupon welded before it', async () => {
    await practise(6, [CLEAN], 5)
    const id = await weld(new Date(Date.now() - 4 * DAY_MS))
    await recordTest(1, false, 0.7)
    await inspect(id)
    expect(await board(new Date())).toMatchObject({ couponsUsed: 7 })
    expect(await detail(new Date())).toMatchObject({ couponsUsed: 7, reasons: expect.arrayContaining(['failed-test-needs-coupons']) })
  })

  it('does not stop a coupon logged late, welded before it', async () => {
    await recordTest(0, true, null)
    await weld(new Date(Date.now() - 3 * DAY_MS))
    expect(await stored()).toMatchObject({ couponsUsed: 0 })
  })

  it('dated tomorrow by mistake does not break the page', async () => {
    await practise(5)
    await recordTest(-1, true, 0.7)
    expect(await detail(new Date())).toMatchObject({ kind: 'estimate' })
    expect(await board(new Date())).toMatchObject({ couponsUsed: 5 })
  })
})

describe('under load', () => {
  it('needs one database connection and never waits for a second while it holds the first', async () => {
    await practise(5)
    vi.resetModules() // a server that just started: nothing is held in memory yet, the connections stay
    const fresh = await import('@/app/_server/data/skills')
    let release = (): void => {}
    const free = new Promise<void>((resolve) => { release = resolve })
    // Nine of the ten connections are busy.
    const busy = Array.from({ length: 9 }, () => db().$transaction(async (tx) => { await tx.$queryRaw`select 1`; await free }, { timeout: 20_000 }))
    try {
      expect(await fresh.findReadiness(instructor, key(), new Date())).toMatchObject({ assessment: { kind: 'estimate' } })
    } finally {
      release()
      await Promise.all(busy)
    }
  })

  it('keeps one standing when coupons and looks arrive together', async () => {
    const ids = await practise(5)
    await Promise.all([
      ...Array.from({ length: 4 }, () => logAs(school, student, randomUUID())), ...ids.map((id) => inspect(id, TOO_WIDE, 2)),
    ])
    expect(await board(new Date())).toMatchObject({ couponCount: 9, inspectedCount: 5, acceptedCount: 0, waitingCount: 4, couponsUsed: 5 })
    const evidence = (await findReadiness(instructor, key(), new Date()))!.evidence
    expect(filterStateSchema.parse((await stored())?.filterState)).toEqual(stateAfter(evidence.judged.map(({ coupon }) => coupon)))
  })
})

import 'server-only'
import type { CriteriaSet } from '@/lib/criteria/types'
import { assessReadiness, type Assessment, type ReadinessRule, type TestResult } from '@/lib/readiness/assess'
import { carrier } from '@/lib/readiness/carry-forward'
import { blockingRules } from '@/lib/readiness/blocking'
import { couponsFromRecords, type CouponRecord, type Evidence, type JudgedCoupon } from '@/lib/readiness/coupons-from-records'
import type { Advice } from '@/lib/readiness/decide'
import { stateAfter } from '@/lib/readiness/incremental'
import { calendarDay, dayOfDate } from '@/lib/reports/calendar'
import { filterStateSchema } from '@/lib/schemas/filter-state'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { criteriaSet } from './criteria'
import { toScorecard } from './scorecards'
import { classScope, studentScope, taughtClassScope } from './scope'

export type SkillKey = { readonly programId: string; readonly studentId: string; readonly exerciseId: string }

/** More coupons of one exercise than any student makes; the oldest beyond them no longer say anything about today. */
const MOST_COUPONS = 200
/** Test results that correct the program's estimates: the latest, so that the work does not grow with the program's age. */
const MOST_RESULTS = 500

/** Locks a student's row for an exercise, making it if need be: whoever writes coupons or inspections of it waits here. */
export async function holdSkill(tx: Transaction, key: SkillKey): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO "SkillSummary" ("programId", "studentId", "exerciseId", "updatedAt")
    VALUES (${key.programId}::uuid, ${key.studentId}::uuid, ${key.exerciseId}::uuid, now())
    ON CONFLICT DO NOTHING`
  await tx.$queryRaw`
    SELECT 1 FROM "SkillSummary"
    WHERE "programId" = ${key.programId}::uuid AND "studentId" = ${key.studentId}::uuid AND "exerciseId" = ${key.exerciseId}::uuid
    FOR UPDATE`
}

const couponSelect = {
  receivedAt: true, weldedAt: true, verdict: true, mark: true, selfVerdict: true, selfMark: true,
  inspections: { where: { supersededAt: null }, select: { kind: true, scorecard: { include: { findings: true } } } },
} as const

type CouponRow = Prisma.CouponGetPayload<{ select: typeof couponSelect }>

async function toRecord(tx: Transaction, programId: string, row: CouponRow, day: number): Promise<CouponRecord> {
  const inspections: CouponRecord['inspections'][number][] = []
  for (const { kind, scorecard } of row.inspections) {
    if (!scorecard) continue
    const criteria = await criteriaSet(programId, scorecard.criteriaId, scorecard.criteriaVersion, tx)
    inspections.push({ by: kind, scorecard: toScorecard(scorecard, criteria), criteria })
  }
  return { day, inspections }
}

export type PracticeRecords = { readonly rows: readonly CouponRow[]; readonly records: readonly CouponRecord[]; readonly lastDay: number }

/** This student's coupons of one exercise as the readiness model reads them, oldest first. */
async function practiceRecords(tx: Transaction, key: SkillKey, timeZone: string): Promise<PracticeRecords> {
  const rows = await tx.coupon.findMany({ where: key, orderBy: { number: 'desc' }, take: MOST_COUPONS, select: couponSelect })
  rows.reverse()
  const records: CouponRecord[] = []
  // A device's clock may put coupons out of order; their number is the order they were logged in, so days only ever go forward.
  let lastDay = -Infinity
  for (const row of rows) {
    lastDay = Math.max(lastDay, calendarDay(row.weldedAt < row.receivedAt ? row.weldedAt : row.receivedAt, timeZone))
    records.push(await toRecord(tx, key.programId, row, lastDay))
  }
  return { rows, records, lastDay }
}

/** Whether the latest judged coupon shows a crack or missing fusion: talked over before any test. */
function blockingOpen(judged: readonly JudgedCoupon[], criteria: CriteriaSet | null): boolean {
  const last = judged.at(-1)
  return last !== undefined && criteria !== null && blockingRules(last.lead.scorecard, criteria).length > 0
}

/** The program's latest test results that carry what had been said of them, oldest first: they correct its estimates. */
async function forecastResults(tx: Transaction, programId: string): Promise<(TestResult & { forecast: number })[]> {
  const rows = await tx.testAttempt.findMany({
    where: { programId, forecast: { not: null } }, orderBy: [{ testedOn: 'desc' }, { id: 'desc' }], take: MOST_RESULTS, select: { passed: true, forecast: true },
  })
  return rows.reverse().flatMap(({ passed, forecast }) => (forecast === null ? [] : [{ passed, forecast }]))
}

/** The coordinator's rule with the program's test results and this student's own tests of this exercise. */
async function ruleFor(tx: Transaction, key: SkillKey): Promise<{ rule: ReadinessRule; timeZone: string; lastTestDay: number }> {
  const { timeZone, readinessThreshold, minimumCoupons, staleAfterDays } = await tx.program.findUniqueOrThrow({
    where: { id: key.programId },
    select: { readinessThreshold: true, minimumCoupons: true, staleAfterDays: true, timeZone: true },
  })
  const tests = await tx.testAttempt.findMany({ where: key, orderBy: [{ testedOn: 'asc' }, { createdAt: 'asc' }], select: { passed: true, testedOn: true } })
  const own = tests.map(({ passed, testedOn }) => ({ passed, day: dayOfDate(testedOn) }))
  const testResults: TestResult[] = [...(await forecastResults(tx, key.programId)), ...own]
  return { timeZone, rule: { threshold: readinessThreshold, minimumCoupons, staleAfterDays, testResults }, lastTestDay: own.at(-1)?.day ?? -Infinity }
}

export type ReadinessRecord = {
  readonly assessment: Assessment
  readonly evidence: Evidence
  readonly rule: ReadinessRule
  /** Days since 1970-01-01 at the program's place; the coupons' own count. */
  readonly asOfDay: number
}

async function readinessIn(tx: Transaction, key: SkillKey, asOf: Date | null): Promise<ReadinessRecord & { practice: PracticeRecords }> {
  const { rule, timeZone, lastTestDay } = await ruleFor(tx, key)
  const practice = await practiceRecords(tx, key, timeZone)
  const evidence = couponsFromRecords(practice.records)
  const lead = evidence.judged.at(-1)?.lead
  const before = await tx.skillSummary.findUnique({ where: { programId_studentId_exerciseId: key }, select: { advice: true } })
  const previousAdvice = adviceOf(before?.advice ?? null)
  const full = {
    ...rule,
    ...(previousAdvice && { previousAdvice }),
    ...(lead && { blockingOpen: blockingOpen(evidence.judged, lead.criteria as CriteriaSet) }),
  }
  // A write is reckoned from the last thing that happened, which may be a test after the coupon; a test dated ahead by mistake breaks nothing.
  const asOfDay = Math.max(asOf ? calendarDay(asOf, timeZone) : 0, practice.lastDay, lastTestDay, 0)
  const assessment = assessReadiness(evidence.judged.map(({ coupon }) => coupon), asOfDay, full)
  return { assessment, evidence, rule: full, asOfDay, practice }
}

/** Counts over every coupon there is, however many the model reads. */
async function countsOf(tx: Transaction, key: SkillKey) {
  const byVerdict = await tx.coupon.groupBy({ by: ['verdict'], where: key, _count: { _all: true, waitingSince: true } })
  const of = (...verdicts: readonly (string | null)[]): number =>
    byVerdict.reduce((sum, { verdict, _count }) => sum + (verdicts.includes(verdict) ? _count._all : 0), 0)
  const { _sum } = await tx.pass.aggregate({ where: { programId: key.programId, coupon: key }, _sum: { arcSeconds: true } })
  return {
    couponCount: of('accept', 'reject', 'incomplete', null),
    inspectedCount: of('accept', 'reject'),
    acceptedCount: of('accept'),
    waitingCount: byVerdict.reduce((sum, { _count }) => sum + _count.waitingSince, 0),
    arcSeconds: _sum.arcSeconds ?? 0,
  }
}

/** Works out a student's standing in one exercise again, inside the transaction of the write that changed it. */
export async function refreshSkill(tx: Transaction, key: SkillKey): Promise<void> {
  const { assessment, evidence, practice } = await readinessIn(tx, key, null)
  const last = practice.rows.at(-1)
  const estimate = assessment.kind === 'estimate' ? assessment : null
  await tx.skillSummary.update({
    where: { programId_studentId_exerciseId: key },
    data: {
      ...(await countsOf(tx, key)),
      lastCouponAt: last?.receivedAt ?? null,
      lastMark: last ? (last.mark ?? last.selfMark) : null,
      lastVerdict: last ? (last.verdict ?? last.selfVerdict) : null,
      probability: estimate?.probability ?? null,
      low: estimate?.low ?? null,
      high: estimate?.high ?? null,
      level: estimate?.level ?? null,
      advice: estimate?.advice ?? null,
      couponsUsed: assessment.kind === 'estimate' ? assessment.couponsUsed : assessment.have,
      filterState: stateAfter(evidence.judged.map(({ coupon }) => coupon)) as unknown as Prisma.InputJsonObject,
      modelVersion: estimate?.modelVersion ?? null,
    },
  })
}

export type SkillRecord = {
  readonly studentId: string
  readonly exerciseId: string
  readonly couponCount: number
  readonly inspectedCount: number
  readonly acceptedCount: number
  readonly waitingCount: number
  readonly arcSeconds: number
  readonly lastCouponAt: Date | null
  readonly lastMark: number | null
  readonly lastVerdict: 'accept' | 'reject' | 'incomplete' | null
  readonly probability: number | null
  readonly low: number | null
  readonly high: number | null
  readonly level: number | null
  readonly advice: Advice | null
  readonly couponsUsed: number
}

const skillSelect = {
  studentId: true, exerciseId: true, couponCount: true, inspectedCount: true, acceptedCount: true, waitingCount: true, arcSeconds: true,
  lastCouponAt: true, lastMark: true, lastVerdict: true, probability: true, advice: true, couponsUsed: true, filterState: true,
} as const

type SkillRow = Prisma.SkillSummaryGetPayload<{ select: typeof skillSelect }>
const ADVICE = ['practise', 'close', 'test', 'stale'] as const satisfies readonly Advice[]
const adviceOf = (stored: string | null): Advice | null => ADVICE.find((advice) => advice === stored) ?? null

/** Carries stored standings to today: between two coupons only time has passed, so one step of the model is enough. */
async function asOfToday(programId: string, rows: readonly SkillRow[], asOf: Date): Promise<SkillRecord[]> {
  if (rows.length === 0) return []
  const program = await db().program.findUniqueOrThrow({ where: { id: programId }, select: { timeZone: true, readinessThreshold: true, staleAfterDays: true } })
  const results = await forecastResults(db(), programId)
  const carry = carrier({ threshold: program.readinessThreshold, staleAfterDays: program.staleAfterDays, results }, calendarDay(asOf, program.timeZone))
  return rows.map(({ probability, filterState, advice: stored, ...row }) => {
    const advice = adviceOf(stored)
    const now = probability === null || advice === null || filterState === null ? null : carry({ state: filterStateSchema.parse(filterState), advice })
    return { ...row, probability: now?.probability ?? null, low: now?.low ?? null, high: now?.high ?? null, level: now?.level ?? null, advice: now?.advice ?? null }
  })
}

/** One student's standing today in every exercise they have practised. Empty when the student is not the viewer's to see. */
export async function listStudentSkills(viewer: Viewer, studentId: string, asOf = new Date()): Promise<SkillRecord[]> {
  const rows = await db().skillSummary.findMany({
    where: { programId: viewer.programId, studentId, student: studentScope(viewer) }, select: skillSelect,
  })
  return asOfToday(viewer.programId, rows, asOf)
}

/** The standing today of every active student of a class in the class's exercises. Staff of the class only. */
export async function listClassSkills(viewer: Viewer, classId: string, asOf = new Date()): Promise<SkillRecord[]> {
  const { programId } = viewer
  const staff = viewer.roles.includes('coordinator') ? classScope(viewer) : taughtClassScope(viewer)
  const rows = await db().skillSummary.findMany({
    where: {
      programId,
      student: { enrolments: { some: { programId, classId, withdrawnAt: null, class: staff } } },
      exercise: { inClasses: { some: { programId, classId } } },
    },
    select: skillSelect,
  })
  return asOfToday(programId, rows, asOf)
}

/** Readiness worked out in full for a page that explains it, or null when the student is not the viewer's to see. */
export async function findReadiness(viewer: Viewer, key: { studentId: string; exerciseId: string }, asOf: Date): Promise<ReadinessRecord | null> {
  const student = await db().person.findFirst({ where: { AND: [{ id: key.studentId }, studentScope(viewer)] }, select: { id: true } })
  if (!student) return null
  return db().$transaction(async (tx) => {
    const { practice: _practice, ...found } = await readinessIn(tx, { programId: viewer.programId, ...key }, asOf)
    return found
  })
}

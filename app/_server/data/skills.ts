import 'server-only'
import type { CriteriaSet } from '@/lib/criteria/types'
import { assessReadiness, type Assessment, type ReadinessRule } from '@/lib/readiness/assess'
import { blockingRules } from '@/lib/readiness/blocking'
import { carrier } from '@/lib/readiness/carry-forward'
import type { Evidence, JudgedCoupon } from '@/lib/readiness/coupons-from-records'
import type { Advice } from '@/lib/readiness/decide'
import type { FilterState } from '@/lib/readiness/incremental'
import { calendarDay } from '@/lib/reports/calendar'
import { filterStateSchema } from '@/lib/schemas/filter-state'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { modelInUse } from './model-in-use'
import { evidenceOf, practiceOf, type SkillKey } from './practice'
import { forecastResults, ruleFor } from './readiness-rule'
import { secondLookScope, staffClassScope, studentScope } from './scope'
import { seriesOf } from './series'

export type { SkillKey } from './practice'

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

/** Whether the latest judged coupon shows a crack or missing fusion: talked over before any test. */
function blockingOpen(last: JudgedCoupon | undefined): boolean {
  return last !== undefined && blockingRules(last.lead.scorecard, last.lead.criteria as CriteriaSet).length > 0
}

/** The rule with what is known of this student beside the coupons. */
const inFull = (rule: ReadinessRule, stored: string | null | undefined, last: JudgedCoupon | undefined): ReadinessRule => {
  const previousAdvice = adviceOf(stored ?? null)
  return { ...rule, ...(previousAdvice && { previousAdvice }), blockingOpen: blockingOpen(last) }
}

export type ReadinessRecord = {
  readonly assessment: Assessment
  readonly evidence: Evidence
  readonly rule: ReadinessRule
  /** Days since 1970-01-01 at the program's place; the coupons' own count. */
  readonly asOfDay: number
}

async function readinessIn(tx: Transaction, key: SkillKey, asOf: Date, seen: Prisma.CouponWhereInput = {}): Promise<ReadinessRecord> {
  const { rule, timeZone, lastTestDay } = await ruleFor(tx, key)
  const practice = await practiceOf(tx, key, timeZone, { seen })
  const { evidence } = await evidenceOf(tx, practice)
  const before = await tx.skillSummary.findUnique({ where: { programId_studentId_exerciseId: key }, select: { advice: true } })
  const full = inFull(rule, before?.advice, evidence.judged.at(-1))
  // A test dated ahead by mistake breaks nothing.
  const asOfDay = Math.max(calendarDay(asOf, timeZone), practice.lastDay, lastTestDay)
  const assessment = assessReadiness(evidence.judged.map(({ coupon }) => coupon), asOfDay, full)
  return { assessment, evidence, rule: full, asOfDay }
}

/** What the model in use, before the program's correction, says of a test on a day, and the model. */
export type Forecast = { readonly forecast: number; readonly modelVersion: string }

/**
 * The forecast of a test on `testDay`, from the coupons up to that day, inspected as they stand now; null while there are too few.
 *
 * @param testDay days since 1970-01-01 at the program's place
 */
export async function forecastFor(tx: Transaction, key: SkillKey, testDay: number): Promise<Forecast | null> {
  const { rule, timeZone } = await ruleFor(tx, key)
  const { evidence } = await evidenceOf(tx, await practiceOf(tx, key, timeZone, { until: testDay }))
  const assessment = assessReadiness(evidence.judged.map(({ coupon }) => coupon), testDay, { ...rule, testResults: [] })
  return assessment.kind === 'estimate' ? { forecast: assessment.uncalibrated, modelVersion: assessment.modelVersion } : null
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

/**
 * Works out a student's standing in one exercise again, inside the transaction of the write that changed it; the row must be held.
 *
 * @returns how many coupons the filter read: one or two when it could go on from the stored belief
 */
export async function refreshSkill(tx: Transaction, key: SkillKey): Promise<{ readonly absorbed: number }> {
  const { rule, model, timeZone, lastTestDay } = await ruleFor(tx, key)
  const practice = await practiceOf(tx, key, timeZone)
  const stored = await tx.skillSummary.findUniqueOrThrow({
    where: { programId_studentId_exerciseId: key }, select: { advice: true, stateBefore: true, printBefore: true },
  })
  const series = await seriesOf(tx, practice, model, stored)
  // Reckoned from the last thing that happened, which may be a test after the coupon.
  const asOfDay = Math.max(practice.lastDay, lastTestDay, 0)
  const assessment = assessReadiness(series.coupons, asOfDay, inFull(rule, stored.advice, series.last), series.state)
  const estimate = assessment.kind === 'estimate' ? assessment : null
  const last = practice.rows.at(-1)
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
      filterState: json(series.state),
      modelVersion: model.version,
      stateBefore: json(series.before),
      printBefore: series.printBefore,
    },
  })
  return { absorbed: series.absorbed }
}

const json = (state: FilterState): Prisma.InputJsonObject => ({ ...state, mass: [...state.mass] })

/**
 * Works out again the standings that belong to another model than the one in use, the latest practised first.
 *
 * @param most how long to go on with it, in milliseconds, and how many to take; all of them when absent
 * @returns how many there were
 */
export async function renewStandings(programId: string, where: Prisma.SkillSummaryWhereInput = {}, most: { readonly count?: number; readonly ms?: number } = {}): Promise<number> {
  const { version } = await modelInUse(programId)
  const keys = await db().skillSummary.findMany({
    where: { AND: [where, { programId, OR: [{ modelVersion: null }, { modelVersion: { not: version } }] }] },
    orderBy: { lastCouponAt: { sort: 'desc', nulls: 'last' } }, ...(most.count !== undefined && { take: most.count }),
    select: { programId: true, studentId: true, exerciseId: true },
  })
  const until = Date.now() + (most.ms ?? Infinity)
  let renewed = 0
  for (const key of keys) {
    if (Date.now() >= until) break
    await db().$transaction(async (tx) => {
      await holdSkill(tx, key)
      await refreshSkill(tx, key)
    })
    renewed += 1
  }
  return renewed
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
  lastCouponAt: true, lastMark: true, lastVerdict: true, probability: true, advice: true, couponsUsed: true, filterState: true, modelVersion: true,
} as const

const ADVICE = ['practise', 'close', 'test', 'stale'] as const satisfies readonly Advice[]
const adviceOf = (stored: string | null): Advice | null => ADVICE.find((advice) => advice === stored) ?? null

/**
 * Stored standings carried to today: between two coupons only time has passed, so one step of the model is enough. A stored belief
 * belongs to its model, so standings of another one are worked out again first; one that is still of another model afterwards, because
 * a new one was adopted in the meantime, shows no chance until it is read again.
 */
async function standingsToday(programId: string, where: Prisma.SkillSummaryWhereInput, asOf: Date): Promise<SkillRecord[]> {
  const read = () => db().skillSummary.findMany({ where, select: skillSelect })
  const model = await modelInUse(programId)
  let rows = await read()
  if (rows.some(({ modelVersion }) => modelVersion !== model.version)) {
    await renewStandings(programId, where)
    rows = await read()
  }
  if (rows.length === 0) return []
  const program = await db().program.findUniqueOrThrow({ where: { id: programId }, select: { timeZone: true, readinessThreshold: true, staleAfterDays: true } })
  const carry = carrier({
    threshold: program.readinessThreshold, staleAfterDays: program.staleAfterDays, results: await forecastResults(db(), programId, model), parameters: model.parameters,
  }, calendarDay(asOf, program.timeZone))
  const today: SkillRecord[] = []
  for (const { probability, filterState, advice: stored, modelVersion, ...row } of rows) {
    const advice = adviceOf(stored)
    const now = probability === null || advice === null || modelVersion !== model.version ? null : carry({ state: filterStateSchema.parse(filterState), advice })
    const risen = now !== null && now.probability >= program.readinessThreshold && (now.advice === 'practise' || now.advice === 'close')
    today.push({
      ...row, probability: now?.probability ?? null, low: now?.low ?? null, high: now?.high ?? null, level: now?.level ?? null,
      advice: risen ? await adviceInFull({ programId, ...row }, asOf) : (now?.advice ?? null),
    })
  }
  return today
}

/**
 * The advice with everything that decides it. The stored one does not say whether the chance alone kept it down, and a chance can reach
 * the threshold without a write: other students' test results correct it too.
 */
async function adviceInFull({ programId, studentId, exerciseId }: SkillKey, asOf: Date): Promise<Advice | null> {
  const { assessment } = await db().$transaction((tx) => readinessIn(tx, { programId, studentId, exerciseId }, asOf))
  return assessment.kind === 'estimate' ? assessment.advice : null
}

/**
 * One student's standing today in every exercise they have practised. Empty when the student is not the viewer's to see. A coupon that the
 * viewer may have to read a second time is not counted as inspected.
 */
export async function listStudentSkills(viewer: Viewer, studentId: string, asOf = new Date()): Promise<SkillRecord[]> {
  const [skills, unread] = await Promise.all([
    standingsToday(viewer.programId, { programId: viewer.programId, studentId, student: studentScope(viewer) }, asOf),
    db().coupon.groupBy({ by: ['exerciseId', 'verdict'], where: { AND: [{ studentId }, secondLookScope(viewer)] }, _count: { _all: true } }),
  ])
  return skills.map((skill) => {
    const count = (...verdicts: readonly (string | null)[]): number => unread.reduce(
      (sum, each) => sum + (each.exerciseId === skill.exerciseId && verdicts.includes(each.verdict) ? each._count._all : 0), 0)
    return { ...skill, inspectedCount: skill.inspectedCount - count('accept', 'reject'), acceptedCount: skill.acceptedCount - count('accept') }
  })
}

/** The standing today of every active student of a class in the class's exercises. Staff of the class only. */
export async function listClassSkills(viewer: Viewer, classId: string, asOf = new Date()): Promise<SkillRecord[]> {
  const { programId } = viewer
  return standingsToday(programId, {
    programId,
    student: { enrolments: { some: { programId, classId, withdrawnAt: null, class: staffClassScope(viewer) } } },
    exercise: { inClasses: { some: { programId, classId } } },
  }, asOf)
}

/**
 * Readiness worked out in full for a page that explains it, or null when the student is not the viewer's to see. A coupon that the viewer may
 * have to read a second time counts as not inspected.
 */
export async function findReadiness(viewer: Viewer, key: { studentId: string; exerciseId: string }, asOf: Date): Promise<ReadinessRecord | null> {
  const student = await db().person.findFirst({ where: { AND: [{ id: key.studentId }, studentScope(viewer)] }, select: { id: true } })
  return student && db().$transaction((tx) => readinessIn(tx, { programId: viewer.programId, ...key }, asOf, { NOT: secondLookScope(viewer) }))
}

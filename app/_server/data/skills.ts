import 'server-only'
import { couponsFromRecords, type JudgedCoupon } from '@/lib/readiness/coupons-from-records'
import { assessReadiness, type Assessment, type ReadinessRule, type TestResult } from '@/lib/readiness/assess'
import { stateAfter } from '@/lib/readiness/incremental'
import { calendarDay, dayOfDate } from '@/lib/reports/calendar'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { classScope, studentScope, taughtClassScope } from './scope'

export type SkillKey = { readonly programId: string; readonly studentId: string; readonly exerciseId: string }

/** More coupons of one exercise than any student makes; the oldest beyond them no longer say anything about today. */
const MOST_COUPONS = 400
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
  id: true, receivedAt: true, weldedAt: true, verdict: true, waitingSince: true, mark: true, selfVerdict: true, selfMark: true,
  passes: { select: { arcSeconds: true } },
  inspections: {
    where: { supersededAt: null },
    select: { kind: true, scorecard: { select: { verdict: true, worstMargin: true, attributesGood: true } } },
  },
} as const

type CouponRow = Prisma.CouponGetPayload<{ select: typeof couponSelect }>

function toJudged(row: CouponRow, timeZone: string): JudgedCoupon {
  const look = (kind: 'self' | 'instructor') => row.inspections.find((each) => each.kind === kind)?.scorecard ?? null
  return { day: calendarDay(row.weldedAt < row.receivedAt ? row.weldedAt : row.receivedAt, timeZone), instructor: look('instructor'), self: look('self') }
}

/** This student's coupons of one exercise as the readiness model reads them, oldest first. */
async function judgedCoupons(tx: Transaction, key: SkillKey, timeZone: string): Promise<{ rows: CouponRow[]; judged: JudgedCoupon[] }> {
  const rows = await tx.coupon.findMany({ where: key, orderBy: { number: 'desc' }, take: MOST_COUPONS, select: couponSelect })
  rows.reverse()
  // A device's clock may put coupons out of order; their number is the order they were logged in, so days only ever go forward.
  let latest = -Infinity
  const judged = rows.map((row) => {
    const coupon = toJudged(row, timeZone)
    latest = Math.max(latest, coupon.day)
    return { ...coupon, day: latest }
  })
  return { rows, judged }
}

/** The coordinator's rule with the program's test results; `own` marks this student's tests of this exercise. */
async function ruleFor(tx: Transaction, key: SkillKey): Promise<{ rule: ReadinessRule; timeZone: string }> {
  const program = await tx.program.findUniqueOrThrow({
    where: { id: key.programId },
    select: { readinessThreshold: true, minimumCoupons: true, staleAfterDays: true, timeZone: true },
  })
  const results = await tx.testAttempt.findMany({
    where: { programId: key.programId, OR: [{ forecast: { not: null } }, { studentId: key.studentId, exerciseId: key.exerciseId }] },
    orderBy: [{ testedOn: 'desc' }, { id: 'desc' }],
    take: MOST_RESULTS,
    select: { passed: true, forecast: true, testedOn: true, studentId: true, exerciseId: true },
  })
  const testResults = results.reverse().map((row): TestResult => ({
    passed: row.passed,
    ...(row.forecast !== null && { forecast: row.forecast }),
    ...(row.studentId === key.studentId && row.exerciseId === key.exerciseId && { day: dayOfDate(row.testedOn) }),
  }))
  return {
    timeZone: program.timeZone,
    rule: {
      threshold: program.readinessThreshold, minimumCoupons: program.minimumCoupons, staleAfterDays: program.staleAfterDays, testResults,
    },
  }
}

/** Works out a student's standing in one exercise again, inside the transaction of the write that changed it. */
export async function refreshSkill(tx: Transaction, key: SkillKey): Promise<void> {
  const { rule, timeZone } = await ruleFor(tx, key)
  const { rows, judged } = await judgedCoupons(tx, key, timeZone)
  const coupons = couponsFromRecords(judged).coupons
  const last = rows.at(-1)
  const asOf = judged.at(-1)?.day ?? 0
  const assessment = assessReadiness(coupons, asOf, rule)
  const estimate = assessment.kind === 'estimate' ? assessment : null
  const inspected = rows.filter((row) => row.verdict === 'accept' || row.verdict === 'reject')
  await tx.skillSummary.update({
    where: { programId_studentId_exerciseId: key },
    data: {
      couponCount: rows.length,
      inspectedCount: inspected.length,
      acceptedCount: inspected.filter((row) => row.verdict === 'accept').length,
      waitingCount: rows.filter((row) => row.waitingSince !== null).length,
      arcSeconds: rows.flatMap((row) => row.passes).reduce((sum, pass) => sum + (pass.arcSeconds ?? 0), 0),
      lastCouponAt: last?.receivedAt ?? null,
      lastMark: last ? (last.mark ?? last.selfMark) : null,
      lastVerdict: last ? (last.verdict ?? last.selfVerdict) : null,
      probability: estimate?.probability ?? null,
      low: estimate?.low ?? null,
      high: estimate?.high ?? null,
      level: estimate?.level ?? null,
      advice: estimate?.advice ?? null,
      couponsUsed: assessment.kind === 'estimate' ? assessment.couponsUsed : assessment.have,
      filterState: stateAfter(coupons) as unknown as Prisma.InputJsonObject,
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
  readonly advice: string | null
  readonly couponsUsed: number
}

const skillSelect = {
  studentId: true, exerciseId: true, couponCount: true, inspectedCount: true, acceptedCount: true, waitingCount: true, arcSeconds: true,
  lastCouponAt: true, lastMark: true, lastVerdict: true, probability: true, low: true, high: true, level: true, advice: true, couponsUsed: true,
} as const

/** One student's standing in every exercise they have practised. Empty when the student is not the viewer's to see. */
export async function listStudentSkills(viewer: Viewer, studentId: string): Promise<SkillRecord[]> {
  return db().skillSummary.findMany({ where: { programId: viewer.programId, studentId, student: studentScope(viewer) }, select: skillSelect })
}

/** The standing of every active student of a class in the class's exercises. Staff of the class only. */
export async function listClassSkills(viewer: Viewer, classId: string): Promise<SkillRecord[]> {
  const { programId } = viewer
  const staff = viewer.roles.includes('coordinator') ? classScope(viewer) : taughtClassScope(viewer)
  return db().skillSummary.findMany({
    where: {
      programId,
      student: { enrolments: { some: { programId, classId, withdrawnAt: null, class: staff } } },
      exercise: { inClasses: { some: { programId, classId } } },
    },
    select: skillSelect,
  })
}

/** The evidence of one student in one exercise: what the model read from each coupon, and its answer as of a day. */
export type ReadinessRecord = {
  readonly assessment: Assessment
  readonly coupons: ReturnType<typeof couponsFromRecords>['coupons']
  readonly rule: ReadinessRule
  readonly asOfDay: number
}

/** Readiness worked out in full for a page that explains it, or null when the student is not the viewer's to see. */
export async function findReadiness(viewer: Viewer, key: { studentId: string; exerciseId: string }, asOf: Date): Promise<ReadinessRecord | null> {
  const student = await db().person.findFirst({ where: { AND: [{ id: key.studentId }, studentScope(viewer)] }, select: { id: true } })
  if (!student) return null
  const skill = { programId: viewer.programId, ...key }
  return db().$transaction(async (tx) => {
    const { rule, timeZone } = await ruleFor(tx, skill)
    const { judged } = await judgedCoupons(tx, skill, timeZone)
    const { coupons } = couponsFromRecords(judged)
    const asOfDay = Math.max(calendarDay(asOf, timeZone), judged.at(-1)?.day ?? -Infinity)
    return { assessment: assessReadiness(coupons, asOfDay, rule), coupons, rule, asOfDay }
  })
}

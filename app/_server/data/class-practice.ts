import 'server-only'
import { defectOf, RECENT_COUPONS, type RecentCoupon } from '@/lib/coaching/needs-you/recent-coupon'
import { SAME_DEFECT_COUPONS } from '@/lib/coaching/needs-you/same-defect'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { gradableCouponScope, settledCouponScope, taughtClassScope } from './scope'

/** A student in an exercise, and how many coupons they have made of it. */
export type PractisedSkill = { readonly studentId: string; readonly exerciseId: string; readonly couponCount: number }
/** `criteria` judged the latest of them; null without coupons. */
export type RecentPractice = { readonly studentId: string; readonly exerciseId: string; readonly coupons: readonly RecentCoupon[]; readonly criteria: { readonly id: string; readonly version: number } | null }

/**
 * The latest coupons of each of these skills that an instructor has inspected, oldest first; those of the last three with what was
 * rejected. However long a program runs, no more than the last few of each are read. Coupons that wait are left out, and so are those
 * that wait for a second reader, who must come to them of themselves, unless it was the viewer who looked first.
 */
export async function listRecentPractice(viewer: Viewer, skills: readonly PractisedSkill[]): Promise<RecentPractice[]> {
  const { programId } = viewer
  if (skills.length === 0) return []
  const rows = await db().coupon.findMany({
    where: {
      AND: [gradableCouponScope(viewer), settledCouponScope(viewer)], verdict: { not: null },
      OR: skills.map(({ studentId, exerciseId, couponCount }) => ({ programId, studentId, exerciseId, number: { gt: couponCount - RECENT_COUPONS } })),
    },
    orderBy: { number: 'asc' },
    select: {
      studentId: true, exerciseId: true, number: true, verdict: true, mark: true, selfVerdict: true,
      inspections: { where: { kind: 'instructor', supersededAt: null }, select: { id: true, scorecard: { select: { criteriaId: true, criteriaVersion: true } } } },
    },
  })
  const bySkill = grouped(rows, ({ studentId, exerciseId }) => `${studentId} ${exerciseId}`)
  const latest = [...bySkill.values()].flatMap((coupons) => coupons.slice(-SAME_DEFECT_COUPONS).flatMap(({ inspections }) => inspections.map(({ id }) => id)))
  const rejected = await rejectedIn(programId, latest)
  return [...bySkill.values()].map((coupons) => {
    const last = coupons.at(-1)
    const scorecard = last?.inspections[0]?.scorecard
    return {
      studentId: last?.studentId ?? '', exerciseId: last?.exerciseId ?? '',
      criteria: scorecard ? { id: scorecard.criteriaId, version: scorecard.criteriaVersion } : null,
      coupons: coupons.flatMap(({ number, verdict, mark, selfVerdict, inspections }) =>
        verdict === null ? [] : [{ number, verdict, mark, selfVerdict, defects: rejected.get(inspections[0]?.id ?? '') ?? null }]),
    }
  })
}

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>()
  for (const row of rows) {
    const group = groups.get(keyOf(row))
    if (group) group.push(row)
    else groups.set(keyOf(row), [row])
  }
  return groups
}

async function rejectedIn(programId: string, inspectionIds: readonly string[]): Promise<ReadonlyMap<string, RecentCoupon['defects']>> {
  const found = await db().finding.findMany({
    where: { programId, inspectionId: { in: [...inspectionIds] }, verdict: 'reject' },
    orderBy: { rule: 'asc' },
    select: { inspectionId: true, rule: true, measured: true, limitMin: true, limitMax: true },
  })
  const byInspection = grouped(found, ({ inspectionId }) => inspectionId)
  return new Map(inspectionIds.map((id) => [id, (byInspection.get(id) ?? []).map(({ rule, measured, limitMin, limitMax }) => defectOf({ rule, measured, limit: { min: limitMin, max: limitMax } }))]))
}

export type StudentExercise = { readonly studentId: string; readonly exerciseId: string }

/** Which cautions the students of a class the viewer teaches have confirmed this term, in their present wording. */
export async function listAcknowledged(viewer: Viewer, classId: string, termId: string, cautionsVersion: string): Promise<StudentExercise[]> {
  const { programId } = viewer
  return db().safetyAcknowledgement.findMany({
    where: { programId, termId, cautionsVersion, student: { enrolments: { some: { programId, classId, withdrawnAt: null, class: taughtClassScope(viewer) } } } },
    select: { studentId: true, exerciseId: true },
  })
}

/** The exercises whose test the students of a class the viewer teaches have passed. */
export async function listPassedTests(viewer: Viewer, classId: string): Promise<StudentExercise[]> {
  const { programId } = viewer
  return db().testAttempt.findMany({
    where: { programId, passed: true, student: { enrolments: { some: { programId, classId, withdrawnAt: null, class: taughtClassScope(viewer) } } } },
    distinct: ['studentId', 'exerciseId'],
    select: { studentId: true, exerciseId: true },
  })
}

import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import { readStoredReadings, type StoredReadings } from '@/lib/schemas/readings'
import type { Verdict } from '@/lib/scoring/types'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { toExercise, type ExerciseRecord } from './exercises'
import { couponScope, gradableCouponScope, secondLookScope } from './scope'

/** A coupon with the look that leads it, and what its criteria made of that look. */
export type JudgedCoupon = {
  readonly couponId: string
  readonly number: number
  readonly student: string
  readonly receivedAt: Date
  readonly exercise: ExerciseRecord
  readonly readings: StoredReadings
  /** As computed from the readings; an instructor's own verdict over it is not looked at. */
  readonly verdict: Verdict
  readonly decided: boolean
}

/** Whose coupons: of one exercise, or of every exercise whose present version is judged by some version of a set. */
export type CouponsOf = { readonly exerciseId: string } | { readonly criteriaId: string }

const looks = {
  where: { supersededAt: null, kind: { in: ['self', 'instructor'] } },
  select: { kind: true, readings: true, scorecard: { select: { verdict: true, override: { select: { verdict: true } } } } },
} as const satisfies Prisma.Coupon$inspectionsArgs

/**
 * The last coupons that were judged, newest first, as their instructor read them, or as the student did where no instructor has. For staff:
 * a coordinator sees all of the program, an instructor those of their classes. What waits for the viewer's own look is left out: that look
 * is blind.
 */
export async function listJudgedCoupons(viewer: Viewer, of: CouponsOf, most: number): Promise<JudgedCoupon[]> {
  if (!hasRole(viewer, 'coordinator') && !hasRole(viewer, 'instructor')) return []
  const exerciseIds = 'exerciseId' in of ? [of.exerciseId] : await exercisesJudgedBy(viewer, of.criteriaId)
  const rows = await db().coupon.findMany({
    where: {
      AND: [
        { exerciseId: { in: exerciseIds }, inspections: { some: { supersededAt: null, kind: { in: ['self', 'instructor'] }, scorecard: { isNot: null } } } },
        couponScope(viewer),
        { NOT: [{ AND: [{ waitingSince: { not: null } }, gradableCouponScope(viewer)] }, secondLookScope(viewer)] },
      ],
    },
    orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }], take: most,
    select: { id: true, number: true, receivedAt: true, student: { select: { givenName: true, familyName: true } }, exercise: true, inspections: looks },
  })
  return rows.flatMap((row) => {
    const look = row.inspections.find(({ kind, scorecard }) => kind === 'instructor' && scorecard) ?? row.inspections.find(({ scorecard }) => scorecard)
    if (!look?.scorecard) return []
    return {
      couponId: row.id, number: row.number, student: fullName(row.student), receivedAt: row.receivedAt, exercise: toExercise(row.exercise),
      readings: readStoredReadings(look.readings), verdict: look.scorecard.verdict, decided: look.scorecard.override !== null,
    }
  })
}

async function exercisesJudgedBy({ programId }: Viewer, criteriaId: string): Promise<string[]> {
  const rows = await db().exercise.findMany({
    where: { programId, archivedAt: null, versions: { some: { criteriaId } } },
    select: { id: true, currentVersion: true, versions: { where: { criteriaId }, select: { version: true } } },
  })
  return rows.filter(({ currentVersion, versions }) => versions.some(({ version }) => version === currentVersion)).map(({ id }) => id)
}

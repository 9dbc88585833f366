import 'server-only'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { couponInclude, lookInclude, toCoupon, type CouponRecord, type CouponRow, type InspectionRecord } from './coupon-record'
import { gradableCouponScope, secondLookScope, waitingCouponScope } from './scope'
import { takenOf, type TakenBy } from './waiting-coupons'

/**
 * What an instructor sees before submitting: the coupon without a single number of the student's own inspection, nor their verdict. A
 * second reader sees as little of the first look, and not that there was one.
 */
export type BlindCoupon = Omit<CouponRecord, 'inspections' | 'selfVerdict' | 'selfMark' | 'note'> & {
  /** The standing instructor's inspection, when this is a correction. */
  readonly standing: InspectionRecord | null
  readonly nextRevision: number
}

/** The first look and its corrections, but for those who may have to read the coupon a second time. */
const blindInclude = (viewer: Viewer) => ({
  ...couponInclude, inspections: { ...lookInclude, where: { kind: 'instructor', coupon: { NOT: secondLookScope(viewer) } } },
} satisfies Prisma.CouponInclude)

/** A coupon as it is shown for grading, or null when the viewer may not grade it. */
export async function findBlindCoupon(viewer: Viewer, couponId: string): Promise<BlindCoupon | null> {
  const row = await db().coupon.findFirst({ where: { AND: [{ id: couponId }, gradableCouponScope(viewer)] }, include: blindInclude(viewer) })
  return row && toBlind(row)
}

/** Of a row read without the looks that are not for this reader: what is left of them on the coupon itself is dropped here. */
async function toBlind(row: CouponRow): Promise<BlindCoupon> {
  const { inspections, selfVerdict: _verdict, selfMark: _mark, note: _note, ...coupon } = await toCoupon(row)
  const standing = inspections.find((inspection) => !inspection.superseded) ?? null
  return {
    ...coupon, ...(standing === null && { verdict: null, mark: null, waiting: true }), standing,
    nextRevision: Math.max(0, ...inspections.map((inspection) => inspection.revision)) + 1,
  }
}

/** More coupons than one sitting grades; the rest follow when these are done. */
const MOST_IN_GRID = 60

/** The coupons of one exercise that wait in a taught class, as they are shown for grading, longest waiting first. */
export async function listBlindWaiting(viewer: Viewer, key: { classId: string; exerciseId: string }): Promise<(BlindCoupon & { readonly takenBy: TakenBy })[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ classId: key.classId, exerciseId: key.exerciseId }, waitingCouponScope(viewer)] },
    orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    take: MOST_IN_GRID,
    include: { ...blindInclude(viewer), takenBy: { select: { givenName: true, familyName: true } } },
  })
  return Promise.all(rows.map(async ({ takenBy, ...row }) => ({ ...(await toBlind(row)), takenBy: takenOf(viewer, { ...row, takenBy }) })))
}

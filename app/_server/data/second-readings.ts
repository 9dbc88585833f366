import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { couponInclude, lookInclude, toCoupon, type CouponRecord } from './coupon-record'
import { taughtClassScope } from './scope'
import { elsewhereScope } from './second-offers'
import { takenOf, type TakenBy } from './waiting-coupons'

/** A coupon of another class that a second person is to look at: where it lies. Whose it is, they need not know. */
export type ElsewhereLine = {
  readonly id: string
  readonly className: string
  readonly booth: number | null
  readonly exerciseTitle: string
  readonly number: number
  readonly since: Date
  readonly takenBy: TakenBy
}

const MOST_ELSEWHERE = 50

/** Coupons of classes the viewer does not teach that wait for them to look, longest waiting first. */
export async function listElsewhere(viewer: Viewer): Promise<ElsewhereLine[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [await elsewhereScope(viewer), { class: { archivedAt: null } }] },
    orderBy: [{ secondWaitingSince: 'asc' }, { id: 'asc' }],
    take: MOST_ELSEWHERE,
    select: {
      id: true, number: true, booth: true, receivedAt: true, class: { select: { name: true } }, takenById: true, takenAt: true, takenBy: { select: { givenName: true, familyName: true } },
      exercise: { select: { title: true } },
    },
  })
  return rows.map((row) => ({
    id: row.id, className: row.class.name, booth: row.booth, exerciseTitle: row.exercise.title, number: row.number, since: row.receivedAt, takenBy: takenOf(viewer, row),
  }))
}

/** What a reader from another class sees of a coupon: where it lies, the weld and its photos, without its student and without any look at it. */
export type ElsewhereCoupon = Pick<CouponRecord, 'id' | 'className' | 'booth' | 'number' | 'weldedAt' | 'exercise' | 'photos'>

/** A coupon of another class as it is shown for a second reading, or null when it is not the viewer's to read. */
export async function findElsewhere(viewer: Viewer, couponId: string): Promise<ElsewhereCoupon | null> {
  const row = await db().coupon.findFirst({
    where: { AND: [{ id: couponId }, await elsewhereScope(viewer)] },
    include: { ...couponInclude, inspections: { ...lookInclude, where: { id: { in: [] } } } },
  })
  if (!row) return null
  const { id, className, booth, number, weldedAt, exercise, photos } = await toCoupon(row)
  return { id, className, booth, number, weldedAt, exercise, photos }
}

/** A second reading of the viewer's own of a coupon of a class they do not teach: they see it again, and nothing else of the coupon. */
export async function findOwnReading(viewer: Viewer, couponId: string): Promise<CouponRecord | null> {
  const { programId, personId } = viewer
  const own = { kind: 'second', inspectorId: personId } as const
  const row = await db().coupon.findFirst({
    where: { programId, id: couponId, NOT: { studentId: personId }, class: { NOT: taughtClassScope(viewer) }, inspections: { some: own } },
    include: { ...couponInclude, inspections: { ...lookInclude, where: own } },
  })
  return row && toCoupon(row)
}

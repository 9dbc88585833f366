import 'server-only'
import type { Viewer } from '../auth/viewer'
import { findOwnReading } from '../data/second-readings'
import { lookOf, type CouponLook } from './coupon-result'

/** A second reading as its reader, who does not teach the class, sees it again. */
export type OwnReading = { readonly title: string; readonly number: number; readonly weldedAt: Date; readonly look: CouponLook }

/** The viewer's own second reading of a coupon of another class; null when there is none. */
export async function ownReading(viewer: Viewer, couponId: string): Promise<OwnReading | null> {
  const coupon = await findOwnReading(viewer, couponId)
  const inspection = coupon?.inspections[0]
  if (!coupon || !inspection) return null
  return { title: coupon.exercise.title, number: coupon.number, weldedAt: coupon.weldedAt, look: await lookOf(viewer, coupon, inspection) }
}

import type { Verdict } from '../scoring/types'
import { couponTicks, couponX, requireCouponNumber, type Frame, type Tick } from './chart-frame'

/** A coupon's mark; null while its verdict is incomplete. */
export type CouponMark = { readonly coupon: number; readonly mark: number | null; readonly verdict: Verdict }

export type MarksOverTime = {
  readonly frame: Frame
  /** In order of coupon. Those without a mark stand below the plot, on their own line. */
  readonly points: readonly (CouponMark & { readonly x: number; readonly y: number })[]
  /** Thin path through the marks; null with fewer than two. It skips coupons without one. */
  readonly line: string | null
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
}

/** How far above the foot of the plot a coupon without a mark stands: clear of the axis, and below where a mark of 10 would be. */
const OPEN_ABOVE_FOOT = 8

/**
 * Places coupons by their mark, 0 to 100.
 *
 * @throws RangeError when there is no coupon, a coupon number is no whole number of 1 or more or appears twice, or a mark lies outside 0 to 100
 */
export function drawMarksOverTime(coupons: readonly CouponMark[], frame: Frame): MarksOverTime {
  const sorted = [...coupons].sort((a, b) => a.coupon - b.coupon)
  const [first, last] = [sorted[0]?.coupon, sorted.at(-1)?.coupon]
  if (first === undefined || last === undefined) throw new RangeError('Marks over time need at least one coupon.')
  sorted.forEach(({ coupon, mark }, i) => {
    requireCouponNumber(coupon)
    if (sorted[i - 1]?.coupon === coupon) throw new RangeError(`Coupon ${coupon} appears twice.`)
    if (mark !== null && !(mark >= 0 && mark <= 100)) throw new RangeError(`Coupon ${coupon} has a mark of ${mark}: marks run from 0 to 100.`)
  })
  const x = couponX(first, last, frame)
  const y = (mark: number): number => Math.round((frame.bottom - (mark / 100) * (frame.bottom - frame.top)) * 100) / 100
  const points = sorted.map((coupon) => ({ ...coupon, x: x(coupon.coupon), y: coupon.mark === null ? frame.bottom - OPEN_ABOVE_FOOT : y(coupon.mark) }))
  const marked = points.filter((point) => point.mark !== null)
  return {
    frame,
    points,
    line: marked.length < 2 ? null : `M${marked.map((point) => `${point.x},${point.y}`).join('L')}`,
    xTicks: couponTicks(first, last, frame),
    yTicks: [0, 25, 50, 75, 100].map((mark) => ({ at: y(mark), label: String(mark) })),
  }
}

import type { Defect, RecentCoupon } from './recent-coupon'

/** How many coupons running make a habit of a defect. Common practice, no source: twice can be chance, after three a hand has learned it. */
export const SAME_DEFECT_COUPONS = 3

/** `defects`: never none. `coupons`: their numbers, oldest first. */
export type SameDefects = { readonly defects: readonly Defect[]; readonly coupons: readonly number[] }

/**
 * The defects that each of the last three inspected coupons shows, in the order of the latest coupon's; null when there is none, when
 * there are fewer coupons, or when one of the three was not read.
 *
 * @param coupons of one exercise, oldest first
 */
export function sameDefects(coupons: readonly RecentCoupon[]): SameDefects | null {
  const last = coupons.slice(-SAME_DEFECT_COUPONS)
  const latest = last.at(-1)?.defects
  if (last.length < SAME_DEFECT_COUPONS || !latest) return null
  const same = latest.filter((defect) => last.every(({ defects }) => defects?.some((other) => other.rule === defect.rule && other.side === defect.side)))
  return same.length === 0 ? null : { defects: same, coupons: last.map(({ number }) => number) }
}

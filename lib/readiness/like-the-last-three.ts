import type { PracticeCoupon } from './practice-coupon'

/** `count` coupons welded today that repeat the last three in turn. */
export function likeTheLastThree(coupons: readonly PracticeCoupon[], count: number, today: number): PracticeCoupon[] {
  const last = coupons.slice(-3)
  if (last.length === 0) return []
  return Array.from({ length: count }, (_, i) => ({ ...last[i % last.length]!, day: today }))
}

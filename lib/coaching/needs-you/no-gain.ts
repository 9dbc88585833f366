import type { RecentCoupon } from './recent-coupon'

/** Over how many marked coupons a gain is looked for; half of them against the other half. Common practice, no source. */
export const NO_GAIN_COUPONS = 8

/** Mean marks, 0 to 100, of the four coupons before the last four and of the last four. */
export type NoGain = { readonly before: number; readonly lately: number }

/**
 * The last eight marked coupons of one exercise show no gain: the mean mark of the last four is not above that of the four before,
 * and not all of the last four were accepted (who has nothing left to mend cannot gain).
 *
 * @param coupons of one exercise, oldest first; those without a mark are left out
 * @returns null when there was a gain, or fewer than eight marked coupons
 */
export function noGain(coupons: readonly RecentCoupon[]): NoGain | null {
  const marked = coupons.flatMap(({ mark, verdict }) => (mark === null ? [] : [{ mark, verdict }])).slice(-NO_GAIN_COUPONS)
  if (marked.length < NO_GAIN_COUPONS) return null
  const half = NO_GAIN_COUPONS / 2
  const latest = marked.slice(half)
  const [before, lately] = [mean(marked.slice(0, half).map(({ mark }) => mark)), mean(latest.map(({ mark }) => mark))]
  return lately > before || latest.every(({ verdict }) => verdict === 'accept') ? null : { before, lately }
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { mean, sampleVariance } from 'simple-statistics'
import type { Interval } from './interval'
import { meanInterval } from './mean-interval'
import { requireRows, requireValues } from './preconditions'

export type LimitsOfAgreement = {
  /** By how much one reads over the other, each coupon counted once, with its interval. */
  readonly bias: Interval & { readonly mean: number }
  /** Of a single difference. */
  readonly standardDeviation: number
  /** Between these lies a single difference with the confidence given. */
  readonly limits: Interval
}

const average = (values: readonly number[]): number => mean([...values])

/**
 * Bias and limits of agreement of two ways of measuring.
 *
 * Purpose: by how much one reader's widths lie over another's, and how far apart two single readings must be expected. Readings of one
 * coupon resemble each other, so each coupon counts once in the bias, and the limits add what differs between coupons to what differs
 * within one.
 * Formula: bias d̄ ± t · s/√n over the coupons' mean differences; limits d̄ ± z √(σ²_between + σ²_within), the variances by one-way analysis
 * of variance with n₀ = (N − Σ mᵢ²/N)/(n − 1) readings a coupon. With one reading a coupon that is d̄ ± z · s.
 * Source: Bland & Altman 1986, Lancet 327:307; for several readings a subject Bland & Altman 2007, J. Biopharm. Stat. 17:571 (both from memory).
 * Units: those of the differences.
 *
 * @param differences one list a coupon: this reading less the other, place by place
 * @throws RangeError with fewer than two coupons, a coupon without a difference, one that is not finite, or a confidence outside 0 to 1
 * @example limitsOfAgreement([[1], [2], [3], [4], [5]], 0.95) // { bias: { mean: 3 }, standardDeviation: 1.581, limits: { low: -0.099, high: 6.099 } }
 */
export function limitsOfAgreement(differences: readonly (readonly number[])[], confidence: number): LimitsOfAgreement {
  requireRows(differences, 'The differences', 'Coupon')
  differences.forEach((own, i) => requireValues(own, `Coupon ${i + 1}`, 1))
  const bias = meanInterval(differences.map(average), confidence)
  const standardDeviation = Math.sqrt(varianceOfOne(differences))
  const reach = normalQuantile(0.5 + confidence / 2, 0, 1) * standardDeviation
  return { bias, standardDeviation, limits: { low: bias.mean - reach, high: bias.mean + reach } }
}

function varianceOfOne(differences: readonly (readonly number[])[]): number {
  const all = differences.flat()
  const [n, readings] = [differences.length, all.length]
  if (readings === n) return sampleVariance(all)
  const grand = average(all)
  const between = differences.reduce((sum, own) => sum + own.length * (average(own) - grand) ** 2, 0) / (n - 1)
  const within = differences.reduce((sum, own) => sum + own.reduce((rest, value) => rest + (value - average(own)) ** 2, 0), 0) / (readings - n)
  const perCoupon = (readings - differences.reduce((sum, own) => sum + own.length ** 2, 0) / readings) / (n - 1)
  return within + Math.max(0, (between - within) / perCoupon)
}

import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { type Interval, intervalAround } from './interval'
import { requireConfidence, requireCount, requireValues } from './preconditions'

/**
 * Student's t, two-sided: the value that |t| stays under with the given confidence.
 *
 * Purpose: the width of an interval of a mean from few values.
 * Formula: t² = ν(1 − x)/x, x the (1 − confidence) quantile of a beta distribution with ν/2 and 1/2.
 * Source: the relation of t and beta, Abramowitz & Stegun 26.7.1 and 26.5.27 (from memory).
 * Units: none.
 *
 * @throws RangeError when the degrees of freedom are not a whole number of 1 or more, or the confidence is outside 0 to 1
 * @example twoSidedT(4, 0.95) // 2.776
 */
export function twoSidedT(degreesOfFreedom: number, confidence: number): number {
  requireCount(degreesOfFreedom, 'The degrees of freedom', 1)
  requireConfidence(confidence)
  const x = betaQuantile(1 - confidence, degreesOfFreedom / 2, 1 / 2)
  return Math.sqrt((degreesOfFreedom * (1 - x)) / x)
}

/**
 * The mean of some values with its interval.
 *
 * Purpose: by how much one way of measuring reads over another, from the difference on each of several coupons.
 * Formula: mean ± t · s/√n, s with n − 1.
 * Source: Student 1908, Biometrika 6:1; NIST/SEMATECH e-Handbook 1.3.5.2.
 * Units: those of the values.
 *
 * @throws RangeError with fewer than two values, one that is not finite, or a confidence outside 0 to 1
 * @example meanInterval([1, 2, 3, 4, 5], 0.95) // { mean: 3, low: 1.037, high: 4.963 }
 */
export function meanInterval(values: readonly number[], confidence: number): Interval & { readonly mean: number } {
  requireValues(values, 'The values', 2)
  const centre = mean([...values])
  const half = (twoSidedT(values.length - 1, confidence) * sampleStandardDeviation([...values])) / Math.sqrt(values.length)
  return { mean: centre, ...intervalAround(centre, centre - half, centre + half) }
}

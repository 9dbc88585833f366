import { mean, sampleStandardDeviation } from 'simple-statistics'
import { chiSquareQuantile } from './chi-square-quantile'
import { requireConfidence, requireCount, requirePositive, requireRows, requireValues } from './preconditions'

/**
 * Coefficient of variation.
 *
 * Purpose: how even a bead is, whatever its size. Ten or more evenly spaced stations before it is shown, and then with its interval.
 * Formula: s/mean, s with n − 1.
 * Source: Vangel 1996, The American Statistician 50:21.
 * Units: none; 0.1 is a standard deviation of a tenth of the mean.
 *
 * @throws RangeError with fewer than two values, a value that is negative or not finite, or a mean of 0
 * @example coefficientOfVariation([6.1, 6.4, 5.9, 6.6]) // 0.0497
 */
export function coefficientOfVariation(values: readonly number[]): number {
  requireValues(values, 'The values', 2)
  const negative = values.find(value => value < 0)
  if (negative !== undefined) throw new RangeError(`A coefficient of variation needs sizes of 0 or more; one is ${negative}.`)
  const centre = mean([...values])
  requirePositive(centre, 'The mean')
  return sampleStandardDeviation([...values]) / centre
}

/**
 * Coefficient of variation pooled over several beads.
 *
 * Purpose: one figure for a student from few stations on each of several coupons; the degrees of freedom add up.
 * Formula: √(Σ ν_i cv_i²/Σ ν_i), ν_i = n_i − 1.
 * Source: Forkman 2009, Communications in Statistics: Theory and Methods 38:233 (from memory).
 * Units: none. For its interval give `vangelInterval` one more than `degreesOfFreedom` as n.
 *
 * @throws RangeError without beads, or where a bead has fewer than two values, a negative value or a mean of 0
 * @example pooledCoefficientOfVariation([[6.1, 6.4, 5.9], [7.2, 7.9, 7.4]]) // { value: 0.0447, degreesOfFreedom: 4 }
 */
export function pooledCoefficientOfVariation(beads: readonly (readonly number[])[]): { readonly value: number; readonly degreesOfFreedom: number } {
  requireRows(beads, 'The beads', 'Bead')
  if (beads.length === 0) throw new RangeError('There are no beads to pool.')
  const degreesOfFreedom = beads.reduce((sum, bead) => sum + bead.length - 1, 0)
  const weighted = beads.reduce((sum, bead) => sum + (bead.length - 1) * coefficientOfVariation(bead) ** 2, 0)
  return { value: Math.sqrt(weighted / degreesOfFreedom), degreesOfFreedom }
}

/**
 * Interval of a coefficient of variation (Vangel's modified McKay).
 *
 * Purpose: how far a coefficient from n stations can be trusted: 0.10 from 10 stations runs from 0.069 to 0.184.
 * Formula: cv/√(((u + 2)/n − 1)cv² + u/ν), ν = n − 1, u the chi-square quantiles 1 − α/2 (low) and α/2 (high). Meant for cv up to about 0.33.
 * Source: Vangel 1996, The American Statistician 50:21.
 * Units: none; `high` is null where so few and so scattered stations set no upper limit.
 *
 * @throws RangeError when the coefficient is not above 0, n is below 2, or the confidence is outside 0 to 1
 * @example vangelInterval(0.1, 10, 0.95) // { low: 0.0686, high: 0.1842 }
 */
export function vangelInterval(cv: number, n: number, confidence: number): { readonly low: number; readonly high: number | null } {
  requirePositive(cv, 'The coefficient of variation')
  requireCount(n, 'The number of stations', 2)
  requireConfidence(confidence)
  const limit = (probability: number) => {
    const u = chiSquareQuantile(probability, n - 1)
    const square = ((u + 2) / n - 1) * cv ** 2 + u / (n - 1)
    return square > 0 ? cv / Math.sqrt(square) : null
  }
  const low = limit((1 + confidence) / 2) ?? cv
  const high = limit((1 - confidence) / 2)
  return { low: Math.min(low, cv), high: high === null ? null : Math.max(high, cv) }
}

import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { chiSquareQuantile } from './chi-square-quantile'
import { requireConfidence, requireCount, requireInnerShare } from './preconditions'

function requireToleranceQuestion(n: number, content: number, confidence: number): void {
  requireCount(n, 'The number of values', 2)
  requireInnerShare(content, 'The share to be covered')
  requireConfidence(confidence)
}

/**
 * Two-sided normal tolerance factor (Howe's approximation).
 *
 * Purpose: mean ± k·s holds the given share of all values, with the given confidence. Under 1 % below the exact factor from 5 values on.
 * Formula: k = z((1 + p)/2) · √(ν(1 + 1/n)/χ²(1 − γ, ν)), ν = n − 1.
 * Source: Howe 1969, J. Am. Stat. Assoc. 64:610; NIST/SEMATECH e-Handbook 7.2.6.3.
 * Units: standard deviations.
 *
 * @throws RangeError with fewer than two values, or a share or confidence not between 0 and 1
 * @example howeToleranceFactor(43, 0.9, 0.99) // 2.2173
 */
export function howeToleranceFactor(n: number, content: number, confidence: number): number {
  requireToleranceQuestion(n, content, confidence)
  const v = n - 1
  return normalQuantile((1 + content) / 2, 0, 1) * Math.sqrt(v * (1 + 1 / n) / chiSquareQuantile(1 - confidence, v))
}

/**
 * One-sided normal tolerance factor (Natrella's approximation).
 *
 * Purpose: mean + k·s (or mean − k·s) bounds the given share of all values, with the given confidence. Up to 1.5 % below the exact factor.
 * Formula: k = (z_p + √(z_p² − ab))/a, a = 1 − z_γ²/(2(n − 1)), b = z_p² − z_γ²/n.
 * Source: Natrella, Experimental Statistics, NBS Handbook 91, 1963; NIST/SEMATECH e-Handbook 7.2.6.3.
 * Units: standard deviations.
 *
 * @throws RangeError with fewer than two values, a share not between 0.5 and 1, a confidence outside 0 to 1, or too few values for the approximation
 * @example natrellaToleranceFactor(43, 0.9, 0.99) // 1.8752
 */
export function natrellaToleranceFactor(n: number, content: number, confidence: number): number {
  requireToleranceQuestion(n, content, confidence)
  if (content < 0.5) throw new RangeError(`A one-sided tolerance limit covers at least half of the values; ${content} was asked for.`)
  const zp = normalQuantile(content, 0, 1)
  const zg = normalQuantile(confidence, 0, 1)
  const a = 1 - zg ** 2 / (2 * (n - 1))
  const b = zp ** 2 - zg ** 2 / n
  if (a <= 0) {
    throw new RangeError(`${n} values are too few for a one-sided limit at confidence ${confidence}; measure at least ${Math.floor(zg ** 2 / 2) + 2}.`)
  }
  return (zp + Math.sqrt(zp ** 2 - a * b)) / a
}

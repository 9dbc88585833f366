import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf'
import { requireConfidence, requireCount, requireInnerShare } from './preconditions'

const HAIR = 1e-9 // ln 0.0001 / ln 0.01 is 2, and rounding must not make it 3

/**
 * Success-run sample size.
 *
 * Purpose: how many coupons, with at most so many failures, would demonstrate a pass rate. Far more than a student makes,
 * so never a readiness rule: it is the answer to "how sure can n straight passes make us?".
 * Formula: the smallest n with P(X ≤ f) ≤ 1 − C for X binomial(n, 1 − R); without failures ⌈ln(1 − C)/ln R⌉.
 * Source: zero-failure demonstration test, a textbook result (22 for 90/90, 29 for 95/90, 59 for 95/95).
 * Units: a count of coupons; confidence C and pass rate R are shares.
 *
 * @throws RangeError when confidence or pass rate is not between 0 and 1, or failures is not a whole number
 * @example successRunLength(0.95, 0.9) // 29
 */
export function successRunLength(confidence: number, passRate: number, failures = 0): number {
  requireConfidence(confidence)
  requireInnerShare(passRate, 'The pass rate to demonstrate')
  requireCount(failures, 'The number of failures')
  const allowed = (1 - confidence) * (1 + HAIR)
  const enough = (n: number) => binomialCdf(failures, n, 1 - passRate) <= allowed
  let high = failures + 1
  while (!enough(high)) high *= 2
  let low = failures
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (enough(middle)) high = middle
    else low = middle
  }
  return high
}

/**
 * Demonstrated pass rate of a run of coupons: one-sided Clopper-Pearson lower limit.
 *
 * Purpose: what n coupons with f failures have shown; the success run read backwards.
 * Formula: beta quantile 1 − C of (n − f, f + 1); without failures (1 − C)^(1/n).
 * Source: Clopper & Pearson 1934, Biometrika 26:404.
 * Units: share from 0 to 1.
 *
 * @throws RangeError when there are no coupons, more failures than coupons, or a confidence outside 0 to 1
 * @example demonstratedPassRate(29, 0, 0.95) // 0.9019
 */
export function demonstratedPassRate(n: number, failures: number, confidence: number): number {
  requireCount(n, 'The number of coupons', 1)
  requireCount(failures, 'The number of failures')
  requireConfidence(confidence)
  if (failures > n) throw new RangeError(`There cannot be more failures (${failures}) than coupons (${n}).`)
  return failures === n ? 0 : betaQuantile(1 - confidence, n - failures, failures + 1)
}

/**
 * Stations needed to hit a bad zone of a bead at random.
 *
 * Purpose: how many places to measure. Evenly spaced stations need no chance at all: they hit any zone longer than their spacing.
 * Formula: ⌈ln(1 − C)/ln(1 − f)⌉ for a zone that takes the fraction f of the length.
 * Source: the success run with pass rate 1 − f.
 * Units: a count of stations; f and the chance C are shares.
 *
 * @throws RangeError when the fraction or the chance is not between 0 and 1
 * @example stationsToHitZone(0.2, 0.9) // 11
 */
export function stationsToHitZone(zoneFraction: number, chance: number): number {
  requireInnerShare(zoneFraction, 'The fraction of the length that is bad')
  return successRunLength(chance, 1 - zoneFraction)
}

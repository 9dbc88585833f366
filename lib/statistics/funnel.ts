import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf'
import binomialQuantile from '@stdlib/stats-base-dists-binomial-quantile'
import { type Interval, intervalAround } from './interval'
import { requireConfidence, requireCount, requireInnerShare, requireShare } from './preconditions'

/**
 * One funnel limit: an interpolated binomial quantile, as a share.
 *
 * Purpose: the line that a class of n should stay above (or below) with the given probability, if only chance separates it from the rest.
 * Formula: r the smallest count with F(r) ≥ p; a = (F(r) − p)/(F(r) − F(r − 1)); limit (r − a)/n, kept within 0 to 1.
 * Source: Spiegelhalter 2005, Statistics in Medicine 24:1185, appendix (formula from memory).
 * Units: share from 0 to 1.
 *
 * @throws RangeError when the overall rate is not from 0 to 1, n is not a whole number above 0, or the probability is not between 0 and 1
 * @example funnelLimit(0.74, 25, 0.025) // 0.5369
 */
export function funnelLimit(overall: number, n: number, probability: number): number {
  requireShare(overall, 'The overall rate')
  requireCount(n, 'The number of results', 1)
  requireInnerShare(probability, 'The probability')
  const r = binomialQuantile(probability, n, overall)
  const upTo = binomialCdf(r, n, overall)
  const step = upTo - (r === 0 ? 0 : binomialCdf(r - 1, n, overall))
  const back = step > 0 ? (upTo - probability) / step : 0
  return Math.min(1, Math.max(0, (r - back) / n))
}

/**
 * Funnel limits on both sides of an overall rate.
 *
 * Purpose: which classes differ from the program by more than chance; not a league table. Use 0.95 to look twice and 0.998 to act.
 * Formula: the interpolated limits at (1 − c)/2 and (1 + c)/2, stretched to hold the overall rate (needed only for one or two results).
 * Source: Spiegelhalter 2005, Statistics in Medicine 24:1185.
 * Units: shares from 0 to 1.
 *
 * @throws RangeError when the overall rate is not from 0 to 1, n is not a whole number above 0, or the coverage is not between 0 and 1
 * @example funnelLimits(0.74, 25, 0.95) // { low: 0.5369, high: 0.8804 }
 */
export function funnelLimits(overall: number, n: number, coverage: number): Interval {
  requireConfidence(coverage)
  return intervalAround(overall, funnelLimit(overall, n, (1 - coverage) / 2), funnelLimit(overall, n, (1 + coverage) / 2), 0, 1)
}

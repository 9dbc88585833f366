import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf'
import { requireCount, requireInnerShare } from './preconditions'

/**
 * Exact two-sided sign test.
 *
 * Purpose: whether two inspectors who part on some coupons part one way: how often a fair coin would split them this unevenly or more.
 * Coupons on which they agree do not enter.
 * Formula: min(1, 2 · P(X ≤ min(a, b))), X binomial(a + b, ½).
 * Source: McNemar 1947, Psychometrika 12:153, in its exact form; the sign test, Dixon & Mood 1946, J. Am. Stat. Assoc. 41:557 (from memory).
 * Units: a chance from 0 to 1; 1 where there is nothing to split.
 *
 * @throws RangeError when a count is not whole
 * @example signTest(9, 1) // 0.0215
 */
export function signTest(one: number, other: number): number {
  requireCount(one, 'The number of coupons one way')
  requireCount(other, 'The number of coupons the other way')
  const n = one + other
  return n === 0 ? 1 : Math.min(1, 2 * binomialCdf(Math.min(one, other), n, 0.5))
}

/**
 * The chance that the sign test calls a fair split uneven.
 *
 * Purpose: how many false alarms many such tests raise, exactly: counts are whole, so a test at 5 % raises fewer than 5 %.
 * Formula: the sum of P(X = k) over the k whose two-sided p is at most the level, X binomial(n, ½).
 * Source: the definition of the test's size.
 * Units: a chance from 0 to 1.
 *
 * @throws RangeError when n is not whole, or the level is not between 0 and 1
 * @example signTestSize(10, 0.05) // 0.0215
 */
export function signTestSize(n: number, level: number): number {
  requireCount(n, 'The number of coupons')
  requireInnerShare(level, 'The level')
  let most = -1
  while (most + 1 <= n / 2 && signTest(most + 1, n - most - 1) <= level) most += 1
  return most < 0 ? 0 : Math.min(1, 2 * binomialCdf(most, n, 0.5))
}

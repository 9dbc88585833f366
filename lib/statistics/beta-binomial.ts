import lnBeta from '@stdlib/math-base-special-betaln'
import { requireCount, requireNamed, requirePositive } from './preconditions'

/**
 * Beta-binomial predictive distribution.
 *
 * Purpose: how many of the next coupons will pass, when the pass rate itself is known only as a beta posterior.
 * Formula: P(k of m) = C(m, k) · B(k + a, m − k + b) / B(a, b), for k = 0 … m.
 * Source: Gelman et al., Bayesian Data Analysis, 3rd ed., chapters 2 and 5.
 * Units: a and b are counts of passes and fails, prior included (Jeffreys: passes + ½ and fails + ½); the answer is m + 1 probabilities that sum to 1.
 *
 * @throws RangeError when a or b is not above 0, or m is not a whole number
 * @example betaBinomialPredictive({ a: 9.5, b: 1.5 }, 3) // [0.0076, 0.0623, 0.2616, 0.6685]
 */
export function betaBinomialPredictive(counts: { readonly a: number; readonly b: number }, m: number): number[] {
  const { a, b } = requireNamed(counts, 'The counts a and b')
  requirePositive(a, 'The count of passes with its prior (a)')
  requirePositive(b, 'The count of fails with its prior (b)')
  requireCount(m, 'The number of coming coupons')
  return Array.from({ length: m + 1 }, (_, k) => {
    const lnChoose = -Math.log(m + 1) - lnBeta(k + 1, m - k + 1)
    return Math.exp(lnChoose + lnBeta(k + a, m - k + b) - lnBeta(a, b))
  })
}

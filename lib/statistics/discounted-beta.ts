import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { type Interval, intervalAround } from './interval'
import { asOnesAndZeros, type Outcome } from './outcome'
import { requireConfidence, requireNamed, requirePositive } from './preconditions'

/**
 * Discounted beta: a pass rate in which old coupons fade.
 *
 * Purpose: the plain pass/fail estimate to compare a readiness model with.
 * Formula: a ← λa + o, b ← λb + 1 − o from 0; rate (a + a₀)/(a + b + a₀ + b₀); quantiles of Beta(a + a₀, b + b₀).
 * Source: exponential forgetting of a beta-Bernoulli posterior, West & Harrison, Bayesian Forecasting and Dynamic Models, 2nd ed. 1997, chapter 10.
 * Units: a and b count coupons, the latest counting 1; mean and limits are shares. Without coupons it is the prior.
 *
 * @throws RangeError when retention is not above 0 and at most 1, a prior is not above 0, an outcome is not 0 or 1, or the confidence is outside 0 to 1
 * @example discountedBeta([0, 1, 1], { retention: 0.88, priorA: 0.5, priorB: 0.8 }) // { a: 1.88, b: 0.7744, mean: 0.6019 }
 */
export function discountedBeta(
  outcomes: readonly Outcome[],
  options: { readonly retention: number; readonly priorA: number; readonly priorB: number; readonly confidence?: number },
): Interval & { readonly a: number; readonly b: number; readonly mean: number } {
  const { retention, priorA, priorB, confidence = 0.8 } = requireNamed(options, 'Retention and the prior counts')
  if (!(retention > 0 && retention <= 1)) throw new RangeError(`Retention must be above 0 and at most 1, such as 0.88, not ${String(retention)}.`)
  requirePositive(priorA, 'The prior count of passes')
  requirePositive(priorB, 'The prior count of fails')
  requireConfidence(confidence)
  let [a, b] = [0, 0]
  for (const outcome of asOnesAndZeros(outcomes, 'Outcomes')) [a, b] = [retention * a + outcome, retention * b + 1 - outcome]
  const [alpha, beta] = [a + priorA, b + priorB]
  const mean = alpha / (alpha + beta)
  const limits = intervalAround(mean, betaQuantile((1 - confidence) / 2, alpha, beta), betaQuantile((1 + confidence) / 2, alpha, beta), 0, 1)
  return { a, b, mean, ...limits }
}

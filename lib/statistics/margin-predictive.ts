import tCdf from '@stdlib/stats-base-dists-t-cdf'
import { requireValues } from './preconditions'

/**
 * Student-t forecast of the next margin.
 *
 * Purpose: the chance that one criterion is met on the next coupon, from its margins so far; names the weakest criterion in a plain formula.
 * Formula: T_ν(m/(s√(1 + 1/κ))), κ = Σ w with weights λ^age, ν = κ − 1, m the weighted mean, s² = Σ w(x − m)²/(κ − 1). λ = 1: the ordinary
 * predictive with κ = n.
 * Source: predictive of a normal sample with the reference prior, Gelman et al., Bayesian Data Analysis, 3rd ed., section 3.2; the discount is exponential forgetting.
 * Units: margins in any one unit, above 0 inside the limit; probability is a share.
 *
 * @param margins oldest first
 * @throws RangeError with fewer than two margins, margins that are all equal, or a retention so low that less than about two coupons count
 * @example marginPredictive([0.4, 0.1, 0.6, 0.3, 0.2, 0.5, -0.1, 0.45]) // { mean: 0.3063, standardDeviation: 0.2306, t: 1.2522, probability: 0.8746 }
 */
export function marginPredictive(margins: readonly number[], retention = 1): {
  readonly mean: number
  readonly standardDeviation: number
  readonly t: number
  readonly probability: number
} {
  requireValues(margins, 'The margins', 2)
  if (!(retention > 0 && retention <= 1)) throw new RangeError(`Retention must be above 0 and at most 1, such as 0.9, not ${String(retention)}.`)
  const weights = margins.map((_, i) => retention ** (margins.length - 1 - i))
  const kappa = weights.reduce((sum, weight) => sum + weight, 0)
  if (kappa < 1.5) throw new RangeError(`With a retention of ${retention} these margins count as ${kappa.toFixed(2)} coupons; at least 1.5 are needed to see any scatter.`)
  const weighted = (value: (margin: number) => number) => margins.reduce((sum, margin, i) => sum + (weights[i] ?? 0) * value(margin), 0)
  const mean = weighted(margin => margin) / kappa
  const standardDeviation = Math.sqrt(weighted(margin => (margin - mean) ** 2) / (kappa - 1))
  if (margins.every(margin => margin === margins[0]) || standardDeviation === 0) {
    throw new RangeError('All margins are equal, so their scatter cannot be seen: read the gauge more finely or wait for more coupons.')
  }
  const t = mean / (standardDeviation * Math.sqrt(1 + 1 / kappa))
  return { mean, standardDeviation, t, probability: Math.min(1, Math.max(0, tCdf(t, kappa - 1))) }
}

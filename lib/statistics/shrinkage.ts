import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { type Interval, intervalAround } from './interval'
import { requireConfidence, requireCount, requireList, requireNamed } from './preconditions'

export type PassCount = { readonly passed: number; readonly n: number }
/** A beta distribution of pass rates between groups. `fitted` is false where its strength a + b was set, not estimated. */
export type GroupPrior = { readonly a: number; readonly b: number; readonly fitted: boolean }

const LEAST_GROUPS = 5
const SET_STRENGTH = 10

/**
 * Beta-binomial spread of pass rates between groups, by maximum likelihood.
 *
 * Purpose: how different groups really are, so that small ones can borrow from the rest.
 * Formula: maximises Σ ln B(a + y, b + n − y) − ln B(a, b), with a + b kept between 1 (the weight of the Jeffreys prior) and the number of
 * results. With fewer than five groups of two or more results, or all results alike, a + b is set to 10 round the overall rate.
 * Source: Tarone 1982, Biometrics 38:215; Gelman et al., Bayesian Data Analysis, 3rd ed., section 5.1. The bounds and the 10 are common practice, no source.
 * Units: a and b count results.
 *
 * @throws RangeError without any result, when a count is not whole, or more passed than were tested
 * @example fitGroupPrior([{ passed: 9, n: 10 }, { passed: 6, n: 10 }]) // { a: 7.5, b: 2.5, fitted: false }
 */
export function fitGroupPrior(groups: readonly PassCount[]): GroupPrior {
  requireList(groups, 'Groups')
  groups.forEach((group, i) => requireNamed(group, `Group ${i + 1}`))
  groups.forEach(({ passed, n }, i) => {
    requireCount(n, `The number of results of group ${i + 1}`)
    requireCount(passed, `The number of passes of group ${i + 1}`)
    if (passed > n) throw new RangeError(`Group ${i + 1} has more passes (${passed}) than results (${n}).`)
  })
  const results = groups.reduce((sum, { n }) => sum + n, 0)
  const passes = groups.reduce((sum, { passed }) => sum + passed, 0)
  if (results === 0) throw new RangeError('There are no results yet: pass rates need at least one.')
  const alike = passes === 0 || passes === results
  if (alike || groups.filter(({ n }) => n > 1).length < LEAST_GROUPS) {
    const rate = alike ? (passes + 0.5) / (results + 1) : passes / results
    return { a: SET_STRENGTH * rate, b: SET_STRENGTH * (1 - rate), fitted: false }
  }
  const likelihood = betaBinomialLikelihood(groups)
  const lnStrength = highestPoint(ln => likelihood.at(likelihood.bestRate(Math.exp(ln)), Math.exp(ln)), 0, Math.log(results))
  const strength = Math.exp(lnStrength)
  const rate = likelihood.bestRate(strength)
  return { a: strength * rate, b: strength * (1 - rate), fitted: true }
}

/**
 * Beta-binomial shrinkage of pass rates.
 *
 * Purpose: a fair rate for a small class: its own results, pulled toward the program by as much as classes usually differ.
 * Formula: rate (a + y)/(a + b + n) with the beta quantiles of (a + y, b + n − y); a and b from the groups themselves.
 * Source: Gelman et al., Bayesian Data Analysis, 3rd ed., section 5.1.
 * Units: shares from 0 to 1, one entry per group in the order given; a group without results gets the program's rate.
 *
 * @throws RangeError without any result, when a count is not whole, more passed than were tested, or the confidence is outside 0 to 1
 * @example betaBinomialShrinkage([{ passed: 9, n: 10 }, { passed: 6, n: 10 }]) // [{ mean: 0.825, low: 0.636, high: 0.953 }, { mean: 0.675, low: 0.461, high: 0.856 }]
 */
export function betaBinomialShrinkage(groups: readonly PassCount[], confidence = 0.95): (Interval & { readonly mean: number })[] {
  requireConfidence(confidence)
  const { a, b } = fitGroupPrior(groups)
  return groups.map(({ passed, n }) => {
    const [alpha, beta] = [a + passed, b + n - passed]
    const mean = alpha / (alpha + beta)
    return {
      mean,
      ...intervalAround(mean, betaQuantile((1 - confidence) / 2, alpha, beta), betaQuantile((1 + confidence) / 2, alpha, beta), 0, 1),
    }
  })
}

/** The likelihood written with sums of logarithms, ln B(a + y, …) − ln B(a, …) = Σ ln(a + j) …, which cost the same for 5 groups or 500. */
function betaBinomialLikelihood(groups: readonly PassCount[]) {
  const beyond = (counts: readonly number[]) => {
    const tally = Array.from({ length: Math.max(...counts, 0) }, () => 0)
    for (const count of counts) if (count > 0) tally[count - 1] = (tally[count - 1] ?? 0) + 1
    for (let j = tally.length - 2; j >= 0; j -= 1) tally[j] = (tally[j] ?? 0) + (tally[j + 1] ?? 0)
    return tally // entry j: how many groups have more than j
  }
  const passed = beyond(groups.map(group => group.passed))
  const failed = beyond(groups.map(group => group.n - group.passed))
  const tested = beyond(groups.map(group => group.n))
  const sum = (tally: readonly number[], term: (j: number) => number) => tally.reduce((total, count, j) => total + count * term(j), 0)
  return {
    at: (rate: number, strength: number) =>
      sum(passed, j => Math.log(rate * strength + j)) + sum(failed, j => Math.log((1 - rate) * strength + j)) - sum(tested, j => Math.log(strength + j)),
    bestRate: (strength: number) => {
      let [low, high] = [0, 1]
      while (high - low > 1e-13) {
        const rate = (low + high) / 2
        const slope = sum(passed, j => 1 / (rate * strength + j)) - sum(failed, j => 1 / ((1 - rate) * strength + j))
        if (slope > 0) low = rate
        else high = rate
      }
      return (low + high) / 2
    },
  }
}

/** Golden-section search for the top of a function with one hill. */
function highestPoint(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  let [a, b] = [low, high]
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)]
  let [fc, fd] = [f(c), f(d)]
  while (b - a > 1e-9) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc]
      c = b - golden * (b - a)
      fc = f(c)
    } else {
      [a, c, fc] = [c, d, fd]
      d = a + golden * (b - a)
      fd = f(d)
    }
  }
  return (a + b) / 2
}

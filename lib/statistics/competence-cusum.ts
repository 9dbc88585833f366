import { asOnesAndZeros, type Outcome } from './outcome'
import { requireInnerShare, requireNamed, requirePositive } from './preconditions'

/** Failure rates that are good enough and not good enough, with the two chances of deciding wrongly (0.1 each unless said). */
export type CompetenceRates = {
  readonly acceptable: number
  readonly unacceptable: number
  /** Chance of rejecting someone at the acceptable rate. */
  readonly alpha?: number
  /** Chance of accepting someone at the unacceptable rate. */
  readonly beta?: number
}
export type CompetenceLimits = {
  /** What a success takes off the score; a failure adds 1 less this. */
  readonly credit: number
  /** The score −accept shows the acceptable rate. */
  readonly accept: number
  /** The score +reject shows the unacceptable rate. */
  readonly reject: number
  readonly straightSuccessesToAccept: number
}

/**
 * Score and limits of a competence CUSUM.
 *
 * Purpose: watching someone qualified. Not for declaring readiness: the answer hangs on the two rates chosen.
 * Formula: P = ln(p₁/p₀), Q = ln((1 − p₀)/(1 − p₁)), credit Q/(P + Q), accept ln((1 − α)/β)/(P + Q), reject ln((1 − β)/α)/(P + Q).
 * Source: Williams, Parry & Schlup 1992, BMJ 304:1359; Kestin 1995, Br. J. Anaesth. 75:805; Bolsin & Colson 2000, Int. J. Qual. Health Care 12:433.
 * Units: failure rates are shares; scores count failures.
 *
 * @throws RangeError unless 0 < acceptable < unacceptable < 1, and alpha and beta lie between 0 and 0.5
 * @example competenceLimits({ acceptable: 0.2, unacceptable: 0.4 }) // { credit: 0.2933, accept: 2.2402, reject: 2.2402, straightSuccessesToAccept: 8 }
 */
export function competenceLimits(rates: CompetenceRates): CompetenceLimits {
  const { acceptable, unacceptable, alpha = 0.1, beta = 0.1 } = requireNamed(rates, 'The failure rates')
  requireInnerShare(acceptable, 'The acceptable failure rate')
  requireInnerShare(unacceptable, 'The unacceptable failure rate')
  if (acceptable >= unacceptable) {
    throw new RangeError(`The acceptable failure rate (${acceptable}) must be below the unacceptable one (${unacceptable}).`)
  }
  for (const chance of [alpha, beta]) {
    if (!(chance > 0 && chance < 0.5)) throw new RangeError(`The chance of a wrong decision must lie between 0 and 0.5, not ${String(chance)}.`)
  }
  const p = Math.log(unacceptable / acceptable)
  const q = Math.log((1 - acceptable) / (1 - unacceptable))
  const credit = q / (p + q)
  const accept = Math.log((1 - alpha) / beta) / (p + q)
  return {
    credit,
    accept,
    reject: Math.log((1 - beta) / alpha) / (p + q),
    straightSuccessesToAccept: Math.ceil(accept / credit - 1e-9),
  }
}

/**
 * Competence CUSUM: the running score of a series of attempts.
 *
 * Purpose: the curve to plot against the limits of `competenceLimits`; it falls while work is good and climbs while it is not.
 * Formula: S ← S − credit after a success, S ← S + 1 − credit after a failure, from 0.
 * Source: Bolsin & Colson 2000, Int. J. Qual. Health Care 12:433.
 * Units: scores count failures.
 *
 * @throws RangeError on an outcome that is not 0 or 1, or rates that `competenceLimits` refuses
 * @example competenceCusum([1, 1, 0], { acceptable: 0.2, unacceptable: 0.4 }) // [-0.2933, -0.5866, 0.1201]
 */
export function competenceCusum(successes: readonly Outcome[], rates: CompetenceRates): number[] {
  const { credit } = competenceLimits(rates)
  let score = 0
  return asOnesAndZeros(successes, 'Successes').map(success => (score += success === 1 ? -credit : 1 - credit))
}

/**
 * Learning CUSUM: the competence score with a barrier at 0.
 *
 * Purpose: early failures of a learner are not held against later work; the acceptable rate is shown at or below −accept.
 * Formula: S ← min(0, S + w) with the weights of `competenceCusum`.
 * Source: Bolsin & Colson 2000, Int. J. Qual. Health Care 12:433 (barrier variant, formula from public code citing it).
 * Units: scores count failures.
 *
 * @throws RangeError on an outcome that is not 0 or 1, or rates that `competenceLimits` refuses
 * @example learningCusum([0, 1, 1, 0], { acceptable: 0.2, unacceptable: 0.4 }) // [0, -0.2933, -0.5866, 0]
 */
export function learningCusum(successes: readonly Outcome[], rates: CompetenceRates): number[] {
  const { credit } = competenceLimits(rates)
  let score = 0
  return asOnesAndZeros(successes, 'Successes').map(success => (score = Math.min(0, score + (success === 1 ? -credit : 1 - credit))))
}

/**
 * LC-CUSUM of Biau: a likelihood score that climbs toward "adequate".
 *
 * Purpose: the published learning-curve test, for comparison. Its false alarms pile up: with p₀ 0.2, δ 0.2 and h 1.25 a student who
 * fails 40 % is called adequate within 60 coupons with probability 0.93.
 * Formula: S ← max(0, S + w), w = ln((1 − p₀)/(1 − p₀ − δ)) after a success, ln(p₀/(p₀ + δ)) after a failure; adequate where S ≥ h.
 * Source: Biau et al. 2008, Br. J. Surg. 95:925; Biau & Porcher 2010, Statistics in Medicine 29:1900.
 * Units: log likelihood ratio.
 *
 * @throws RangeError on an outcome that is not 0 or 1, rates that do not keep 0 < p₀ < p₀ + δ < 1, or a limit not above 0
 * @example biauLearningCusum([1, 1, 0, 1], { acceptable: 0.2, margin: 0.2, limit: 0.5 }) // { scores: [0.2877, 0.5754, 0, 0.2877], adequateAt: [1] }
 */
export function biauLearningCusum(
  successes: readonly Outcome[],
  rates: { readonly acceptable: number; readonly margin: number; readonly limit: number },
): { readonly scores: number[]; readonly adequateAt: number[] } {
  const { acceptable, margin, limit } = requireNamed(rates, 'The acceptable rate, margin and limit')
  requireInnerShare(acceptable, 'The acceptable failure rate')
  requirePositive(margin, 'The margin above it')
  requireInnerShare(acceptable + margin, 'The acceptable failure rate with its margin')
  requirePositive(limit, 'The limit')
  const gain = Math.log((1 - acceptable) / (1 - acceptable - margin))
  const loss = Math.log(acceptable / (acceptable + margin))
  let score = 0
  const scores = asOnesAndZeros(successes, 'Successes').map(success => (score = Math.max(0, score + (success === 1 ? gain : loss))))
  return { scores, adequateAt: scores.flatMap((value, i) => (value >= limit ? [i] : [])) }
}

import { asOnesAndZeros, type Outcome } from './outcome'
import { requireCount, requireFinite, requireNamed, requireShare } from './preconditions'

/**
 * Knowledge tracing: the chance that a skill is known, and that the next coupon passes, after each coupon.
 *
 * Purpose: a well-known model of learning by steps, to compare a readiness model with.
 * Formula: chance of a pass P = L(1 − s) + (1 − L)g; after a pass L(1 − s)/P, after a fail Ls/(1 − P); then L ← L + (1 − L)t.
 * Source: Corbett & Anderson 1995, User Modeling and User-Adapted Interaction 4:253.
 * Units: everything is a share. `pass[i]` is the chance said before coupon i, `known[i]` that the skill is known after it.
 *
 * @throws RangeError when a parameter is not a share, an outcome is not 0 or 1, or the parameters rule an outcome out
 * @example knowledgeTracing([0], { known: 0.5, learned: 0.4, slip: 0.2, guess: 0.2 }) // { pass: [0.5], known: [0.52] }
 */
export function knowledgeTracing(
  outcomes: readonly Outcome[],
  chances: { readonly known: number; readonly learned: number; readonly slip: number; readonly guess: number },
): { readonly pass: number[]; readonly known: number[] } {
  const { known: start, learned, slip, guess } = requireNamed(chances, 'The chances of knowing, learning, a slip and luck')
  requireShare(start, 'The chance that the skill was known at first')
  requireShare(learned, 'The chance to learn from one coupon')
  requireShare(slip, 'The chance to slip')
  requireShare(guess, 'The chance to pass by luck')
  const pass: number[] = []
  const known: number[] = []
  let now = start
  for (const outcome of asOnesAndZeros(outcomes, 'Outcomes')) {
    const chance = now * (1 - slip) + (1 - now) * guess
    if (outcome === (chance <= 0 ? 1 : chance >= 1 ? 0 : null)) throw new RangeError('These parameters rule out what happened: allow for a slip and for luck.')
    const seen = outcome === 1 ? (now * (1 - slip)) / chance : (now * slip) / (1 - chance)
    pass.push(chance)
    now = seen + (1 - seen) * learned
    known.push(now)
  }
  return { pass, known }
}

/**
 * Performance factors: the chance that the next coupon passes from how many passed and failed before.
 *
 * Purpose: the simplest model that tells practice from success, to compare a readiness model with.
 * Formula: logit P = β + γ·passes + ρ·fails.
 * Source: Pavlik, Cen & Koedinger 2009, Artificial Intelligence in Education, 531.
 * Units: passes and fails are counts, the result a share.
 *
 * @throws RangeError when a count is not a whole number of 0 or more, or a weight is not finite
 * @example performanceFactors({ passes: 0, fails: 1 }, { ease: -0.5, perPass: 0.2, perFail: 0.1 }) // 0.4013
 */
export function performanceFactors(
  counts: { readonly passes: number; readonly fails: number },
  weights: { readonly ease: number; readonly perPass: number; readonly perFail: number },
): number {
  const { passes, fails } = requireNamed(counts, 'Passes and fails')
  const { ease, perPass, perFail } = requireNamed(weights, 'The weights')
  requireCount(passes, 'Passes')
  requireCount(fails, 'Fails')
  requireFinite(ease, 'The ease of the exercise')
  requireFinite(perPass, 'The weight of a pass')
  requireFinite(perFail, 'The weight of a fail')
  return 1 / (1 + Math.exp(-(ease + perPass * passes + perFail * fails)))
}

import { readinessOf, stateAfter, type FilterOptions } from './incremental'
import type { PracticeCoupon } from './practice-coupon'
import type { Readiness } from './read-out'

export type { PracticeCoupon } from './practice-coupon'
export type { FilterOptions } from './incremental'
export type { Readiness } from './read-out'

/**
 * The margin state-space filter: the chance that a test coupon welded on `testDay` passes, from the practice before it.
 *
 * x, the location of a coupon's worst standardised margin, is a hidden walk. Belief about it is carried on 121 points of [-3.5, 2.5]:
 * 1. prior: the normal density of m0, s0 at the points, scaled to sum 1. It meets the first coupon without a step.
 * 2. step between coupons: x + rho (mInf - x), and when days > 0 also less max(x - m0, 0)(1 - exp(-max(0, days - 3) / tauF)),
 *    both taken from the old x; one normal kernel of variance q1² + (h/2)², when days > 0 plus qs² + qg² days / 30,
 *    on the grid continued past its ends, divided by its sum, what lies past an end added to that end point.
 * 3. coupon: with a margin, t₅ about x with scale s, times the yes/no rules' chance logistic(c + d x) where they were looked at;
 *    without a margin, the verdict alone with chance P(x) = T₅(x / s) logistic(c + d x). Every likelihood to the power eta times weight.
 *    A coupon of weight 0 is practice nobody vouches for: time passes, nothing is learnt from it.
 * 4. read-out after the same step once more, from the last coupon to `testDay`: the mean of P, and P at the quantiles of the belief.
 *
 * The t₅ likelihood lets go of readings far from everything else: one wild margin, good or bad, moves the chance less than a
 * moderate one, so the chance does not rise for ever as a single margin grows.
 *
 * After Smith et al. 2004, J Neurosci 24:447, and Prerau et al. 2009, J Neurophysiol 102:3060: hidden skill filtered from
 * yes/no results and from a measured quantity.
 *
 * @param coupons in order of day; none at all gives the prior
 * @param testDay day of the test, on the coupons' count, not before the last of them
 * @returns probability, low and high in 0 to 1, low <= probability <= high
 * @throws RangeError for coupons out of order or malformed, a test before the last coupon, a gap over a century, options out of range
 */
export function readinessFilter(coupons: readonly PracticeCoupon[], testDay: number, options: FilterOptions = {}): Readiness {
  return readinessOf(stateAfter(coupons, options.parameters), testDay, options)
}

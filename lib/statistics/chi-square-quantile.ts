import stdlibQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { requireInnerShare, requirePositive } from './preconditions'

// Above about 1,500 degrees of freedom the library's quantile and cdf are off by up to 0.4 % and 0.012 (0.2.3, 0.3.1; checked against SciPy 1.17.1).
const LIBRARY_HOLDS_TO = 1000

/**
 * Chi-square quantile, exact to about 1e-9 at any number of degrees of freedom.
 *
 * Purpose: the limits of standard deviations, capability, tolerance factors and coefficients of variation.
 * Formula: the library's up to 1,000 degrees of freedom, then the Cornish-Fisher expansion to the order ν^(−3/2).
 * Source: Goldberg & Levine 1946, Annals of Mathematical Statistics 17:216; checked against SciPy 1.17.1.
 * Units: none.
 *
 * @throws RangeError when the probability is not between 0 and 1 or the degrees of freedom are not above 0
 * @example chiSquareQuantile(0.95, 10) // 18.307
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  requireInnerShare(probability, 'The probability')
  requirePositive(degreesOfFreedom, 'The degrees of freedom')
  const v = degreesOfFreedom
  if (v <= LIBRARY_HOLDS_TO) return stdlibQuantile(probability, v)
  const z = normalQuantile(probability, 0, 1)
  const root = Math.sqrt(2 * v)
  return v + z * root + 2 / 3 * (z ** 2 - 1) + (z ** 3 - 7 * z) / (9 * root)
    - (6 * z ** 4 + 14 * z ** 2 - 32) / (405 * v)
    + (9 * z ** 5 + 256 * z ** 3 - 433 * z) / (4860 * Math.SQRT2 * v ** 1.5)
}

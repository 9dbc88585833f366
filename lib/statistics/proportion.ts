import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { type Interval, intervalAround } from './interval'
import { requireConfidence, requireCount } from './preconditions'

function requireProportion(successes: number, n: number, confidence: number): void {
  requireCount(n, 'The number of trials', 1)
  requireCount(successes, 'The number of successes')
  if (successes > n) throw new RangeError(`There cannot be more successes (${successes}) than trials (${n}).`)
  requireConfidence(confidence)
}

/**
 * Wilson score interval for a proportion.
 *
 * Purpose: the interval shown beside a pass rate; keeps its coverage when there are few coupons.
 * Formula: centre (x + z²/2)/(n + z²), half-width z/(n + z²) · √(x(n − x)/n + z²/4).
 * Source: Wilson 1927, J. Am. Stat. Assoc. 22:209; recommended for n up to 40 by Brown, Cai & DasGupta 2001, Statistical Science 16:101.
 * Units: shares from 0 to 1.
 *
 * @throws RangeError when there are no trials, more successes than trials, counts that are not whole, or a confidence outside 0 to 1
 * @example wilsonInterval(9, 10, 0.95) // { low: 0.596, high: 0.982 }
 */
export function wilsonInterval(successes: number, n: number, confidence: number): Interval {
  requireProportion(successes, n, confidence)
  const z = normalQuantile(0.5 + confidence / 2, 0, 1)
  const centre = (successes + z * z / 2) / (n + z * z)
  const half = z / (n + z * z) * Math.sqrt(successes * (n - successes) / n + z * z / 4)
  return intervalAround(
    successes / n,
    successes === 0 ? 0 : centre - half,
    successes === n ? 1 : centre + half,
    0, 1,
  )
}

/**
 * Clopper-Pearson ("exact") interval for a proportion.
 *
 * Purpose: where the stated confidence must never be undercut, at the price of a wider interval.
 * Formula: beta quantiles α/2 of (x, n − x + 1) and 1 − α/2 of (x + 1, n − x); 0 when x = 0, 1 when x = n.
 * Source: Clopper & Pearson 1934, Biometrika 26:404; NIST/SEMATECH e-Handbook 7.2.4.2.
 * Units: shares from 0 to 1.
 *
 * @throws RangeError when there are no trials, more successes than trials, counts that are not whole, or a confidence outside 0 to 1
 * @example clopperPearsonInterval(9, 10, 0.95) // { low: 0.555, high: 0.997 }
 */
export function clopperPearsonInterval(successes: number, n: number, confidence: number): Interval {
  requireProportion(successes, n, confidence)
  const tail = (1 - confidence) / 2
  return intervalAround(
    successes / n,
    successes === 0 ? 0 : betaQuantile(tail, successes, n - successes + 1),
    successes === n ? 1 : betaQuantile(1 - tail, successes + 1, n - successes),
    0, 1,
  )
}

/**
 * Jeffreys interval for a proportion.
 *
 * Purpose: where the posterior is carried on, as in the beta-binomial forecast.
 * Formula: beta quantiles α/2 and 1 − α/2 of (x + ½, n − x + ½); 0 when x = 0, 1 when x = n. Below a confidence of
 * about 0.3 the limits are stretched to hold x/n.
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101.
 * Units: shares from 0 to 1.
 *
 * @throws RangeError when there are no trials, more successes than trials, counts that are not whole, or a confidence outside 0 to 1
 * @example jeffreysInterval(9, 10, 0.95) // { low: 0.619, high: 0.989 }
 */
export function jeffreysInterval(successes: number, n: number, confidence: number): Interval {
  requireProportion(successes, n, confidence)
  const tail = (1 - confidence) / 2
  const [a, b] = [successes + 0.5, n - successes + 0.5]
  return intervalAround(
    successes / n,
    successes === 0 ? 0 : betaQuantile(tail, a, b),
    successes === n ? 1 : betaQuantile(1 - tail, a, b),
    0, 1,
  )
}

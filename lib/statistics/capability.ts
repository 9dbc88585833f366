import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { chiSquareQuantile } from './chi-square-quantile'
import { type Interval, intervalAround } from './interval'
import { requireConfidence, requireCount, requireFinite, requireNamed, requirePositive } from './preconditions'

/** Limits a measured quantity must keep; null where there is none on that side. */
export type SpecificationLimits = { readonly lower: number | null; readonly upper: number | null }
export type Capability = {
  /** Spread against the width of the limits; null when one side is open. */
  readonly cp: number | null
  readonly cpk: number
  readonly cpl: number | null
  readonly cpu: number | null
  /** How far off the middle: 0 in the middle, 1 at a limit; null when one side is open. */
  readonly offCentre: number | null
}

/**
 * Capability indices Cp and Cpk.
 *
 * Purpose: how comfortably a steady welder or machine keeps within limits. Show it with its interval; under about 50 values it is mostly noise.
 * Formula: Cp = (U − L)/6s; Cpu = (U − m)/3s; Cpl = (m − L)/3s; Cpk the smaller; off centre |middle − m|/((U − L)/2).
 * Source: NIST/SEMATECH e-Handbook 6.1.6.
 * Units: mean, standard deviation and limits share one unit; the indices have none.
 *
 * @throws RangeError when a number is not finite, the standard deviation is not above 0, both limits are missing, or lower is not below upper
 * @example capability({ mean: 16, standardDeviation: 2 }, { lower: 8, upper: 20 }) // { cp: 1, cpk: 0.6667, cpl: 1.3333, cpu: 0.6667, offCentre: 0.3333 }
 */
export function capability(
  process: { readonly mean: number; readonly standardDeviation: number },
  limits: SpecificationLimits,
): Capability {
  const { mean, standardDeviation: s } = requireNamed(process, 'The mean and standard deviation')
  const { lower, upper } = requireNamed(limits, 'The limits')
  requireFinite(mean, 'The mean')
  requirePositive(s, 'The standard deviation')
  if (lower !== null) requireFinite(lower, 'The lower limit')
  if (upper !== null) requireFinite(upper, 'The upper limit')
  const cpl = lower === null ? null : (mean - lower) / (3 * s)
  const cpu = upper === null ? null : (upper - mean) / (3 * s)
  if (lower === null || upper === null) {
    const cpk = cpl ?? cpu
    if (cpk === null) throw new RangeError('Capability needs a lower or an upper limit; both are missing.')
    return { cp: null, cpk, cpl, cpu, offCentre: null }
  }
  if (lower >= upper) throw new RangeError(`The lower limit (${lower}) must be below the upper limit (${upper}).`)
  const half = (upper - lower) / 2
  return {
    cp: half / (3 * s),
    cpk: Math.min((mean - lower) / (3 * s), (upper - mean) / (3 * s)),
    cpl,
    cpu,
    offCentre: Math.abs((lower + upper) / 2 - mean) / half,
  }
}

/**
 * Interval of Cp.
 *
 * Purpose: how much a Cp from n values can be trusted.
 * Formula: Cp · √(χ²(α/2, n − 1)/(n − 1)) to Cp · √(χ²(1 − α/2, n − 1)/(n − 1)).
 * Source: Kotz & Johnson, Process Capability Indices, 1993, chapter 2 (from memory; it is the interval of a standard deviation turned over).
 * Units: none.
 *
 * @throws RangeError when Cp is not above 0, there are fewer than two values, or the confidence is outside 0 to 1
 * @example cpInterval(1, 30, 0.95) // { low: 0.744, high: 1.256 }
 */
export function cpInterval(cp: number, n: number, confidence: number): Interval {
  requirePositive(cp, 'Cp')
  requireCount(n, 'The number of values', 2)
  requireConfidence(confidence)
  const at = (probability: number) => cp * Math.sqrt(chiSquareQuantile(probability, n - 1) / (n - 1))
  return intervalAround(cp, at((1 - confidence) / 2), at((1 + confidence) / 2), 0)
}

/**
 * Interval of Cpk (Bissell's approximation).
 *
 * Purpose: how much a Cpk from n values can be trusted: at 30 values and Cpk 1 it runs from 0.72 to 1.28.
 * Formula: Cpk ± z · √(1/(9n) + Cpk²/(2(n − 1))).
 * Source: Bissell 1990, Applied Statistics 39:331.
 * Units: none; below 0 when the mean lies outside a limit.
 *
 * @throws RangeError when Cpk is not finite, there are fewer than two values, or the confidence is outside 0 to 1
 * @example cpkInterval(1, 30, 0.95) // { low: 0.716, high: 1.284 }
 */
export function cpkInterval(cpk: number, n: number, confidence: number): Interval {
  requireFinite(cpk, 'Cpk')
  requireCount(n, 'The number of values', 2)
  requireConfidence(confidence)
  const half = normalQuantile(0.5 + confidence / 2, 0, 1) * Math.sqrt(1 / (9 * n) + cpk ** 2 / (2 * (n - 1)))
  return { low: cpk - half, high: cpk + half }
}

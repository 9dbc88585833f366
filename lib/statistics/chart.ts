import { mean } from 'simple-statistics'
import { requireFinite, requireNamed, requirePositive, requireValues } from './preconditions'

// Constants of a moving range of two: mean range d2 and upper factor D4 (ASTM E2587, NIST/SEMATECH e-Handbook 6.3.2.2).
const D2 = 1.128
const D4 = 3.267

export type IndividualsChart = {
  readonly mean: number
  readonly lower: number
  readonly upper: number
  readonly averageMovingRange: number
  readonly movingRangeUpper: number
  /** Entry i is the step from value i to value i + 1. */
  readonly movingRanges: number[]
  /** Indexes of values outside the limits. */
  readonly signals: number[]
  /** Indexes into `movingRanges` above its limit. */
  readonly rangeSignals: number[]
}

/**
 * Individuals and moving-range chart.
 *
 * Purpose: is one grader, machine or qualified welder steady? Not for novices: someone who learns is not a stable process.
 * Formula: mean ± 3·MR̄/1.128; moving ranges against 3.267·MR̄.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.2.
 * Units: those of the values.
 *
 * @throws RangeError with fewer than two values or a value that is not finite
 * @example individualsChart([49.6, 47.6, 49.9, 51.3]) // { mean: 49.6, upper: 54.653, signals: [] }
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  requireValues(values, 'The values', 2)
  const movingRanges = values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value)))
  const centre = mean([...values])
  const averageMovingRange = mean(movingRanges)
  const reach = 3 * averageMovingRange / D2
  const beyond = reach + 1e-12 * Math.abs(centre) // the mean of equal values may round to a hair beside them
  const movingRangeUpper = D4 * averageMovingRange
  return {
    mean: centre,
    lower: centre - reach,
    upper: centre + reach,
    averageMovingRange,
    movingRangeUpper,
    movingRanges,
    signals: indexesWhere(values, value => Math.abs(value - centre) > beyond),
    rangeSignals: indexesWhere(movingRanges, range => range > movingRangeUpper),
  }
}

/**
 * EWMA chart (exponentially weighted moving average) with steady-state limits.
 *
 * Purpose: notices a small lasting drift sooner than single values do. λ 0.2 with width 2.962 gives a false alarm every 500 values.
 * Formula: z = λx + (1 − λ)z from z₀ = target; limits target ± width · σ · √(λ/(2 − λ)); a signal lies outside them.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.4.
 * Units: target, σ and limits in the units of the values; width in standard deviations.
 *
 * @throws RangeError without values, with λ outside 0 to 1, or σ or width not above 0
 * @example ewma([52, 47, 53], { lambda: 0.3, target: 50, sigma: 2.0539, width: 3 }) // { values: [50.6, 49.52, 50.564], lower: 47.4116, upper: 52.5884, signals: [] }
 */
export function ewma(
  values: readonly number[],
  chart: { readonly lambda: number; readonly target: number; readonly sigma: number; readonly width: number },
): { readonly values: number[]; readonly lower: number; readonly upper: number; readonly signals: number[] } {
  requireValues(values, 'The values', 1)
  const { lambda, target, sigma, width } = requireNamed(chart, 'Lambda, target, sigma and width')
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError(`Lambda must be above 0 and at most 1, such as 0.2, not ${String(lambda)}.`)
  requireFinite(target, 'The target')
  requirePositive(sigma, 'Sigma')
  requirePositive(width, 'The width')
  const reach = width * sigma * Math.sqrt(lambda / (2 - lambda))
  let level = target
  const smoothed = values.map(value => (level = lambda * value + (1 - lambda) * level))
  return {
    values: smoothed,
    lower: target - reach,
    upper: target + reach,
    signals: indexesWhere(smoothed, value => value < target - reach || value > target + reach),
  }
}

/**
 * CUSUM chart (tabular, two-sided).
 *
 * Purpose: the quickest simple chart for a lasting shift of known size; k is half that shift. With k 0.5 σ and h 5 σ a false
 * alarm comes every 465 values and a shift of one σ is noticed after about 10.
 * Formula: up = max(0, up + x − target − k), down = max(0, down + target − x − k), both from 0; a signal where either exceeds h.
 * The sums run on after a signal, so a lasting shift signals at every value until it ends.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.3; Page 1954, Biometrika 41:100.
 * Units: target, k, h and the sums in the units of the values.
 *
 * @throws RangeError without values, with k below 0 or h not above 0
 * @example cusum([10, 12, 13], { target: 10, k: 0.5, h: 3 }) // { up: [0, 1.5, 4], down: [0, 0, 0], signals: [2] }
 */
export function cusum(
  values: readonly number[],
  chart: { readonly target: number; readonly k: number; readonly h: number },
): { readonly up: number[]; readonly down: number[]; readonly signals: number[] } {
  requireValues(values, 'The values', 1)
  const { target, k, h } = requireNamed(chart, 'Target, k and h')
  requireFinite(target, 'The target')
  requireFinite(k, 'The allowance k')
  if (k < 0) throw new RangeError(`The allowance k must not be below 0; it is ${k}.`)
  requirePositive(h, 'The limit h')
  let [high, low] = [0, 0]
  const up = values.map(value => (high = Math.max(0, high + (value - target) - k)))
  const down = values.map(value => (low = Math.max(0, low + (target - value) - k)))
  return { up, down, signals: indexesWhere(up, (sum, i) => sum > h || (down[i] ?? 0) > h) }
}

function indexesWhere(values: readonly number[], test: (value: number, index: number) => boolean): number[] {
  return values.flatMap((value, index) => (test(value, index) ? [index] : []))
}

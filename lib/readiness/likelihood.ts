import { GRID } from './grid'
import type { FilterParameters } from './parameters'
import type { PracticeCoupon } from './practice-coupon'
import { t5Cdf, t5LogKernel } from './student-t5'

export function logistic(z: number): number {
  return 1 / (1 + Math.exp(-z))
}

/** Chance that all yes/no rules pass at x. */
export function attributeChance(x: number, p: FilterParameters): number {
  return logistic(p.c + p.d * x)
}

/** The link: chance that a coupon at x passes, T₅(x / s) · logistic(c + d · x). Rises with x. */
export function passChance(x: number, p: FilterParameters): number {
  return t5Cdf(x / p.s) * attributeChance(x, p)
}

/** Log chances over the grid that depend on the parameters alone. */
export type OutcomeTables = {
  readonly pass: Float64Array
  readonly fail: Float64Array
  readonly good: Float64Array
  readonly bad: Float64Array
}

export function outcomeTables(p: FilterParameters): OutcomeTables {
  const over = (chance: (x: number) => number) => Float64Array.from(GRID, (x) => safeLog(chance(x)))
  return {
    pass: over((x) => passChance(x, p)),
    fail: over((x) => 1 - passChance(x, p)),
    good: over((x) => attributeChance(x, p)),
    bad: over((x) => 1 - attributeChance(x, p)),
  }
}

/** A chance that rounds to 0 is still possible: an outcome that happened must not wipe out every point. */
function safeLog(chance: number): number {
  return Math.log(Math.max(chance, 1e-300))
}

/**
 * Log likelihood of a coupon over the grid, up to a constant and before the power eta.
 * With a margin: the margin, and the yes/no rules where they were looked at. Without one: the verdict alone,
 * also when the yes/no rules are known.
 */
export function logLikelihood(coupon: PracticeCoupon, p: FilterParameters, tables: OutcomeTables): Float64Array {
  const { accepted, worstMargin, attributesGood } = coupon
  if (worstMargin === undefined) return accepted ? tables.pass : tables.fail
  const attributes = attributesGood === undefined ? null : attributesGood ? tables.good : tables.bad
  return Float64Array.from(GRID, (x, i) => t5LogKernel((worstMargin - x) / p.s) + (attributes?.[i] ?? 0))
}

import { overGrid } from './grid'
import type { FilterParameters } from './parameters'
import type { PracticeCoupon } from './practice-coupon'
import { t5Cdf } from './student-t5'

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

/** Chances over the grid that depend on the parameters alone, to the power eta. */
export type OutcomeTables = {
  readonly pass: Float64Array
  readonly fail: Float64Array
  readonly good: Float64Array
  readonly bad: Float64Array
}

export function outcomeTables(p: FilterParameters): OutcomeTables {
  const over = (chance: (x: number) => number) => overGrid((x) => Math.max(chance(x), LEAST_CHANCE) ** p.eta)
  return {
    pass: over((x) => passChance(x, p)),
    fail: over((x) => 1 - passChance(x, p)),
    good: over((x) => attributeChance(x, p)),
    bad: over((x) => 1 - attributeChance(x, p)),
  }
}

/** A chance that rounds to 0 is still possible: an outcome that happened must not wipe out every point. */
const LEAST_CHANCE = 1e-100

/** Past this many scales a margin is equally far from every grid point. */
const FAR = 1e15

/**
 * Likelihood of a coupon over the grid to the power eta times its weight, up to a constant.
 * With a margin: the margin, and the yes/no rules where they were looked at. Without one: the verdict alone,
 * also when the yes/no rules are known.
 */
export function likelihood(coupon: PracticeCoupon, p: FilterParameters, tables: OutcomeTables): Float64Array {
  const { accepted, worstMargin, attributesGood, weight = 1 } = coupon
  if (worstMargin === undefined) return weighted(accepted ? tables.pass : tables.fail, weight)
  const margin = marginLikelihood(worstMargin, p.s, p.eta * weight)
  if (attributesGood === undefined) return margin
  const attributes = weighted(attributesGood ? tables.good : tables.bad, weight)
  return margin.map((l, i) => l * attributes[i]!)
}

/** The density of Student's t with 5 degrees of freedom about each grid point, without its constant, to a power. */
function marginLikelihood(margin: number, s: number, power: number): Float64Array {
  const exponent = -3 * power
  return overGrid((x) => {
    const z = Math.min(FAR, Math.abs(margin - x) / s)
    return (1 + (z * z) / 5) ** exponent
  })
}

function weighted(table: Float64Array, weight: number): Float64Array {
  return weight === 1 ? table : table.map((l) => l ** weight)
}

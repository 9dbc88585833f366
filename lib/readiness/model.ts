import { normalise, overGrid } from './grid'
import { likelihood, outcomeTables, passChance, type OutcomeTables } from './likelihood'
import { checkParameters, type FilterParameters } from './parameters'
import type { PracticeCoupon } from './practice-coupon'
import { move, transition, type Transition } from './transition'

/** The parameters with what follows from them alone, worked out once. */
export type Model = {
  readonly parameters: FilterParameters
  readonly tables: OutcomeTables
  /** The link over the grid. */
  readonly pass: Float64Array
  readonly transitionAfter: (days: number) => Transition
}

/** Gaps are whole days in practice, so few kernels serve a whole class; past this many they are made afresh. */
const KEPT_TRANSITIONS = 64

const models = new WeakMap<FilterParameters, Model>()

/** @throws RangeError for parameters outside their range. */
export function modelOf(parameters: FilterParameters): Model {
  const known = models.get(parameters)
  if (known) return known
  checkParameters(parameters)
  const frozen = { ...parameters }
  const model: Model = {
    parameters: frozen,
    tables: outcomeTables(frozen),
    pass: overGrid((x) => passChance(x, frozen)),
    transitionAfter: keeping((days) => transition(days, frozen)),
  }
  if (Object.isFrozen(parameters)) models.set(parameters, model)
  return model
}

function keeping(make: (days: number) => Transition): (days: number) => Transition {
  const kept = new Map<number, Transition>()
  return (days) => {
    const known = kept.get(days)
    if (known) return known
    const made = make(days)
    if (kept.size < KEPT_TRANSITIONS) kept.set(days, made)
    return made
  }
}

/** Belief before the first coupon: the normal density of m0, s0 at the grid points, scaled to sum 1. */
export function prior({ parameters: { m0, s0 } }: Model): Float64Array {
  return normalise(overGrid((x) => Math.exp(-((x - m0) ** 2) / (2 * s0 * s0))))
}

/** Belief `days` and one step later. */
export function predict(mass: Float64Array, days: number, model: Model): Float64Array {
  return move(mass, model.transitionAfter(days))
}

/** Belief after seeing a coupon. */
export function update(mass: Float64Array, coupon: PracticeCoupon, model: Model): Float64Array {
  if (coupon.weight === 0) return mass
  const seen = likelihood(coupon, model.parameters, model.tables)
  return normalise(mass.map((m, i) => m * seen[i]!))
}

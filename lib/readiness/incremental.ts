import type { Calibration } from './calibrate'
import { GRID_SIZE } from './grid'
import { modelOf, predict, prior, update, type Model } from './model'
import { SHIPPED_PARAMETERS, type FilterParameters } from './parameters'
import { checkCoupon, checkCoupons, type PracticeCoupon } from './practice-coupon'
import { readOut, type Readiness } from './read-out'

/** `level` of the interval (0.8 when absent), parameters (the shipped ones when absent), the program's calibration (none when absent). */
export type FilterOptions = {
  readonly level?: number
  readonly parameters?: FilterParameters
  readonly calibration?: Calibration
}

/**
 * What the filter remembers of a series: enough to absorb the next coupon in one step. Plain JSON.
 * It belongs to the parameters it was made with; after a refit, start again from the coupons.
 */
export type FilterState = {
  /** Day of the last coupon; null before the first. */
  readonly day: number | null
  readonly coupons: number
  /** Belief after the last coupon: 121 masses on the grid, summing to 1. */
  readonly mass: readonly number[]
}

/** The state of a student with no coupons. */
export function startState(parameters: FilterParameters = SHIPPED_PARAMETERS): FilterState {
  return { day: null, coupons: 0, mass: Array.from(prior(modelOf(parameters))) }
}

/**
 * The state after one more coupon. Absorbing a series coupon by coupon gives what the whole series gives at once.
 *
 * @throws RangeError when the coupon is malformed, earlier than the last one, or the state was damaged in storage.
 */
export function absorbCoupon(state: FilterState, coupon: PracticeCoupon, parameters: FilterParameters = SHIPPED_PARAMETERS): FilterState {
  checkCoupon(coupon, state.day)
  const mass = step(readMass(state), state.day, coupon, modelOf(parameters))
  return { day: coupon.day, coupons: state.coupons + 1, mass: Array.from(mass) }
}

/**
 * The state after a whole series: what absorbing it coupon by coupon gives.
 *
 * @throws RangeError for a coupon that is malformed or out of order
 */
export function stateAfter(coupons: readonly PracticeCoupon[], parameters: FilterParameters = SHIPPED_PARAMETERS): FilterState {
  checkCoupons(coupons)
  const model = modelOf(parameters)
  let mass: Float64Array = prior(model)
  let day: number | null = null
  for (const coupon of coupons) {
    mass = step(mass, day, coupon, model)
    day = coupon.day
  }
  return { day, coupons: coupons.length, mass: Array.from(mass) }
}

/**
 * Readiness on `testDay` from a stored state.
 *
 * @throws RangeError when `testDay` is not a number or lies before the last coupon, or an option is out of range.
 */
export function readinessOf(state: FilterState, testDay: number, options: FilterOptions = {}): Readiness {
  const model = modelOf(options.parameters ?? SHIPPED_PARAMETERS)
  return readOut(carry(readMass(state), state.day, testDay, model), model, options.level ?? 0.8, options.calibration)
}

/** One coupon: the step since the coupon before it (none before the first), then what it showed. */
function step(mass: Float64Array, dayBefore: number | null, coupon: PracticeCoupon, model: Model): Float64Array {
  const arrived = dayBefore === null ? mass : predict(mass, coupon.day - dayBefore, model)
  return update(arrived, coupon, model)
}

/** The same step once more, from the last coupon to the test. Without coupons the prior stands as it is. */
function carry(mass: Float64Array, lastDay: number | null, testDay: number, model: Model): Float64Array {
  if (!Number.isFinite(testDay)) throw new RangeError(`The test day must be a finite number, not ${testDay}.`)
  if (lastDay === null) return mass
  if (testDay < lastDay) throw new RangeError('The test day lies before the last coupon: an estimate looks forward only.')
  return predict(mass, testDay - lastDay, model)
}

function readMass({ mass }: FilterState): Float64Array {
  if (mass.length !== GRID_SIZE) throw new RangeError(`A stored readiness state needs ${GRID_SIZE} masses, not ${mass.length}: work it out again from the coupons.`)
  const sum = mass.reduce((total, m) => total + m, 0)
  if (!mass.every((m) => m >= 0) || !(Math.abs(sum - 1) < 1e-6)) {
    throw new RangeError('A stored readiness state is damaged: its masses do not sum to 1. Work it out again from the coupons.')
  }
  return Float64Array.from(mass)
}

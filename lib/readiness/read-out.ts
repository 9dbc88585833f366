import { calibrate, checkCalibration, type Calibration } from './calibrate'
import { quantile } from './grid'
import { passChance } from './likelihood'
import type { Model } from './model'

/** The chance that a test coupon passes, between limits that hold `level` of the belief. All three lie in 0 to 1, in order. */
export type Readiness = { readonly probability: number; readonly low: number; readonly high: number }

/**
 * What the belief says about the pass chance: the mean of the link over the grid, and the link at the grid quantiles.
 * Calibration, when given, applies to all three. Limits are widened to hold the mean where a skewed belief puts it outside.
 */
export function readOut(mass: Float64Array, model: Model, level: number, calibration?: Calibration): Readiness {
  if (typeof level !== 'number' || !(level > 0 && level < 1)) throw new RangeError(`The interval level must lie between 0 and 1, not ${level}.`)
  if (calibration) checkCalibration(calibration)
  const shown = (chance: number) => clamp01(calibration ? calibrate(chance, calibration) : chance)

  let mean = 0
  for (let i = 0; i < mass.length; i++) mean += mass[i]! * model.pass[i]!
  const probability = shown(mean)
  const low = shown(passChance(quantile(mass, (1 - level) / 2), model.parameters))
  const high = shown(passChance(quantile(mass, (1 + level) / 2), model.parameters))
  return { probability, low: Math.min(low, probability), high: Math.max(high, probability) }
}

function clamp01(chance: number): number {
  return Math.min(1, Math.max(0, chance))
}

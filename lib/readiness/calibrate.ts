import { logistic } from './likelihood'

/** The program's correction of the filter: logit p' = alpha + beta · logit p. Identity at 0 and 1. */
export type Calibration = { readonly alpha: number; readonly beta: number }

const CLIP = 1e-4

/** Log odds of a chance, kept within [1e-4, 1 - 1e-4]. */
export function clippedLogit(chance: number): number {
  const kept = Math.min(1 - CLIP, Math.max(CLIP, chance))
  return Math.log(kept / (1 - kept))
}

/** @throws RangeError when the correction is not finite or would turn better into worse (beta below 0). */
export function checkCalibration({ alpha, beta }: Calibration): void {
  if (!Number.isFinite(alpha) || !Number.isFinite(beta)) throw new RangeError('The calibration needs finite numbers for alpha and beta.')
  if (beta < 0) throw new RangeError(`The calibration slope beta must not be below 0, not ${beta}.`)
}

export function calibrate(chance: number, { alpha, beta }: Calibration): number {
  return logistic(alpha + beta * clippedLogit(chance))
}

import { checkCalibration, clippedLogit, type Calibration } from './calibrate'
import { logistic } from './likelihood'

export type { Calibration } from './calibrate'

/** A test and what the filter, before calibration, had said of it. */
export type ForecastResult = { readonly forecast: number; readonly passed: boolean }

/** From this many test results on, the program's own results weigh more and the 80 % limits are shown. */
export const ENOUGH_RESULTS = 100

/** Gaussian priors about "as it stands" (alpha 0, beta 1): sd of alpha and of beta. */
const TIGHT = { alpha: 0.25, beta: 0.1 }
const WIDE = { alpha: 0.5, beta: 0.2 }

/**
 * The program's correction of the filter, learnt from its own tests: the most likely alpha and beta of
 * logit p' = alpha + beta · logit p, with priors N(0, 0.25²), N(1, 0.1²) below 100 results and N(0, 0.5²), N(1, 0.2²) from 100.
 * Logistic recalibration after Cox 1958, Biometrika 45:562 (from memory), with shrinkage. A slope below 0 is held at 0.
 *
 * @param results every test with a forecast; `forecast` is the uncalibrated probability, 0 to 1
 * @returns alpha 0 and beta 1 without results
 * @throws RangeError for a forecast outside 0 to 1
 */
export function fitCalibration(results: readonly ForecastResult[]): Calibration {
  const spread = results.length < ENOUGH_RESULTS ? TIGHT : WIDE
  const cases = results.map(({ forecast, passed }) => {
    if (typeof forecast !== 'number' || !(forecast >= 0 && forecast <= 1)) throw new RangeError(`A test's forecast must lie between 0 and 1, not ${forecast}.`)
    return { logit: clippedLogit(forecast), passed: passed ? 1 : 0 }
  })
  const free = climb(cases, spread, { alpha: 0, beta: 1 }, false)
  const fit = free.beta >= 0 ? free : climb(cases, spread, { alpha: free.alpha, beta: 0 }, true)
  checkCalibration(fit)
  return fit
}

/** 95 % limits until there are 100 results: before that the nominal 80 % ones held the truth too rarely in simulation. */
export function levelFor(results: number): 0.8 | 0.95 {
  return results < ENOUGH_RESULTS ? 0.95 : 0.8
}

type Case = { readonly logit: number; readonly passed: number }

/** Newton's method on a concave target; a step that overshoots is halved. */
function climb(cases: readonly Case[], spread: typeof TIGHT, start: Calibration, holdBeta: boolean): Calibration {
  let at = start
  let height = logPosterior(cases, spread, at)
  for (let round = 0; round < 50; round++) {
    const step = newtonStep(cases, spread, at, holdBeta)
    let size = 1
    let next = moved(at, step, size)
    while (logPosterior(cases, spread, next) < height && size > 1e-6) {
      size /= 2
      next = moved(at, step, size)
    }
    const higher = logPosterior(cases, spread, next)
    if (higher <= height) return at
    at = next
    if (higher - height < 1e-13) return at
    height = higher
  }
  return at
}

function moved(at: Calibration, step: Calibration, size: number): Calibration {
  return { alpha: at.alpha + size * step.alpha, beta: at.beta + size * step.beta }
}

function logPosterior(cases: readonly Case[], spread: typeof TIGHT, { alpha, beta }: Calibration): number {
  let sum = -(alpha ** 2) / (2 * spread.alpha ** 2) - (beta - 1) ** 2 / (2 * spread.beta ** 2)
  for (const { logit, passed } of cases) {
    const z = alpha + beta * logit
    sum += passed * z - Math.max(z, 0) - Math.log1p(Math.exp(-Math.abs(z)))
  }
  return sum
}

function newtonStep(cases: readonly Case[], spread: typeof TIGHT, { alpha, beta }: Calibration, holdBeta: boolean): Calibration {
  let gradAlpha = -alpha / spread.alpha ** 2
  let gradBeta = (1 - beta) / spread.beta ** 2
  let aa = 1 / spread.alpha ** 2
  let ab = 0
  let bb = 1 / spread.beta ** 2
  for (const { logit, passed } of cases) {
    const p = logistic(alpha + beta * logit)
    const weight = p * (1 - p)
    gradAlpha += passed - p
    gradBeta += (passed - p) * logit
    aa += weight
    ab += weight * logit
    bb += weight * logit * logit
  }
  if (holdBeta) return { alpha: gradAlpha / aa, beta: 0 }
  const determinant = aa * bb - ab * ab
  return { alpha: (bb * gradAlpha - ab * gradBeta) / determinant, beta: (aa * gradBeta - ab * gradAlpha) / determinant }
}

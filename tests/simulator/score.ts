import { brierScore, calibrationLine, expectedCalibrationError, logScore } from '@/lib/statistics/calibration'
import type { Forecast } from './forecasters'

/** How good a set of forecasts was. `cover`: share of true chances within the limits. */
export type Score = { readonly brier: number; readonly log: number; readonly slope: number; readonly ece: number; readonly cover: number | null }

const BINS = 10

export function score(forecasts: readonly Forecast[], passed: readonly boolean[], truth: readonly number[]): Score {
  const chances = forecasts.map(({ chance }) => chance)
  const outcomes = passed.map((p) => (p ? (1 as const) : (0 as const)))
  const held = forecasts.flatMap(({ limits }, i) => (limits ? [truth[i]! >= limits.low && truth[i]! <= limits.high] : []))
  return {
    brier: brierScore(chances, outcomes),
    log: logScore(chances.map((p) => Math.min(1 - 1e-4, Math.max(1e-4, p))), outcomes),
    slope: calibrationLine(chances, outcomes).slope,
    ece: expectedCalibrationError(chances, outcomes, BINS),
    cover: held.length === 0 ? null : held.filter(Boolean).length / held.length,
  }
}

export function meanAndSd(values: readonly number[]): { readonly mean: number; readonly sd: number } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  const sd = values.length < 2 ? 0 : Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1))
  return { mean, sd }
}

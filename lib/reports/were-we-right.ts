import { quantile } from 'simple-statistics'
import { ENOUGH_RESULTS } from '../readiness/calibration'
import { brierScore, calibrationLine, reliabilityBins, type ReliabilityBin } from '../statistics/calibration'
import type { Interval } from '../statistics/interval'
import { wilsonInterval } from '../statistics/proportion'

/** A test beside the chance that had been given to it; `forecast` is null where nothing had been said. */
export type ForecastResult = { readonly forecast: number | null; readonly passed: boolean }

/** Fewer results with a forecast say nothing about the forecasts. This project's choice: no source. */
export const LEAST_RESULTS = 20

/** `withoutForecast`: tests taken before there was anything to go by. */
export type WereWeRight = { readonly withoutForecast: number } & (
  | { readonly kind: 'few'; readonly n: number; readonly passed: number; readonly least: number }
  | JudgedForecasts
)

export type JudgedForecasts = {
  readonly kind: 'judged'
  readonly n: number
  readonly passed: number
  readonly meanForecast: number
  /** The middle half of the forecasts: the closer together, the less they can add to the pass rate. */
  readonly middleHalf: Interval
  /** Share that passed, with its 95 % Wilson interval. */
  readonly passRate: Interval & { readonly rate: number }
  /** Mean squared error of the forecasts; smaller is better. */
  readonly brier: number
  /** The same of someone who had always said the pass rate, knowing it beforehand. */
  readonly brierOfPassRate: number
  readonly bins: readonly ReliabilityBin[]
  /** null where no line can be fitted, because all results or all forecasts are alike, or a forecast splits them. */
  readonly line: ReturnType<typeof calibrationLine> | null
  /** Whether slope 1 and intercept 0 both lie in their 95 % intervals; null without a line. */
  readonly consistent: boolean | null
  /** Too few results for narrow statements: the screen says so. */
  readonly stillFew: boolean
}

/**
 * How good the forecasts of tests were.
 *
 * @param results in any order
 * @throws RangeError when a forecast is not within 0 to 1
 */
export function wereWeRight(results: readonly ForecastResult[]): WereWeRight {
  const told = results.filter((each): each is { forecast: number; passed: boolean } => each.forecast !== null)
  const withoutForecast = results.length - told.length
  const n = told.length
  const passed = told.filter((each) => each.passed).length
  if (n < LEAST_RESULTS) return { kind: 'few', n, passed, least: LEAST_RESULTS, withoutForecast }

  const forecasts = told.map(({ forecast }) => forecast)
  const outcomes = told.map((each) => (each.passed ? 1 : 0))
  const rate = passed / n
  const line = lineOrNull(forecasts, outcomes)
  return {
    kind: 'judged',
    withoutForecast, n, passed,
    meanForecast: forecasts.reduce((sum, forecast) => sum + forecast, 0) / n,
    middleHalf: { low: quantile(forecasts, 0.25), high: quantile(forecasts, 0.75) },
    passRate: { rate, ...wilsonInterval(passed, n, 0.95) },
    brier: brierScore(forecasts, outcomes),
    brierOfPassRate: rate * (1 - rate),
    bins: reliabilityBins(forecasts, outcomes, n < ENOUGH_RESULTS ? 5 : 10),
    line,
    consistent: line && holds(line.slopeInterval, 1) && holds(line.interceptInterval, 0),
    stillFew: n < ENOUGH_RESULTS,
  }
}

const holds = ({ low, high }: Interval, value: number): boolean => low <= value && value <= high

/** A line cannot always be fitted, and the page must live with that: it is no fault of whoever reads it. */
function lineOrNull(forecasts: readonly number[], outcomes: readonly (0 | 1)[]): ReturnType<typeof calibrationLine> | null {
  try {
    return calibrationLine(forecasts, outcomes)
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

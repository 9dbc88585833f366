import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { judgedForecasts, type JudgedForecast } from './forecasts'
import type { Interval } from './interval'
import { fitLogisticLine } from './logistic-line'
import type { Outcome } from './outcome'
import { requireConfidence, requireCount } from './preconditions'
import { wilsonInterval } from './proportion'

const averageOf = <T>(items: readonly T[], value: (item: T) => number) => items.reduce((sum, item) => sum + value(item), 0) / items.length

function groupBy<T>(items: readonly T[], key: (item: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>()
  for (const item of items) {
    const group = groups.get(key(item))
    if (group) group.push(item)
    else groups.set(key(item), [item])
  }
  return groups
}

/**
 * Brier score.
 *
 * Purpose: how far forecasts were from what happened: 0 is perfect, 0.25 is what always saying one half earns.
 * Formula: mean (f − o)².
 * Source: Brier 1950, Monthly Weather Review 78:1.
 * Units: squared share, 0 to 1; smaller is better.
 *
 * @throws RangeError without forecasts, when the lists differ in length, a forecast is not from 0 to 1, or an outcome is not 0 or 1
 * @example brierScore([0.8, 0.6, 0.3], [1, 1, 0]) // 0.0967
 */
export function brierScore(forecasts: readonly number[], outcomes: readonly Outcome[]): number {
  return averageOf(judgedForecasts(forecasts, outcomes), ({ forecast, outcome }) => (forecast - outcome) ** 2)
}

/**
 * Brier score taken apart: reliability − resolution + uncertainty.
 *
 * Purpose: tells poor calibration (reliability, smaller is better) from forecasts that never leave the average (resolution, larger is better).
 * Formula: exact, over distinct forecast values k: Σ n_k(f_k − ō_k)²/n − Σ n_k(ō_k − ō)²/n + ō(1 − ō). Not binned: bins would add two more terms.
 * Source: Murphy 1973, J. Applied Meteorology 12:595; Stephenson, Coelho & Jolliffe 2008, Weather and Forecasting 23:752.
 * Units: squared share.
 *
 * @throws RangeError without forecasts, when the lists differ in length, a forecast is not from 0 to 1, or an outcome is not 0 or 1
 * @example brierDecomposition([0.8, 0.8, 0.3], [1, 1, 0]) // { score: 0.0567, reliability: 0.0567, resolution: 0.2222, uncertainty: 0.2222 }
 */
export function brierDecomposition(forecasts: readonly number[], outcomes: readonly Outcome[]): {
  readonly score: number
  readonly reliability: number
  readonly resolution: number
  readonly uncertainty: number
} {
  const judged = judgedForecasts(forecasts, outcomes)
  const base = averageOf(judged, ({ outcome }) => outcome)
  const byForecast = groupBy(judged, ({ forecast }) => forecast)
  const overForecasts = (term: (forecast: number, share: number) => number) =>
    [...byForecast].reduce((sum, [forecast, items]) => sum + items.length * term(forecast, averageOf(items, ({ outcome }) => outcome)), 0) / judged.length
  return {
    score: averageOf(judged, ({ forecast, outcome }) => (forecast - outcome) ** 2),
    reliability: overForecasts((forecast, share) => (forecast - share) ** 2),
    resolution: overForecasts((_, share) => (share - base) ** 2),
    uncertainty: base * (1 - base),
  }
}

const SURE = 1e-15

/**
 * Logarithmic score.
 *
 * Purpose: as the Brier score, but being sure and wrong costs much more.
 * Formula: mean of −ln(probability given to what happened); forecasts are held 1e-15 away from 0 and 1 so that the score stays finite.
 * Source: Good 1952, J. R. Stat. Soc. B 14:107.
 * Units: nats; smaller is better, ln 2 = 0.693 is what always saying one half earns.
 *
 * @throws RangeError without forecasts, when the lists differ in length, a forecast is not from 0 to 1, or an outcome is not 0 or 1
 * @example logScore([0.8, 0.6, 0.3], [1, 1, 0]) // 0.3635
 */
export function logScore(forecasts: readonly number[], outcomes: readonly Outcome[]): number {
  return averageOf(judgedForecasts(forecasts, outcomes), ({ forecast, outcome }) =>
    -Math.log(Math.max(SURE, outcome === 1 ? forecast : 1 - forecast)))
}

export type ReliabilityBin = {
  /** The bin takes forecasts from `from` up to, but without, `to`; the last one takes 1 as well. */
  readonly from: number
  readonly to: number
  readonly count: number
  readonly meanForecast: number
  readonly observed: number
  /** Wilson interval of `observed`. */
  readonly interval: Interval
}

/**
 * Bins of a reliability diagram.
 *
 * Purpose: "of the coupons given 60 to 70 %, how many passed?" Empty bins are left out.
 * Formula: equal-width bins; mean forecast and share that happened in each, with its Wilson interval.
 * Source: Murphy & Winkler 1977, Applied Statistics 26:41; Wilson 1927.
 * Units: shares from 0 to 1.
 *
 * @throws RangeError without forecasts, when the lists differ in length, a forecast is not from 0 to 1, an outcome is not 0 or 1, or bins is not a whole number above 0
 * @example reliabilityBins([0.62, 0.66, 0.1], [1, 0, 0], 10) // [{ from: 0.1, count: 1 }, { from: 0.6, count: 2, meanForecast: 0.64, observed: 0.5 }]
 */
export function reliabilityBins(forecasts: readonly number[], outcomes: readonly Outcome[], bins: number, confidence = 0.95): ReliabilityBin[] {
  requireCount(bins, 'The number of bins', 1)
  const binOf = ({ forecast }: JudgedForecast) => Math.min(bins - 1, Math.floor(forecast * bins + 1e-9)) // 0.57 × 100 is 56.99999…
  return [...groupBy(judgedForecasts(forecasts, outcomes), binOf)].sort(([a], [b]) => a - b).map(([bin, items]) => ({
    from: bin / bins,
    to: (bin + 1) / bins,
    count: items.length,
    meanForecast: averageOf(items, ({ forecast }) => forecast),
    observed: averageOf(items, ({ outcome }) => outcome),
    interval: wilsonInterval(items.filter(({ outcome }) => outcome === 1).length, items.length, confidence),
  }))
}

/**
 * Expected calibration error.
 *
 * Purpose: one number for a reliability diagram. Biased upward when there are few results: a perfectly calibrated forecaster shows about
 * 0.10 at 100 results and 0.03 at 1,000 with 10 bins, so judge by the calibration line and its intervals.
 * Formula: Σ n_b/n · |mean forecast − share that happened|, over equal-width bins.
 * Source: Naeini, Cooper & Hauskrecht 2015, AAAI 29:2901.
 * Units: share from 0 to 1.
 *
 * @throws RangeError without forecasts, when the lists differ in length, a forecast is not from 0 to 1, an outcome is not 0 or 1, or bins is not a whole number above 0
 * @example expectedCalibrationError([0.62, 0.66, 0.1], [1, 0, 0], 10) // 0.1267
 */
export function expectedCalibrationError(forecasts: readonly number[], outcomes: readonly Outcome[], bins: number): number {
  return reliabilityBins(forecasts, outcomes, bins)
    .reduce((sum, bin) => sum + bin.count * Math.abs(bin.meanForecast - bin.observed), 0) / forecasts.length
}

const CLIP = 1e-4

/**
 * Calibration line: logistic regression of what happened on the logit of the forecast.
 *
 * Purpose: were we right? Slope 1 and intercept 0 are perfect; a slope below 1 means forecasts too extreme, an intercept below 0 too hopeful.
 * Formula: logit P(o = 1) = intercept + slope · logit f, forecasts held 1e-4 away from 0 and 1; Wald intervals.
 * Source: Cox 1958, Biometrika 45:562; Steyerberg, Clinical Prediction Models, 2nd ed. 2019, chapter 15.
 * Units: logits; the slope has none.
 *
 * @throws RangeError on forecasts or outcomes that are missing, unequal in number or out of range; when all outcomes or all forecasts are alike;
 * or when one forecast value splits the outcomes, so that no finite line fits best
 * @example calibrationLine([0.2, 0.4, 0.5, 0.7, 0.9], [0, 1, 0, 1, 1]) // { intercept: 0.448, slope: 1.969 }
 */
export function calibrationLine(forecasts: readonly number[], outcomes: readonly Outcome[], confidence = 0.95): {
  readonly intercept: number
  readonly slope: number
  readonly interceptInterval: Interval
  readonly slopeInterval: Interval
} {
  requireConfidence(confidence)
  const judged = judgedForecasts(forecasts, outcomes)
  const logits = judged.map(({ forecast }) => {
    const clipped = Math.min(1 - CLIP, Math.max(CLIP, forecast))
    return Math.log(clipped / (1 - clipped))
  })
  const line = fitLogisticLine(logits, judged.map(({ outcome }) => outcome))
  const z = normalQuantile(0.5 + confidence / 2, 0, 1)
  const wald = (value: number, standardError: number) => ({ low: value - z * standardError, high: value + z * standardError })
  return {
    intercept: line.intercept,
    slope: line.slope,
    interceptInterval: wald(line.intercept, line.interceptStandardError),
    slopeInterval: wald(line.slope, line.slopeStandardError),
  }
}

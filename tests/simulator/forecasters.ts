import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { calibrate, type Calibration } from '@/lib/readiness/calibrate'
import { fitCalibration } from '@/lib/readiness/calibration'
import { absorbCoupon, readinessOf, startState } from '@/lib/readiness/incremental'
import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'
import { calibrationLine } from '@/lib/statistics/calibration'
import type { Moment, Series } from './cohort'

/** A forecast with limits that hold the true chance `level` of the time, if they are honest. Limits are null where the method has none. */
export type Forecast = { readonly chance: number; readonly limits: { readonly low: number; readonly high: number } | null }

/** A past test: what was known, and how it went. */
export type Tested = { readonly series: Series; readonly moment: Moment }

/** Forecasts every moment asked for, from the coupons before it. */
export type Forecaster = { readonly name: string; readonly level: number; readonly forecast: (series: Series, moments: readonly Moment[]) => Forecast[] }

/** The filter as shipped, before a program has any test results. */
export function filterAsShipped(level: number, calibration?: Calibration): Forecaster {
  return {
    name: 'filter, no test results',
    level,
    forecast: ({ coupons }, moments) => {
      const states = [startState()]
      for (const coupon of coupons) states.push(absorbCoupon(states.at(-1)!, coupon))
      return moments.map(({ coupons: n, day }) => {
        const { probability, low, high } = readinessOf(states[n]!, day, { level, ...(calibration ? { calibration } : {}) })
        return { chance: probability, limits: { low, high } }
      })
    },
  }
}

/** The filter corrected by the program's own tests, exactly as the application does it. */
export function filterCorrected(tests: readonly Tested[]): Forecaster {
  const plain = filterAsShipped(0.8)
  const calibration = fitCalibration(tests.map((test) => ({ forecast: chanceAt(plain, test), passed: test.moment.passed })))
  return { ...filterAsShipped(0.8, calibration), name: `filter, ${tests.length} test results` }
}

/** Jeffreys' mean and 80 % interval of the pass share of all coupons, or of the last so many. */
export function passShare(name: string, last = Infinity): Forecaster {
  return {
    name,
    level: 0.8,
    forecast: ({ coupons }, moments) => moments.map(({ coupons: n }) => {
      const seen = coupons.slice(Math.max(0, n - last), n)
      const passed = seen.filter(({ accepted }) => accepted).length
      const [a, b] = [passed + 0.5, seen.length - passed + 0.5]
      return { chance: a / (a + b), limits: { low: betaQuantile(0.1, a, b), high: betaQuantile(0.9, a, b) } }
    }),
  }
}

/** A simple method corrected by the same tests, by a logistic line without shrinkage: the most help it can be given. */
export function corrected(plain: Forecaster, tests: readonly Tested[]): Forecaster {
  const { intercept, slope } = calibrationLine(tests.map((test) => chanceAt(plain, test)), tests.map(({ moment }) => (moment.passed ? 1 : 0)))
  const fix = (chance: number) => calibrate(chance, { alpha: intercept, beta: slope })
  return {
    name: `${plain.name}, ${tests.length} test results`,
    level: plain.level,
    forecast: (series, moments) => plain.forecast(series, moments).map(({ chance, limits }) => ({
      chance: fix(chance),
      limits: limits && { low: fix(limits.low), high: fix(limits.high) },
    })),
  }
}

/** "Ready when three in a row pass": as a forecast, the share of past tests passed with and without such a row. */
export function threeInARow(tests: readonly Tested[]): Forecaster {
  const row = (coupons: readonly PracticeCoupon[], n: number) => n >= 3 && coupons.slice(n - 3, n).every(({ accepted }) => accepted)
  const share = (inRow: boolean) => {
    const like = tests.filter(({ series, moment }) => row(series.coupons, moment.coupons) === inRow)
    return (like.filter(({ moment }) => moment.passed).length + 0.5) / (like.length + 1)
  }
  const [after, otherwise] = [share(true), share(false)]
  return {
    name: `three in a row, ${tests.length} test results`,
    level: 0.8,
    forecast: ({ coupons }, moments) => moments.map(({ coupons: n }) => ({ chance: row(coupons, n) ? after : otherwise, limits: null })),
  }
}

function chanceAt(forecaster: Forecaster, { series, moment }: Tested): number {
  return forecaster.forecast(series, [moment])[0]!.chance
}

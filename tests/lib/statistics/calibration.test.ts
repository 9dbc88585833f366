import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { brierDecomposition, brierScore, calibrationLine, expectedCalibrationError, logScore, reliabilityBins } from '@/lib/statistics/calibration'
import { everyNumber } from '../../support/every-number'
import { uniformNoise } from '../../support/seeded-noise'

vi.setConfig({ testTimeout: 30_000 }) // a busy machine is slow, not wrong
fc.configureGlobal({ seed: 47, numRuns: 250 })

const pairs = fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean()), { minLength: 1, maxLength: 80 })
const coarse = fc.array(fc.tuple(fc.integer({ min: 0, max: 10 }).map(tenth => tenth / 10), fc.boolean()), { minLength: 1, maxLength: 80 })
const split = <T, U>(list: readonly (readonly [T, U])[]) => [list.map(([forecast]) => forecast), list.map(([, outcome]) => outcome)] as const

describe('scores', () => {
  test('lie where they can lie, do not depend on the order, and are never NaN', () => {
    fc.assert(fc.property(pairs, list => {
      const [forecasts, outcomes] = split(list)
      const [backForecasts, backOutcomes] = split([...list].reverse())
      for (const score of [brierScore, logScore, (f: number[], o: boolean[]) => expectedCalibrationError(f, o, 10)]) {
        const value = score(forecasts, outcomes)
        expect(value).toBeGreaterThanOrEqual(0)
        expect(value).toBeLessThan(Infinity)
        expect(score(backForecasts, backOutcomes)).toBeCloseTo(value, 10)
      }
      expect(brierScore(forecasts, outcomes)).toBeLessThanOrEqual(1)
      expect(expectedCalibrationError(forecasts, outcomes, 10)).toBeLessThanOrEqual(1)
    }))
  })

  test('the three parts make up the Brier score exactly', () => {
    fc.assert(fc.property(coarse, list => {
      const { score, reliability, resolution, uncertainty } = brierDecomposition(...split(list))
      expect(reliability - resolution + uncertainty).toBeCloseTo(score, 12)
      expect(score).toBeCloseTo(brierScore(...split(list)), 12)
      expect(Math.min(reliability, resolution, uncertainty)).toBeGreaterThanOrEqual(0)
    }))
  })

  test('always saying one half earns 0.25 and ln 2', () => {
    expect(brierScore([0.5, 0.5, 0.5], [1, 0, 1])).toBe(0.25)
    expect(logScore([0.5, 0.5, 0.5], [1, 0, 1])).toBeCloseTo(Math.LN2, 12)
  })

  test('sure and right costs nothing; sure and wrong is dear but finite', () => {
    expect(logScore([1, 0], [1, 0])).toBeCloseTo(0, 12)
    expect(logScore([1], [0])).toBeCloseTo(34.539, 3)
  })

  test('the forecast that minimises both scores is the true rate', () => {
    const outcomes = [...Array<number>(7).fill(1), ...Array<number>(3).fill(0)]
    const saying = (f: number) => outcomes.map(() => f)
    for (const score of [brierScore, logScore]) {
      for (const other of [0.5, 0.6, 0.65, 0.75, 0.8, 0.95]) expect(score(saying(other), outcomes)).toBeGreaterThan(score(saying(0.7), outcomes))
    }
  })
})

describe('bins', () => {
  test('count every forecast once, in a bin that holds it', () => {
    fc.assert(fc.property(pairs, fc.integer({ min: 1, max: 30 }), (list, bins) => {
      const result = reliabilityBins(...split(list), bins)
      expect(result.reduce((sum, { count }) => sum + count, 0)).toBe(list.length)
      for (const { from, to, meanForecast, observed, interval } of result) {
        expect(meanForecast).toBeGreaterThanOrEqual(from - 1e-9)
        expect(meanForecast).toBeLessThanOrEqual(to + 1e-9)
        expect(interval.low).toBeLessThanOrEqual(observed)
        expect(interval.high).toBeGreaterThanOrEqual(observed)
      }
    }))
  })

  test('an edge belongs to the bin above it, 1 to the last', () => {
    expect(reliabilityBins([0.3, 0.57, 1], [1, 1, 1], 100).map(({ from }) => from)).toEqual([0.3, 0.57, 0.99])
  })
})

describe('calibration line', () => {
  const drawn = (n: number, truth: (logit: number) => number, seed: number) => {
    const random = uniformNoise(seed)
    return Array.from({ length: n }, () => {
      const forecast = 0.05 + 0.9 * random()
      const chance = 1 / (1 + Math.exp(-truth(Math.log(forecast / (1 - forecast)))))
      return [forecast, random() < chance] as const
    })
  }

  test('finds the truth that made the outcomes, within its intervals', () => {
    for (const [intercept, slope] of [[0, 1], [-0.5, 0.7], [0.3, 1.4]] as const) {
      const line = calibrationLine(...split(drawn(20_000, logit => intercept + slope * logit, 5)), 0.999)
      expect(line.interceptInterval.low).toBeLessThan(intercept)
      expect(line.interceptInterval.high).toBeGreaterThan(intercept)
      expect(line.slopeInterval.low).toBeLessThan(slope)
      expect(line.slopeInterval.high).toBeGreaterThan(slope)
      expect(line.slopeInterval.high - line.slopeInterval.low).toBeLessThan(0.25)
    }
  })

  test('takes a forecast of 0 as 0.0001 and one of 1 as 0.9999', () => {
    const outcomes = [0, 1, 0, 1, 0, 1]
    expect(calibrationLine([0, 0.3, 0.5, 0.6, 0.7, 1], outcomes)).toEqual(calibrationLine([0.0001, 0.3, 0.5, 0.6, 0.7, 0.9999], outcomes))
    expect(calibrationLine([0, 0.3, 0.5, 0.6, 0.7, 1], outcomes).slope).not.toBeCloseTo(calibrationLine([0.001, 0.3, 0.5, 0.6, 0.7, 0.999], outcomes).slope, 3)
  })

  test('turns round when forecasts and outcomes are turned round', () => {
    const list = drawn(200, logit => 0.4 + logit, 9)
    const line = calibrationLine(...split(list))
    const turned = calibrationLine(list.map(([forecast]) => 1 - forecast), list.map(([, outcome]) => !outcome))
    expect(turned.slope).toBeCloseTo(line.slope, 8)
    expect(turned.intercept).toBeCloseTo(-line.intercept, 8)
  })

  test('answers with finite numbers inside their intervals, or says why it cannot', () => {
    let answered = 0
    fc.assert(fc.property(fc.oneof(pairs, coarse), list => {
      try {
        const line = calibrationLine(...split(list))
        answered += 1
        expect(everyNumber(line).every(Number.isFinite)).toBe(true)
        expect(line.slopeInterval.low).toBeLessThanOrEqual(line.slope)
        expect(line.slopeInterval.high).toBeGreaterThanOrEqual(line.slope)
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
        expect(error.message).toMatch(/^(A calibration line needs|One forecast value splits)/)
      }
    }))
    expect(answered).toBeGreaterThan(50)
  })
})

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { capability, cpInterval, cpkInterval } from '@/lib/statistics/capability'
import { chiSquareQuantile } from '@/lib/statistics/chi-square-quantile'
import { discountedBeta } from '@/lib/statistics/discounted-beta'
import { marginPredictive } from '@/lib/statistics/margin-predictive'
import { howeToleranceFactor, natrellaToleranceFactor } from '@/lib/statistics/tolerance'
import { coefficientOfVariation, pooledCoefficientOfVariation, vangelInterval } from '@/lib/statistics/variation'

fc.configureGlobal({ seed: 48, numRuns: 250 })

const confidences = fc.double({ min: 0.01, max: 0.999, noNaN: true })
const sizes = fc.integer({ min: 2, max: 3000 })

describe('capability', () => {
  test('Cpk is at most Cp, equal in the middle, below 0 outside a limit', () => {
    fc.assert(fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0.01, max: 20, noNaN: true }), (mean, s) => {
      const { cp, cpk, offCentre } = capability({ mean, standardDeviation: s }, { lower: -10, upper: 10 })
      expect(cpk).toBeLessThanOrEqual(cp ?? NaN)
      expect(cpk).toBeCloseTo((1 - (offCentre ?? NaN)) * (cp ?? NaN), 9)
      expect(cpk < 0).toBe(Math.abs(mean) > 10)
    }))
  })

  test('one limit gives Cpk alone', () => {
    expect(capability({ mean: 0.5, standardDeviation: 0.25 }, { lower: null, upper: 2 })).toEqual({ cp: null, cpk: 2, cpl: null, cpu: 2, offCentre: null })
    expect(capability({ mean: 4, standardDeviation: 0.5 }, { lower: 1, upper: null })).toEqual({ cp: null, cpk: 2, cpl: 2, cpu: null, offCentre: null })
  })

  test('intervals hold the index', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), sizes, confidences, (index, n, confidence) => {
      for (const { low, high } of [cpInterval(index, n, confidence), cpkInterval(index, n, confidence)]) {
        expect(low).toBeLessThanOrEqual(index)
        expect(high).toBeGreaterThanOrEqual(index)
      }
      expect(cpInterval(index, n, confidence).low).toBeGreaterThanOrEqual(0)
    }))
  })
})

describe('tolerance factors', () => {
  test('fall toward the normal quantile as values add up', () => {
    const [howe, natrella] = [howeToleranceFactor, natrellaToleranceFactor].map(factor => [10, 20, 50, 200, 1000, 100_000].map(n => factor(n, 0.9, 0.95)))
    expect([...(howe ?? [])].sort((a, b) => b - a)).toEqual(howe)
    expect([...(natrella ?? [])].sort((a, b) => b - a)).toEqual(natrella)
    expect(howe?.at(-1)).toBeCloseTo(1.645, 1)
    expect(natrella?.at(-1)).toBeCloseTo(1.282, 1)
  })

  test('too few values for a one-sided limit say how many are needed, and that many suffice', () => {
    expect(() => natrellaToleranceFactor(2, 0.9, 0.99)).toThrow(/measure at least 4/)
    expect(natrellaToleranceFactor(4, 0.9, 0.99)).toBeGreaterThan(0)
    expect(() => natrellaToleranceFactor(3, 0.9, 0.99)).toThrow(RangeError)
  })
})

test('chi-square quantiles climb smoothly where the method changes', () => {
  const at = [998, 999, 1000, 1001, 1002].map(v => chiSquareQuantile(0.975, v))
  const steps = at.slice(1).map((value, i) => value - (at[i] ?? NaN))
  for (const step of steps) expect(step).toBeCloseTo(1.0438, 3)
})

describe('coefficient of variation', () => {
  test('does not care for the unit or the order', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 1, max: 20, noNaN: true }), { minLength: 2, maxLength: 30 }), widths => {
      const cv = coefficientOfVariation(widths)
      expect(coefficientOfVariation(widths.map(width => width * 25.4))).toBeCloseTo(cv, 9)
      expect(coefficientOfVariation([...widths].reverse())).toBeCloseTo(cv, 9)
      expect(pooledCoefficientOfVariation([widths, widths]).value).toBeCloseTo(cv, 9)
    }))
  })

  test('4 coupons of 5 stations give 16 degrees of freedom', () => {
    const bead = [6, 6.2, 5.9, 6.1, 6.4]
    expect(pooledCoefficientOfVariation([bead, bead, bead, bead]).degreesOfFreedom).toBe(16)
  })

  test('its interval holds it, and is open above where few stations scatter too much', () => {
    let open = 0
    fc.assert(fc.property(fc.double({ min: 0.001, max: 1.5, noNaN: true }), fc.integer({ min: 2, max: 60 }), confidences, (cv, n, confidence) => {
      const { low, high } = vangelInterval(cv, n, confidence)
      expect(low).toBeGreaterThan(0)
      expect(low).toBeLessThanOrEqual(cv)
      if (high === null) open += 1
      else expect(high).toBeGreaterThanOrEqual(cv)
    }))
    expect(open).toBeGreaterThan(0)
    expect(vangelInterval(0.4, 3, 0.95).high).toBeNull()
    expect(vangelInterval(0.28, 3, 0.95).high).toBeGreaterThan(1)
    expect(vangelInterval(3, 40, 0.01).high).toBe(3) // far outside its range the formula gives 2.95
  })
})

describe('forecasts of the next coupon', () => {
  test('the discounted rate lies within its interval, and one more pass never lowers it', () => {
    const settings = { retention: 0.88, priorA: 0.5, priorB: 0.8 }
    fc.assert(fc.property(fc.array(fc.boolean(), { maxLength: 60 }), outcomes => {
      const estimate = discountedBeta(outcomes, settings)
      expect(estimate.low).toBeGreaterThanOrEqual(0)
      expect(estimate.low).toBeLessThanOrEqual(estimate.mean)
      expect(estimate.high).toBeGreaterThanOrEqual(estimate.mean)
      expect(estimate.high).toBeLessThanOrEqual(1)
      expect(discountedBeta([...outcomes, true], settings).mean).toBeGreaterThan(discountedBeta([...outcomes, false], settings).mean)
    }))
  })

  test('without coupons the discounted rate is the prior, with retention 1 the plain count', () => {
    expect(discountedBeta([], { retention: 0.9, priorA: 1, priorB: 3 })).toMatchObject({ a: 0, b: 0, mean: 0.25 })
    expect(discountedBeta([1, 1, 0], { retention: 1, priorA: 0.5, priorB: 0.5 })).toMatchObject({ a: 2, b: 1, mean: 0.625 })
  })

  test('the chance of a good margin rises with every margin, and recent ones weigh more when old ones fade', () => {
    const series = fc.array(fc.integer({ min: -1e9, max: 1e9 }).map(steps => steps / 1000), { minLength: 3, maxLength: 30 }).filter(list => new Set(list).size > 1)
    fc.assert(fc.property(series, margins => {
      const { probability } = marginPredictive(margins)
      expect(probability).toBeGreaterThanOrEqual(0)
      expect(probability).toBeLessThanOrEqual(1)
      expect(marginPredictive(margins.map(margin => margin + 1)).probability).toBeGreaterThanOrEqual(probability - 1e-9)
    }))
    const improving = [-0.6, -0.4, -0.1, 0.1, 0.3, 0.5]
    expect(marginPredictive(improving, 0.7).probability).toBeGreaterThan(marginPredictive(improving).probability)
  })
})

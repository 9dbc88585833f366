import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { betaBinomialPredictive } from '@/lib/statistics/beta-binomial'
import { clopperPearsonInterval, jeffreysInterval, wilsonInterval } from '@/lib/statistics/proportion'
import { demonstratedPassRate, stationsToHitZone, successRunLength } from '@/lib/statistics/success-run'

fc.configureGlobal({ seed: 41, numRuns: 300 })

const counts = fc.integer({ min: 1, max: 6000 }).chain(n => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)))
const confidences = fc.double({ min: 0.001, max: 0.9999, noNaN: true })

describe.each([
  ['Wilson', wilsonInterval],
  ['Clopper-Pearson', clopperPearsonInterval],
  ['Jeffreys', jeffreysInterval],
])('%s interval', (_, interval) => {
  test('holds the observed share and stays within 0 to 1', () => {
    fc.assert(fc.property(counts, confidences, ([x, n], confidence) => {
      const { low, high } = interval(x, n, confidence)
      expect(low).toBeGreaterThanOrEqual(0)
      expect(low).toBeLessThanOrEqual(x / n)
      expect(high).toBeGreaterThanOrEqual(x / n)
      expect(high).toBeLessThanOrEqual(1)
    }))
  })

  test('mirrors when passes and fails change places', () => {
    fc.assert(fc.property(counts, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([x, n], confidence) => {
      const one = interval(x, n, confidence)
      const other = interval(n - x, n, confidence)
      expect(one.low).toBeCloseTo(1 - other.high, 9)
      expect(one.high).toBeCloseTo(1 - other.low, 9)
    }))
  })

  test('widens with the confidence and narrows with the evidence', () => {
    fc.assert(fc.property(counts, ([x, n]) => {
      const width = ({ low, high }: { low: number; high: number }) => high - low
      expect(width(interval(x, n, 0.8))).toBeLessThan(width(interval(x, n, 0.95)))
      expect(width(interval(4 * x, 4 * n, 0.9))).toBeLessThan(width(interval(x, n, 0.9)))
    }))
  })

  test('touches 0 without successes and 1 without failures', () => {
    expect(interval(0, 12, 0.95).low).toBe(0)
    expect(interval(12, 12, 0.95).high).toBe(1)
  })
})

test('Clopper-Pearson is the widest of the three', () => {
  fc.assert(fc.property(counts, ([x, n]) => {
    const exact = clopperPearsonInterval(x, n, 0.95)
    const jeffreys = jeffreysInterval(x, n, 0.95)
    expect(exact.low).toBeLessThanOrEqual(jeffreys.low + 1e-12)
    expect(exact.high).toBeGreaterThanOrEqual(jeffreys.high - 1e-12)
  }))
})

describe('beta-binomial forecast', () => {
  const beyondZero = fc.double({ min: 0.01, max: 5000, noNaN: true })

  test('sums to 1 and has the mean m·a/(a + b)', () => {
    fc.assert(fc.property(beyondZero, beyondZero, fc.integer({ min: 0, max: 60 }), (a, b, m) => {
      const forecast = betaBinomialPredictive({ a, b }, m)
      expect(forecast).toHaveLength(m + 1)
      expect(Math.abs(forecast.reduce((sum, p) => sum + p, 0) - 1)).toBeLessThan(1e-8)
      expect(Math.abs(forecast.reduce((sum, p, k) => sum + k * p, 0) - m * a / (a + b))).toBeLessThan(1e-6)
    }))
  })

  test('of one coupon is the rate itself, of none a certainty', () => {
    expect(betaBinomialPredictive({ a: 3, b: 1 }, 1)[1]).toBeCloseTo(0.75, 12)
    expect(betaBinomialPredictive({ a: 3, b: 1 }, 0)[0]).toBeCloseTo(1, 12)
  })
})

describe('success run', () => {
  test('is the smallest number of coupons that demonstrates the rate', () => {
    const share = fc.double({ min: 0.5, max: 0.995, noNaN: true })
    fc.assert(fc.property(share, share, fc.integer({ min: 0, max: 5 }), (confidence, rate, failures) => {
      const n = successRunLength(confidence, rate, failures)
      expect(demonstratedPassRate(n, failures, confidence)).toBeGreaterThanOrEqual(rate - 1e-9)
      if (n - 1 > failures) expect(demonstratedPassRate(n - 1, failures, confidence)).toBeLessThan(rate + 1e-9)
    }))
  })

  test('does not round a whole number up', () => {
    // 1 − R² exactly, so two coupons are enough
    for (const [confidence, rate] of [[0.9999, 0.01], [0.9975, 0.05], [0.99, 0.1], [0.75, 0.5]] as const) expect(successRunLength(confidence, rate)).toBe(2)
  })

  test('nothing but failures demonstrates nothing', () => {
    expect(demonstratedPassRate(4, 4, 0.95)).toBe(0)
    expect(demonstratedPassRate(1, 0, 0.95)).toBeCloseTo(0.05, 12)
  })

  test('a longer bad zone needs fewer stations', () => {
    expect([0.05, 0.1, 0.2, 0.5].map(fraction => stationsToHitZone(fraction, 0.9))).toEqual([45, 22, 11, 4])
  })
})

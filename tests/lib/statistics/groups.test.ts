import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { funnelLimit, funnelLimits } from '@/lib/statistics/funnel'
import { betaBinomialShrinkage, fitGroupPrior } from '@/lib/statistics/shrinkage'

vi.setConfig({ testTimeout: 30_000 }) // a busy machine is slow, not wrong
fc.configureGlobal({ seed: 46, numRuns: 80 })

const share = fc.double({ min: 0, max: 1, noNaN: true })

describe('funnel limits', () => {
  test('hold the overall rate and stay within 0 to 1', () => {
    fc.assert(fc.property(share, fc.integer({ min: 1, max: 3000 }), fc.constantFrom(0.8, 0.95, 0.998), (overall, n, coverage) => {
      const { low, high } = funnelLimits(overall, n, coverage)
      expect(low).toBeGreaterThanOrEqual(0)
      expect(low).toBeLessThanOrEqual(overall)
      expect(high).toBeGreaterThanOrEqual(overall)
      expect(high).toBeLessThanOrEqual(1)
    }))
  })

  test('close in as a class grows, and widen with the coverage', () => {
    const widths = [10, 25, 50, 100, 1000].map(n => funnelLimits(0.74, n, 0.95)).map(({ low, high }) => high - low)
    expect([...widths].sort((a, b) => b - a)).toEqual(widths)
    expect(funnelLimits(0.74, 25, 0.998).low).toBeLessThan(funnelLimits(0.74, 25, 0.95).low)
  })

  test('climb with the probability', () => {
    fc.assert(fc.property(share, fc.integer({ min: 1, max: 200 }), fc.double({ min: 0.001, max: 0.998, noNaN: true }), (overall, n, p) => {
      expect(funnelLimit(overall, n, p)).toBeLessThanOrEqual(funnelLimit(overall, n, p + 0.001) + 1e-9)
    }))
  })

  test('an overall rate of 0 or 1 still has limits', () => {
    expect(funnelLimits(0, 12, 0.95).low).toBe(0)
    expect(funnelLimits(1, 12, 0.95).high).toBe(1)
    expect(funnelLimits(1, 12, 0.95).low).toBeGreaterThan(11 / 12)
  })
})

describe('shrinkage', () => {
  const group = fc.integer({ min: 0, max: 40 }).chain(n => fc.integer({ min: 0, max: n }).map(passed => ({ passed, n })))
  const groups = fc.array(group, { minLength: 1, maxLength: 14 }).filter(list => list.some(({ n }) => n > 0))

  test('every rate lies within its limits, within 0 to 1, and between its own share and the rate it is pulled to', () => {
    fc.assert(fc.property(groups, list => {
      const { a, b } = fitGroupPrior(list)
      const pulledTo = a / (a + b)
      betaBinomialShrinkage(list).forEach(({ mean, low, high }, i) => {
        const { passed = 0, n = 0 } = list[i] ?? {}
        const own = n === 0 ? pulledTo : passed / n
        expect(low).toBeGreaterThanOrEqual(0)
        expect(low).toBeLessThanOrEqual(mean)
        expect(high).toBeGreaterThanOrEqual(mean)
        expect(high).toBeLessThanOrEqual(1)
        expect(mean).toBeGreaterThanOrEqual(Math.min(own, pulledTo) - 1e-12)
        expect(mean).toBeLessThanOrEqual(Math.max(own, pulledTo) + 1e-12)
      })
    }))
  })

  test('the order of groups does not matter', () => {
    fc.assert(fc.property(groups, list => {
      const forward = betaBinomialShrinkage(list)
      betaBinomialShrinkage([...list].reverse()).reverse().forEach(({ mean, low, high }, i) => {
        expect(mean).toBeCloseTo(forward[i]?.mean ?? NaN, 5)
        expect(low).toBeCloseTo(forward[i]?.low ?? NaN, 5)
        expect(high).toBeCloseTo(forward[i]?.high ?? NaN, 5)
      })
    }))
  })

  test('the strength stays between the Jeffreys prior and the number of results', () => {
    fc.assert(fc.property(groups, list => {
      const { a, b, fitted } = fitGroupPrior(list)
      const results = list.reduce((sum, { n }) => sum + n, 0)
      expect(a + b).toBeGreaterThanOrEqual(fitted ? 1 - 1e-6 : 10 - 1e-9)
      expect(a + b).toBeLessThanOrEqual(fitted ? results * (1 + 1e-6) : 10 + 1e-9)
    }))
  })

  test('groups that do not differ are pulled together, groups that do are left alone', () => {
    const alike = betaBinomialShrinkage(Array.from({ length: 8 }, (_, i) => ({ passed: 14 + (i % 2), n: 20 })))
    expect(Math.max(...alike.map(({ mean }) => mean)) - Math.min(...alike.map(({ mean }) => mean))).toBeLessThan(0.01)
    const apart = betaBinomialShrinkage(Array.from({ length: 8 }, (_, i) => ({ passed: i % 2 === 0 ? 19 : 1, n: 20 })))
    expect(apart[0]?.mean).toBeGreaterThan(0.9)
    expect(apart[1]?.mean).toBeLessThan(0.1)
  })

  test('all passes and all fails keep a little doubt', () => {
    for (const passed of [0, 10]) {
      const [first] = betaBinomialShrinkage(Array.from({ length: 7 }, () => ({ passed, n: 10 })))
      expect(first?.mean).toBeGreaterThan(0)
      expect(first?.mean).toBeLessThan(1)
      expect((first?.high ?? 0) - (first?.low ?? 0)).toBeGreaterThan(0.01)
    }
  })

  test('5,000 results in a group are fitted in a few seconds at most', () => {
    const started = performance.now()
    const list = Array.from({ length: 30 }, (_, i) => ({ passed: 3000 + 40 * i, n: 5000 }))
    expect(fitGroupPrior(list).fitted).toBe(true)
    expect(performance.now() - started).toBeLessThan(10_000)
  })
})

import { describe, expect, it } from 'vitest'
import { meanInterval, twoSidedT } from '@/lib/statistics/mean-interval'

describe('Student’s t', () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t, upper tail 0.025 and 0.05 (three decimals).
  it.each([[1, 0.95, 12.706], [2, 0.95, 4.303], [4, 0.95, 2.776], [9, 0.95, 2.262], [20, 0.95, 2.086], [30, 0.9, 1.697]])(
    '%i degrees of freedom at %d', (df, confidence, t) => expect(twoSidedT(df, confidence)).toBeCloseTo(t, 3))
  it('refuses what is no count or no confidence', () => {
    expect(() => twoSidedT(0, 0.95)).toThrow(RangeError)
    expect(() => twoSidedT(3, 1)).toThrow(RangeError)
  })
})

describe('a mean with its interval', () => {
  // By hand: mean 3, s = √2.5, half-width 2.776 · √2.5/√5 = 1.963.
  it('of one to five', () => {
    const { mean, low, high } = meanInterval([1, 2, 3, 4, 5], 0.95)
    expect([mean, low, high].map((value) => value.toFixed(3))).toEqual(['3.000', '1.037', '4.963'])
  })
  it('has no width when all values are the same', () => expect(meanInterval([0.5, 0.5, 0.5], 0.95)).toEqual({ mean: 0.5, low: 0.5, high: 0.5 }))
  it('refuses a single value and one that was not measured', () => {
    expect(() => meanInterval([1], 0.95)).toThrow(RangeError)
    expect(() => meanInterval([1, Number.NaN], 0.95)).toThrow(RangeError)
  })
})

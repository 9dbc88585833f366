import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readinessFilter, type PracticeCoupon } from '@/lib/readiness/filter'
import { absorbCoupon, readinessOf, startState, stateAfter, type FilterState } from '@/lib/readiness/incremental'

const series: PracticeCoupon[] = Array.from({ length: 40 }, (_, i) => ({
  day: Math.floor(i / 2) * 3,
  accepted: i % 3 > 0,
  ...(i % 4 === 0 ? {} : { worstMargin: -0.8 + 0.04 * i + 0.3 * Math.sin(i), attributesGood: i % 7 > 0 }),
}))

/** As a database column would: written after each coupon and read before the next. */
const stored = (state: FilterState) => JSON.parse(JSON.stringify(state)) as FilterState

describe('a stored state', () => {
  it('after each coupon says what the whole series says, to 1e-12', () => {
    let state = stored(startState())
    series.forEach((coupon, i) => {
      state = stored(absorbCoupon(state, coupon))
      const whole = readinessFilter(series.slice(0, i + 1), coupon.day + 2, { level: 0.95 })
      const kept = readinessOf(state, coupon.day + 2, { level: 0.95 })
      for (const key of ['probability', 'low', 'high'] as const) expect(Math.abs(kept[key] - whole[key])).toBeLessThanOrEqual(1e-12)
    })
    expect(state.coupons).toBe(40)
    expect(state.day).toBe(57)
  })

  it('of any split of the series says the same', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 40 }), (cut) => {
      const state = series.slice(cut).reduce((s, coupon) => absorbCoupon(s, coupon), stored(stateAfter(series.slice(0, cut))))
      expect(Math.abs(readinessOf(state, 60).probability - readinessFilter(series, 60).probability)).toBeLessThanOrEqual(1e-12)
    }))
  })

  it('refuses an earlier coupon', () => {
    expect(() => absorbCoupon(stateAfter(series), { day: 56, accepted: true })).toThrow(RangeError)
  })

  it('refuses a damaged store', () => {
    expect(() => readinessOf({ day: 0, coupons: 1, mass: [1] }, 1)).toThrow(RangeError)
    expect(() => readinessOf({ day: 0, coupons: 1, mass: Array.from({ length: 121 }, () => NaN) }, 1)).toThrow(RangeError)
    expect(() => readinessOf({ day: 0, coupons: 1, mass: Array.from({ length: 121 }, () => 0) }, 1)).toThrow(RangeError)
  })
})

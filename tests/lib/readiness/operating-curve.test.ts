import { describe, expect, it } from 'vitest'
import { cheapestThreshold, costInCoupons, operatingCurve } from '@/lib/readiness/operating-curve'
import { OPERATING_SOURCE } from '@/lib/readiness/operating-curve-data'
import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { operatingPoints } from '../../simulator/booking'
import { BASE } from '../../simulator/scenarios'

describe('the stored curve', () => {
  it('was made with this model', () => expect(OPERATING_SOURCE.modelVersion).toBe(MODEL_VERSION))

  it('trades coupons against failed tests: a higher threshold costs more coupons and fails fewer tests', () => {
    const curve = operatingCurve()
    expect(curve.length).toBeGreaterThan(5)
    curve.slice(1).forEach((point, i) => {
      expect(point.threshold).toBeGreaterThan(curve[i]!.threshold)
      expect(point.coupons).toBeGreaterThan(curve[i]!.coupons)
      expect(point.failed).toBeLessThan(curve[i]!.failed)
    })
  })

  it('is what a small cohort of another seed shows, as far as a small cohort can', () => {
    const [point] = operatingPoints(BASE, 40, 77, [0.65])
    const stored = operatingCurve().find(({ threshold }) => threshold === 0.65)!
    expect(Math.abs(point!.firstTimePass! - stored.firstTimePass!)).toBeLessThan(0.2)
    expect(Math.abs(point!.coupons - stored.coupons)).toBeLessThan(7)
  }, 120_000)
})

describe('what a threshold costs', () => {
  const point = { threshold: 0.6, firstTimePass: 0.75, coupons: 28, tests: 1.4, failed: 0.5, passedBySixty: 0.9, tooEarly: 0.2, tooLate: 0.01 }
  it('adds coupons, tests, failures and not having passed', () => {
    expect(costInCoupons(point, 15)).toBeCloseTo(28 + 3 * 1.4 + 15 * 0.5 + 30 * 0.1, 10)
  })
  it('rises with the cost of a failed test, and so does the cheapest threshold', () => {
    const cheapest = [0, 5, 15, 40, 100].map(cheapestThreshold)
    expect(cheapest).toEqual([...cheapest].sort((a, b) => a - b))
    expect(cheapest.at(-1)).toBeGreaterThan(cheapest[0]!)
  })
  it('refuses a cost that is no number', () => {
    expect(() => costInCoupons(point, NaN)).toThrow(RangeError)
    expect(() => cheapestThreshold(-1)).toThrow(RangeError)
  })
})

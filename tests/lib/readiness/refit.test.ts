import { describe, expect, it } from 'vitest'
import { nelderMead } from '@/lib/readiness/nelder-mead'
import { SHIPPED_PARAMETERS, checkParameters } from '@/lib/readiness/parameters'
import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'
import { practiceLoss, refit } from '@/lib/readiness/refit'
import { readinessFilter } from '@/lib/readiness/filter'
import { makeCohort } from '../../simulator/cohort'
import { BASE } from '../../simulator/scenarios'

describe('the downhill simplex', () => {
  // Rosenbrock 1960, The Computer Journal 3:175: the valley's lowest point is (1, 1), where the value is 0.
  it('finds the bottom of Rosenbrock’s valley', () => {
    const found = nelderMead(([x = 0, y = 0]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2, [-1.2, 1], [0.5, 0.5], 500, 1e-14)
    expect(found.at[0]).toBeCloseTo(1, 4)
    expect(found.at[1]).toBeCloseTo(1, 4)
  })
  it('stops when its evaluations are spent', () => {
    const found = nelderMead(([x = 0, y = 0]) => x * x + y * y, [3, 4], [1, 1], 20, 0)
    expect(found.evaluations).toBeLessThanOrEqual(20 + 4)
  })
  it('steps round places where the function has no value', () => {
    const found = nelderMead(([x = 0]) => (x < 0 ? NaN : (x - 0.1) ** 2), [2], [1], 200)
    expect(found.at[0]).toBeCloseTo(0.1, 3)
  })
})

describe('the loss of practice', () => {
  it('is the log loss of each verdict forecast from the coupons before it', () => {
    const coupons: PracticeCoupon[] = [{ day: 0, accepted: false, worstMargin: -1 }, { day: 0, accepted: true }, { day: 4, accepted: true }]
    const byHand = -Math.log(1 - readinessFilter([], 0).probability)
      - Math.log(readinessFilter(coupons.slice(0, 1), 0).probability)
      - Math.log(readinessFilter(coupons.slice(0, 2), 4).probability)
    const { total, verdicts } = practiceLoss([coupons], SHIPPED_PARAMETERS)
    expect(total).toBeCloseTo(byHand, 10)
    expect(verdicts).toBe(3)
  })
})

describe('the refit', () => {
  const series = (n: number) => makeCohort({ ...BASE, tighter: 0.35 }, n, 31, 31, 15).map(({ coupons }) => coupons)

  it('asks for 30 series', () => {
    expect(refit([...series(29), []])).toEqual({ kind: 'insufficient', have: 29, need: 30 })
  })

  it('lowers the loss, stays near the shipped parameters with few series, and answers the same twice', () => {
    const found = refit(series(30), { evaluations: 60 })
    if (found.kind !== 'refit') throw new Error('expected a refit')
    expect(found).toMatchObject({ held: true, series: 30, verdicts: 450 })
    expect(found.lossAfter).toBeLessThan(found.lossBefore)
    expect(Math.abs(found.parameters.m0 - SHIPPED_PARAMETERS.m0)).toBeLessThan(0.8)
    expect(found.parameters.eta).toBe(SHIPPED_PARAMETERS.eta)
    expect(() => checkParameters(found.parameters)).not.toThrow()
    expect(refit(series(30), { evaluations: 60 })).toEqual(found)
  }, 60_000)

  it('refuses a series out of order', () => {
    expect(() => refit(Array.from({ length: 30 }, () => [{ day: 2, accepted: true }, { day: 1, accepted: true }]))).toThrow(RangeError)
  })
})

import { describe, expect, it } from 'vitest'
import { makeCohort, trueChance } from '../../simulator/cohort'
import { diceOf } from '../../simulator/dice'
import { BASE, SCENARIOS } from '../../simulator/scenarios'
import { afterGap } from '../../simulator/student'

describe('the simulator’s dice', () => {
  it('fall the same for the same seed, and differently for another', () => {
    const throws = (seed: number) => Array.from({ length: 5 }, diceOf(seed).unit)
    expect(throws(7)).toEqual(throws(7))
    expect(throws(7)).not.toEqual(throws(8))
  })
  it('have the mean and spread they say', () => {
    const dice = diceOf(1)
    const values = Array.from({ length: 20_000 }, () => dice.normal(2, 3))
    const mean = values.reduce((a, b) => a + b, 0) / values.length
    expect(Math.abs(mean - 2)).toBeLessThan(0.08)
    expect(Math.sqrt(values.reduce((s, v) => s + (v - mean) ** 2, 0) / values.length)).toBeCloseTo(3, 1)
  })
})

describe('made-up students', () => {
  const cohort = makeCohort(BASE, 60, 5, 5, 40)
  const meanChance = (n: number) => cohort.reduce((sum, { student, moments }, i) => sum + trueChance(student, moments[n - 1]!, BASE, i), 0) / cohort.length

  it('come out the same for the same seed', () => expect(makeCohort(BASE, 3, 5, 5, 10)).toEqual(makeCohort(BASE, 3, 5, 5, 10)))
  it('start poor and learn', () => {
    expect(meanChance(1)).toBeLessThan(0.2)
    expect(meanChance(40)).toBeGreaterThan(0.5)
  })
  it('weld in order of day', () => {
    for (const { coupons, moments } of cohort) {
      coupons.forEach((coupon, i) => expect(coupon.day).toBeGreaterThanOrEqual(coupons[i - 1]?.day ?? 0))
      moments.forEach((moment, i) => expect(moment.day).toBe(coupons[i + 1]?.day ?? moment.day))
    }
  })
  it('lose practice in a long gap and none over a day', () => {
    expect(afterGap(20, 1, BASE.forgetting)).toBe(20)
    expect(afterGap(20, 40, BASE.forgetting)).toBeLessThan(18)
  })
  it.each(SCENARIOS.map((scenario) => [scenario.name, scenario] as const))('keep margins only where the scenario does: %s', (_, scenario) => {
    const coupons = makeCohort(scenario, 10, 3, 3, 20).flatMap((series) => series.coupons)
    const measured = coupons.filter(({ worstMargin }) => worstMargin !== undefined).length / coupons.length
    if (scenario.grading.marginsKnown) expect(measured).toBeGreaterThan(0.8)
    else expect(measured).toBe(0)
  })
})

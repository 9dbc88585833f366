import { describe, expect, it } from 'vitest'
import { assessReadiness } from '@/lib/readiness/assess'
import { carrier } from '@/lib/readiness/carry-forward'
import { stateAfter } from '@/lib/readiness/incremental'
import { SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'

const coupons: PracticeCoupon[] = Array.from({ length: 10 }, (_, i) => ({ day: i * 2, accepted: i > 2, worstMargin: -0.4 + i * 0.15, attributesGood: true }))
const rule = { threshold: 0.65, minimumCoupons: 5, staleAfterDays: 45, testResults: [] }
const carry = (today: number) => carrier({ threshold: 0.65, staleAfterDays: 45, results: [] }, today)

describe('carrying a stored standing to today', () => {
  it.each([18, 25, 60])('gives what assessing all coupons on day %d gives', (today) => {
    const full = assessReadiness(coupons, today, { ...rule, previousAdvice: 'test' })
    const carried = carry(today)({ state: stateAfter(coupons), advice: 'test' })
    if (full.kind !== 'estimate') throw new Error('ten coupons are enough')
    expect(carried.probability).toBeCloseTo(full.probability, 12)
    expect(carried.low).toBeCloseTo(full.low, 12)
    expect(carried.high).toBeCloseTo(full.high, 12)
    expect(carried.level).toBe(full.level)
    expect(carried.advice).toBe(full.advice)
  })

  it('uses the parameters the state was made with', () => {
    const parameters = { ...SHIPPED_PARAMETERS, q1: 0.4, c: 1 }
    const full = assessReadiness(coupons, 40, { ...rule, model: { version: 'own', parameters } })
    const carried = carrier({ threshold: 0.65, staleAfterDays: 45, results: [], parameters }, 40)({ state: stateAfter(coupons, parameters), advice: 'test' })
    if (full.kind !== 'estimate') throw new Error('ten coupons are enough')
    expect(carried.probability).toBeCloseTo(full.probability, 12)
    expect(Math.abs(carried.probability - carry(40)({ state: stateAfter(coupons), advice: 'test' }).probability)).toBeGreaterThan(0.01)
  })

  it('is stale only past the program’s gap', () => {
    const stored = { state: stateAfter(coupons), advice: 'test' as const }
    expect(carry(18 + 45)(stored).advice).not.toBe('stale')
    expect(carry(18 + 46)(stored).advice).toBe('stale')
  })

  it('never looks back before the last coupon', () => {
    const stored = { state: stateAfter(coupons), advice: 'test' as const }
    expect(carry(3)(stored).probability).toBe(carry(18)(stored).probability)
  })
})

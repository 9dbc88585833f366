import { describe, expect, it } from 'vitest'
import { acceptedNeeded } from '@/lib/readiness/accepted-needed'
import { assessReadiness, type ReadinessRule } from '@/lib/readiness/assess'
import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'

const rule: ReadinessRule = { threshold: 0.65, minimumCoupons: 5, staleAfterDays: 45, testResults: [] }
const good = (day: number, worstMargin = 0.6): PracticeCoupon => ({ day, accepted: true, worstMargin, attributesGood: true })
const bad = (day: number): PracticeCoupon => ({ day, accepted: false, worstMargin: -0.8, attributesGood: true })
const days = (count: number, make: (day: number) => PracticeCoupon): PracticeCoupon[] => Array.from({ length: count }, (_, day) => make(day))

describe('further accepted coupons until a test is suggested', () => {
  it('is now where the rule suggests one already', () => {
    const coupons = days(14, (day) => good(day, 1.5))
    expect(assessReadiness(coupons, 14, rule)).toMatchObject({ advice: 'test' })
    expect(acceptedNeeded(coupons, 14, rule)).toEqual({ kind: 'now' })
  })

  it('is the fewest: the rule asked again with one coupon less does not suggest a test yet', () => {
    const coupons = [...days(5, bad), good(5, 1)]
    const needed = acceptedNeeded(coupons, 6, rule)
    if (needed.kind !== 'after') throw new Error(`Some coupons are needed here, not ${needed.kind}.`)
    const after = (count: number) => assessReadiness([...coupons, ...Array.from({ length: count }, () => good(6, 1))], 6, rule)
    expect(after(needed.count)).toMatchObject({ advice: 'test', probability: needed.probability })
    expect(after(needed.count - 1)).not.toMatchObject({ advice: 'test' })
  })

  it('counts the four coupons after a failed test', () => {
    const coupons = days(14, (day) => good(day, 1.5))
    expect(acceptedNeeded(coupons, 14, { ...rule, testResults: [{ passed: false, day: 13 }] })).toMatchObject({ kind: 'after', count: 4 })
  })

  it('looks for a coupon without the crack that is open', () => {
    const coupons = days(14, (day) => good(day, 1.5))
    expect(acceptedNeeded(coupons, 14, { ...rule, blockingOpen: true })).toMatchObject({ kind: 'after', count: 1 })
  })

  it('says so when the coupons it looks ahead are not enough', () => {
    const needed = acceptedNeeded(days(12, bad), 12, rule, 1)
    if (needed.kind !== 'not-within') throw new Error(`One coupon cannot be enough here, but it says ${needed.kind}.`)
    expect(needed.most).toBe(1)
    expect(needed.probability).toBeLessThan(0.65)
    expect(acceptedNeeded([good(0)], 1, rule, 2)).toEqual({ kind: 'not-within', most: 2, probability: null })
  })

  it('takes no coming coupon to be better than those shown', () => {
    const thin = acceptedNeeded(days(8, (day) => (day % 2 ? good(day, 0.05) : bad(day))), 8, rule)
    const wide = acceptedNeeded(days(8, (day) => (day % 2 ? good(day, 2) : bad(day))), 8, rule)
    const count = (needed: typeof thin): number => (needed.kind === 'after' ? needed.count : needed.kind === 'now' ? 0 : Infinity)
    expect(count(thin)).toBeGreaterThan(count(wide))
  })
})

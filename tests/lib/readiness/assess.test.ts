import { describe, expect, it } from 'vitest'
import { assessReadiness, type Assessment, type ReadinessEstimate, type ReadinessRule, type TestResult } from '@/lib/readiness/assess'
import { readinessFilter, type PracticeCoupon } from '@/lib/readiness/filter'
import { stateAfter } from '@/lib/readiness/incremental'

const rule: ReadinessRule = { threshold: 0.65, minimumCoupons: 5, staleAfterDays: 45, testResults: [] }
const good = (n: number): PracticeCoupon[] => Array.from({ length: n }, (_, day) => ({ day, accepted: true, worstMargin: 1, attributesGood: true }))
const poor = (n: number): PracticeCoupon[] => Array.from({ length: n }, (_, day) => ({ day, accepted: false, worstMargin: -1, attributesGood: true }))

function estimate(assessment: Assessment): ReadinessEstimate {
  if (assessment.kind !== 'estimate') throw new Error('expected an estimate')
  return assessment
}

describe('not enough yet', () => {
  it('is its own answer, with how many there are and how many it takes', () => {
    expect(assessReadiness(good(4), 4, rule)).toEqual({ kind: 'insufficient', have: 4, need: 5 })
    expect(assessReadiness([], 0, rule)).toEqual({ kind: 'insufficient', have: 0, need: 5 })
    expect(assessReadiness(good(5), 5, rule).kind).toBe('estimate')
  })

  it('does not count coupons nobody vouches for', () => {
    const unvouched = good(6).map((coupon) => ({ ...coupon, weight: 0 }))
    expect(assessReadiness(unvouched, 6, rule)).toEqual({ kind: 'insufficient', have: 0, need: 5 })
  })
})

describe('the estimate', () => {
  it('is the filter’s, at the 95 % level while the program has fewer than 100 tests', () => {
    const found = estimate(assessReadiness(good(8), 9, rule))
    expect(found).toMatchObject(readinessFilter(good(8), 9, { level: 0.95 }))
    expect(found.level).toBe(0.95)
    expect(found.reasons).toContain('few-test-results')
    expect(found.couponsUsed).toBe(8)
  })

  it('goes on from a state that is at hand, which is all that the filter reads', () => {
    const state = stateAfter(good(8))
    expect(assessReadiness(good(8), 9, rule, state)).toEqual(assessReadiness(good(8), 9, rule))
    const withoutMargins = good(8).map(({ day, accepted }) => ({ day, accepted }))
    expect(estimate(assessReadiness(withoutMargins, 9, rule, state)).probability).toBe(estimate(assessReadiness(good(8), 9, rule)).probability)
    expect(estimate(assessReadiness(withoutMargins, 9, rule)).probability).not.toBe(estimate(assessReadiness(good(8), 9, rule)).probability)
  })

  it('is at the 80 % level from 100 tests with a forecast', () => {
    const results = (n: number): TestResult[] => Array.from({ length: n }, (_, i) => ({ forecast: 0.7, passed: i % 10 < 7 }))
    expect(estimate(assessReadiness(good(8), 9, { ...rule, testResults: results(99) })).level).toBe(0.95)
    const found = estimate(assessReadiness(good(8), 9, { ...rule, testResults: results(100) }))
    expect(found.level).toBe(0.8)
    expect(found.reasons).not.toContain('few-test-results')
  })

  it('moves down when the program’s tests went worse than forecast, and keeps the uncalibrated chance beside it', () => {
    const harsh: TestResult[] = Array.from({ length: 120 }, (_, i) => ({ forecast: 0.8, passed: i % 2 === 0 }))
    const plain = estimate(assessReadiness(good(8), 9, rule))
    const corrected = estimate(assessReadiness(good(8), 9, { ...rule, testResults: harsh }))
    expect(corrected.probability).toBeLessThan(plain.probability)
    expect(corrected.uncalibrated).toBeCloseTo(plain.probability, 12)
  })

  it('says when it rests on verdicts alone', () => {
    const verdicts = good(8).map(({ day, accepted }) => ({ day, accepted }))
    expect(estimate(assessReadiness(verdicts, 8, rule)).reasons).toContain('verdicts-only')
    expect(estimate(assessReadiness(good(8), 8, rule)).reasons).not.toContain('verdicts-only')
  })
})

describe('the advice', () => {
  const adviceFor = (coupons: PracticeCoupon[], asOf: number, over: Partial<ReadinessRule> = {}) => {
    const { advice, reasons } = estimate(assessReadiness(coupons, asOf, { ...rule, ...over }))
    return [advice, ...reasons.filter((code) => code !== 'few-test-results')]
  }
  const chance = estimate(assessReadiness(good(12), 12, rule)).probability

  it('test, with the chance at the threshold', () => expect(adviceFor(good(12), 12)).toEqual(['test', 'chance-at-threshold']))
  it('practise, far below it', () => {
    expect(adviceFor(poor(12), 12)).toEqual(['practise', 'chance-below', 'no-pass-in-last-three'])
  })
  it('close, at most 0.10 below the threshold', () => {
    expect(adviceFor(good(12), 12, { threshold: chance + 0.09 })).toEqual(['close', 'chance-close'])
    expect(adviceFor(good(12), 12, { threshold: chance + 0.101 })).toEqual(['practise', 'chance-below'])
  })
  it('a suggestion once made stands until 0.10 below the threshold', () => {
    expect(adviceFor(good(12), 12, { threshold: chance + 0.09, previousAdvice: 'test' })).toEqual(['test', 'chance-kept'])
    expect(adviceFor(good(12), 12, { threshold: chance + 0.101, previousAdvice: 'test' })).toEqual(['practise', 'chance-below'])
  })
  it('not test without a pass among the last three', () => {
    const three = good(20).map((coupon) => (coupon.day > 16 ? { ...coupon, accepted: false } : coupon))
    expect(adviceFor(three, 20)).toEqual(['close', 'chance-at-threshold', 'no-pass-in-last-three'])
    const two = good(20).map((coupon) => (coupon.day > 17 ? { ...coupon, accepted: false } : coupon))
    expect(adviceFor(two, 20)).toEqual(['test', 'chance-at-threshold'])
  })
  it('not test while something blocking is open', () => {
    expect(adviceFor(good(12), 12, { blockingOpen: true })).toEqual(['close', 'chance-at-threshold', 'blocking-open'])
  })
  it('stale once the last coupon is more than the set days ago', () => {
    expect(adviceFor(good(12), 56)[0]).not.toBe('stale')
    expect(adviceFor(good(12), 57)[0]).toBe('stale')
    expect(adviceFor(good(12), 57)).toContain('gap-since-last-coupon')
  })
  it('four further coupons after a failed test of this student', () => {
    const failedOn = (day: number) => ({ testResults: [{ day, passed: false }] })
    expect(adviceFor(good(12), 12, failedOn(8))).toContain('failed-test-needs-coupons')
    expect(adviceFor(good(12), 12, failedOn(7))[0]).toBe('test')
    expect(adviceFor(good(12), 12, { testResults: [{ day: 9, passed: false }, { day: 10, passed: true }] })[0]).toBe('test')
  })
  it('another student’s failed test holds nobody back', () => {
    expect(adviceFor(good(12), 12, { testResults: [{ passed: false }] })[0]).toBe('test')
  })
})

describe('bad input', () => {
  it.each<[string, () => unknown]>([
    ['a coupon dated after today', () => assessReadiness(good(6), 4, rule)],
    ['coupons out of order', () => assessReadiness([...good(6)].reverse(), 9, rule)],
    ['today that is no number', () => assessReadiness(good(6), NaN, rule)],
    ['a threshold of 0', () => assessReadiness(good(6), 9, { ...rule, threshold: 0 })],
    ['a threshold that is no number', () => assessReadiness(good(6), 9, { ...rule, threshold: NaN })],
    ['half a coupon as minimum', () => assessReadiness(good(6), 9, { ...rule, minimumCoupons: 0.5 })],
    ['no days until stale', () => assessReadiness(good(6), 9, { ...rule, staleAfterDays: 0 })],
    ['a forecast above 1', () => assessReadiness(good(6), 9, { ...rule, testResults: [{ forecast: 1.2, passed: true }] })],
    ['a test dated after today', () => assessReadiness(good(6), 9, { ...rule, testResults: [{ day: 10, passed: true }] })],
    ['a planned test before today', () => assessReadiness(good(6), 9, { ...rule, testDay: 8 })],
  ])('%s throws', (_, call) => expect(call).toThrow(RangeError))

  it('no coupons at all with a minimum of none gives the prior', () => {
    expect(assessReadiness([], 3, { ...rule, minimumCoupons: 0 })).toMatchObject({ kind: 'estimate', advice: 'practise' })
  })
})

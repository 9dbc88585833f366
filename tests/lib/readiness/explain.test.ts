import { describe, expect, it } from 'vitest'
import { assessReadiness, type ReadinessRule } from '@/lib/readiness/assess'
import { couponsFromRecords } from '@/lib/readiness/coupons-from-records'
import { explainReadiness } from '@/lib/readiness/explain'
import { readinessFilter } from '@/lib/readiness/filter'
import { inspected, record } from './made-up-records'

const rule: ReadinessRule = { threshold: 0.65, minimumCoupons: 5, staleAfterDays: 45, testResults: [] }

/** Legs in good size, but out of balance on every coupon; a crack now and then. */
const unbalanced = couponsFromRecords(Array.from({ length: 12 }, (_, day) =>
  record(day, inspected('instructor', { legSize: 0.8, legBalance: -0.4 + 0.1 * (day % 3), crack: day === 4 ? 'reject' : 'accept' })))).judged

describe('what holds the chance back', () => {
  const found = explainReadiness(unbalanced, 12, rule)!

  it('names the rule with most to gain, with the chance had it always passed', () => {
    const balanced = unbalanced.map(({ coupon }, day) => ({ ...coupon, accepted: day !== 4, worstMargin: 0.8 }))
    expect(found.holdsBack?.rule).toBe('leg-balance')
    expect(found.holdsBack?.probability).toBeCloseTo(readinessFilter(balanced, 12).probability, 12)
  })

  it('asks of every rule that failed or held the worst margin, and of no other', () => {
    expect(found.ifPassed.map(({ rule: id }) => id)).toEqual(['leg-balance', 'crack'])
  })

  it('gains are against the chance as it stands', () => {
    const estimate = assessReadiness(unbalanced.map(({ coupon }) => coupon), 12, rule)
    const stands = estimate.kind === 'estimate' ? estimate.probability : NaN
    for (const { probability, gain } of found.ifPassed) expect(gain).toBeCloseTo(probability - stands, 12)
  })

  it('is nobody when everything passes with room', () => {
    const fine = couponsFromRecords(Array.from({ length: 12 }, (_, day) => record(day, inspected('instructor', { legSize: 1.2, legBalance: 1.2 })))).judged
    expect(explainReadiness(fine, 12, rule)?.holdsBack).toBeNull()
  })

  it('learns nothing from a coupon whose verdict would then hang on something not measured', () => {
    const halfRead = couponsFromRecords(Array.from({ length: 6 }, (_, day) => record(day, inspected('instructor', { legBalance: -1, crack: null })))).judged
    const nothing = halfRead.map(({ coupon }) => ({ ...coupon, weight: 0 }))
    expect(explainReadiness(halfRead, 6, rule)?.ifPassed).toEqual([
      expect.objectContaining({ rule: 'leg-balance', probability: readinessFilter(nothing, 6).probability }),
    ])
  })

  it('a verdict against the scorecard is no rule’s doing', () => {
    const overruled = couponsFromRecords(Array.from({ length: 6 }, (_, day) => record(day, inspected('instructor', {}, { stated: 'reject' })))).judged
    expect(explainReadiness(overruled, 6, rule)?.ifPassed).toEqual([])
  })
})

describe('what more coupons would tell', () => {
  it('repeats the last three, today, and reads the filter again', () => {
    const coupons = unbalanced.map(({ coupon }) => coupon)
    const [a, b, c] = coupons.slice(-3)
    const [two, five] = explainReadiness(unbalanced, 14, rule)!.afterMore
    const today = (coupon: typeof a) => ({ ...coupon!, day: 14 })
    expect(two).toEqual({ count: 2, ...readinessFilter([...coupons, today(a), today(b)], 14, { level: 0.95 }) })
    expect(five).toEqual({ count: 5, ...readinessFilter([...coupons, today(a), today(b), today(c), today(a), today(b)], 14, { level: 0.95 }) })
  })
})

describe('why the interval is wide', () => {
  const codes = (judged: typeof unbalanced, asOf: number, over: Partial<ReadinessRule> = {}) =>
    explainReadiness(judged, asOf, { ...rule, ...over })!.whyWide.map(({ code }) => code)
  const steady = (n: number) => couponsFromRecords(Array.from({ length: n }, (_, day) => record(day, inspected('instructor', { legSize: 0.5 })))).judged

  it('few coupons', () => expect(codes(steady(5), 5)).toContain('few-coupons'))
  it('a gap', () => {
    expect(codes(steady(12), 42)).toContain('gap')
    expect(codes(steady(12), 11)).not.toContain('gap')
  })
  it('scattered margins', () => {
    const scattered = couponsFromRecords(Array.from({ length: 12 }, (_, day) => record(day, inspected('instructor', { legSize: 0.5 + (day % 2 === 0 ? 1.6 : -1.6) })))).judged
    expect(codes(scattered, 12)).toContain('scattered-margins')
    expect(codes(steady(12), 12)).not.toContain('scattered-margins')
  })
  it('the program has few tests', () => expect(codes(steady(8), 8)).toContain('few-test-results'))
  it('two readers differ, and how often', () => {
    const differing = couponsFromRecords(Array.from({ length: 6 }, (_, day) =>
      record(day, inspected('instructor', { legSize: 0.3 }), inspected('second', { legSize: day < 2 ? -0.3 : 0.3 })))).judged
    expect(explainReadiness(differing, 6, rule)?.whyWide).toContainEqual({ code: 'readers-differ', count: 2, of: 6 })
  })
  it('coupons that were not measured in full', () => {
    const halfRead = couponsFromRecords(Array.from({ length: 6 }, (_, day) => record(day, inspected('instructor', { legBalance: day < 4 ? -1 : 0.5, crack: day < 4 ? null : 'accept' })))).judged
    expect(explainReadiness(halfRead, 6, rule)?.whyWide).toContainEqual({ code: 'verdicts-only', count: 4, of: 6 })
  })
  it('says nothing of a narrow one', () => {
    const sure = couponsFromRecords(Array.from({ length: 60 }, (_, day) => record(day, inspected('instructor', { legSize: 2, legBalance: 2 })))).judged
    expect(codes(sure, 60)).toEqual([])
  })
})

it('without enough coupons there is nothing to explain', () => {
  expect(explainReadiness(unbalanced.slice(0, 4), 12, rule)).toBeNull()
})

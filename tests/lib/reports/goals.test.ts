import { describe, expect, it } from 'vitest'
import { LOCALES } from '@/lib/language/say'
import type { ReadinessEstimate } from '@/lib/readiness/assess'
import { explainGoal } from '@/lib/reports/explain-goal'
import { goalsOf, type Goal, type GoalFacts } from '@/lib/reports/goals'

const estimate: ReadinessEstimate = {
  kind: 'estimate', probability: 0.5, low: 0.3, high: 0.7, level: 0.95, advice: 'practise', reasons: ['chance-below'], couponsUsed: 9,
  uncalibrated: 0.5, calibration: { alpha: 0, beta: 1 }, resultsUsed: 0, modelVersion: 'x',
}
const facts: GoalFacts = { assessment: estimate, coupons: 9, waiting: 0, needed: { kind: 'after', count: 2, probability: 0.67 }, holdsBack: null, lastTestPassed: null }
const codes = (goals: readonly Goal[]): string[] => goals.map(({ code }) => code)
const words = (goal: Goal, locale: 'en' | 'es' = 'en'): string => explainGoal(goal, (rule) => (rule === 'leg-size' ? 'Leg size' : rule), locale)

describe('what to aim for', () => {
  it('counts the coupons inside the limits before a test makes sense', () => {
    const [goal] = goalsOf(facts)
    expect(goal && words(goal)).toBe('Two more coupons inside the limits before a test coupon makes sense. If they are like your own accepted ones, the chance would then be 0.67.')
    expect(goal && words(goal, 'es')).toMatch(/^Dos probetas más dentro de los límites antes de que tenga sentido una probeta de prueba\./)
  })
  it('says one coupon as one', () => {
    expect(words({ code: 'inside-band', count: 1, probability: 0.66 })).toMatch(/^One more coupon inside the limits/)
    expect(words({ code: 'more-for-estimate', count: 1 })).toContain('one more judged coupon')
    expect(words({ code: 'look-waiting', count: 1 })).toMatch(/^One coupon waits/)
  })
  it('begins with the first coupon', () => expect(codes(goalsOf({ ...facts, coupons: 0, needed: null, assessment: { kind: 'insufficient', have: 0, need: 5 } }))).toEqual(['first-coupon']))
  it('says not enough yet before there is an estimate, and that looks are still to come', () => {
    const goals = goalsOf({ ...facts, coupons: 4, waiting: 2, assessment: { kind: 'insufficient', have: 2, need: 5 } })
    expect(goals).toEqual([{ code: 'more-for-estimate', count: 3 }, { code: 'look-waiting', count: 2 }])
    expect(words(goals[0]!)).toBe('Not enough yet: three more judged coupons, then there is a first estimate.')
  })
  it('asks for nothing but a talk once the rule is met', () =>
    expect(codes(goalsOf({ ...facts, assessment: { ...estimate, advice: 'test' }, needed: { kind: 'now' }, holdsBack: { rule: 'leg-size', probability: 0.9 } }))).toEqual(['talk-about-test']))
  it('puts what is open first: a stale hand, a crack, a failed test, then coupons, then the rule', () => {
    const assessment = { ...estimate, advice: 'stale', reasons: ['chance-below', 'gap-since-last-coupon', 'blocking-open', 'failed-test-needs-coupons'] } as const
    expect(codes(goalsOf({ ...facts, assessment, holdsBack: { rule: 'leg-size', probability: 0.8 } }))).toEqual(['weld-again', 'mend-blocking', 'after-failed-test', 'inside-band', 'mend-rule'])
  })
  it('does not promise a test that six coupons cannot bring', () => {
    const goals = goalsOf({ ...facts, needed: { kind: 'not-within', most: 6, probability: 0.58 }, holdsBack: { rule: 'leg-size', probability: 0.8 } })
    expect(codes(goals)).toEqual(['not-within', 'mend-rule'])
    expect(words(goals[0]!)).toContain('even six more accepted coupons would bring the chance to 0.58')
    expect(words(goals[1]!)).toBe('Work on leg size most. Had it passed every time, the chance would be 0.80.')
  })
  it('rests after a test that passed', () => expect(codes(goalsOf({ ...facts, lastTestPassed: true }))).toEqual(['keep-it-alive']))
  it('has a sentence for each in both languages, with no points in it', () => {
    const all: Goal[] = [
      { code: 'first-coupon' }, { code: 'look-waiting', count: 2 }, { code: 'more-for-estimate', count: 7 }, { code: 'weld-again' }, { code: 'talk-about-test' }, { code: 'keep-it-alive' },
      { code: 'inside-band', count: 3, probability: 0.7 }, { code: 'not-within', count: 6, probability: 0.5 }, { code: 'mend-blocking' }, { code: 'after-failed-test' }, { code: 'mend-rule', rule: 'leg-size', probability: 0.8 },
    ]
    for (const locale of LOCALES) for (const goal of all) expect(words(goal, locale)).toMatch(/^[A-ZÁÉÍÓÚ][^{}]+\.$/)
    for (const goal of all) expect(words(goal, 'es')).not.toBe(words(goal, 'en'))
  })
})

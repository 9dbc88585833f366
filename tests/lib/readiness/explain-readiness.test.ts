import { describe, expect, it } from 'vitest'
import { readiness } from '@/lib/language/readiness'
import { LOCALES } from '@/lib/language/say'
import type { ReadinessEstimate } from '@/lib/readiness/assess'
import type { Advice, ReasonCode } from '@/lib/readiness/decide'
import type { ReadinessExplanation } from '@/lib/readiness/explain'
import { selfTrust } from '@/lib/readiness/self-trust'
import { explainAdvice, explainAssessment, explainExplanation, explainReason, explainSelfTrust } from '@/lib/reports/explain-readiness'

const estimate: ReadinessEstimate = {
  kind: 'estimate', probability: 0.7163, low: 0.481, high: 0.878, level: 0.95, advice: 'test', reasons: [], couponsUsed: 14,
  uncalibrated: 0.7, calibration: { alpha: 0, beta: 1 }, resultsUsed: 0, modelVersion: 'x',
}

describe('the estimate in words', () => {
  it('gives the chance, its limits and the coupons behind it', () => {
    expect(explainAssessment(estimate, 'en')).toBe('0.72 chance to pass the next test coupon, between 0.48 and 0.88, from 14 coupons.')
    expect(explainAssessment(estimate, 'es')).toBe('Probabilidad de 0.72 de pasar la próxima probeta de prueba, entre 0.48 y 0.88, según 14 probetas.')
  })
  it('says not enough yet, and how many more it takes', () => {
    expect(explainAssessment({ kind: 'insufficient', have: 3, need: 5 }, 'en')).toBe('Not enough yet: 3 of 5 coupons judged. 2 more judged coupons give an estimate.')
    expect(explainAssessment({ kind: 'insufficient', have: 4, need: 5 }, 'en')).toBe('Not enough yet: 4 of 5 coupons judged. One more judged coupon gives an estimate.')
  })
  it('never claims certainty', () => expect(explainAssessment({ ...estimate, probability: 0.9999, high: 1 }, 'en')).toContain('0.99 chance'))
})

describe('every code has a sentence in both languages', () => {
  const advice: Advice[] = ['practise', 'close', 'test', 'stale']
  const reasons: ReasonCode[] = [
    'chance-at-threshold', 'chance-kept', 'chance-close', 'chance-below', 'no-pass-in-last-three', 'blocking-open',
    'failed-test-needs-coupons', 'gap-since-last-coupon', 'verdicts-only', 'few-test-results',
  ]
  const filled = /^\S[^{}]+$/
  it.each(LOCALES)('%s', (locale) => {
    for (const each of advice) expect(explainAdvice(each, locale)).toMatch(filled)
    for (const each of reasons) expect(explainReason(each, 0.65, locale)).toMatch(filled)
  })
  it('a reason names the program’s threshold', () => expect(explainReason('chance-below', 0.65, 'en')).toContain('0.65'))
  it('no sentence is the same in both languages', () => {
    for (const [key, sentence] of Object.entries(readiness.en)) expect(readiness.es[key as keyof typeof readiness.es]).not.toBe(sentence)
  })
})

describe('the explanation in words', () => {
  const found: ReadinessExplanation = {
    ifPassed: [],
    holdsBack: { rule: 'leg-balance', probability: 0.83, gain: 0.11 },
    afterMore: [{ count: 2, probability: 0.74, low: 0.52, high: 0.88 }, { count: 5, probability: 0.76, low: 0.58, high: 0.88 }],
    whyWide: [{ code: 'few-coupons', narrowerBy: 0.09 }, { code: 'readers-differ', count: 2, of: 6 }],
  }
  it('names the rule, the further coupons and the reasons', () => {
    expect(explainExplanation(found, (rule) => (rule === 'leg-balance' ? 'leg balance' : rule), 'en')).toEqual({
      holdsBack: 'What holds it back most is leg balance: had it passed on every coupon, the chance would be 0.83.',
      afterMore: [
        '2 more coupons like the last three would make it 0.74, between 0.52 and 0.88.',
        '5 more coupons like the last three would make it 0.76, between 0.58 and 0.88.',
      ],
      whyWide: [
        'there are few coupons; five more like the last three would bring the limits 0.09 closer',
        'two inspectors reached different verdicts on 2 of the 6 coupons both of them read',
      ],
    })
  })
  it('says when no single rule holds it back', () => {
    expect(explainExplanation({ ...found, holdsBack: null }, (rule) => rule, 'en').holdsBack).toBe('No single rule holds it back.')
  })
})

describe('how far own inspections count, in words', () => {
  const pairs = (agreed: number, differed: number) => [
    ...Array.from({ length: agreed }, () => ({ self: 'accept', instructor: 'accept' }) as const),
    ...Array.from({ length: differed }, () => ({ self: 'accept', instructor: 'reject' }) as const),
  ]
  it.each([
    [3, 1, 'do not count yet: 4 of the 5'],
    [8, 2, 'count with weight 0.50: 8 of 10'],
    [3, 5, 'do not count: 3 of 8'],
  ])('%i agreed, %i differed', (agreed, differed, words) => expect(explainSelfTrust(selfTrust(pairs(agreed, differed)), 'en')).toContain(words))
  it('speaks to the student themself', () => {
    for (const locale of LOCALES) {
      for (const [agreed, differed] of [[3, 1], [8, 2], [3, 5]] as const) {
        const [own, other] = (['student', 'other'] as const).map((reader) => explainSelfTrust(selfTrust(pairs(agreed, differed)), locale, reader))
        expect(own).toMatch(locale === 'en' ? /\byou\b/ : /(^| )tú /)
        expect(own).not.toMatch(/the student|el estudiante/)
        expect(other).toMatch(/the student|el estudiante/)
      }
    }
  })
})

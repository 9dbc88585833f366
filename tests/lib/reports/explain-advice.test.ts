import { describe, expect, it } from 'vitest'
import { ALL_CAUSES, CAUSES } from '@/lib/coaching/causes'
import { COACHING_SOURCE } from '@/lib/coaching/common-practice'
import type { Evidence } from '@/lib/coaching/evidence'
import { SYMPTOMS } from '@/lib/coaching/symptom'
import type { Advice } from '@/lib/coaching/what-to-change'
import { causes, remedies, symptoms } from '@/lib/language/coaching'
import { advice as adviceWords } from '@/lib/language/coaching-evidence'
import { LOCALES } from '@/lib/language/say'
import { explainAdvice, explainEvidence } from '@/lib/reports/explain-advice'

const base: Advice = {
  rule: 'undercut', symptom: 'undercut', aim: 'mend', cause: 'travel-too-fast', remedy: 'slow-down', evidence: [], likelihood: 'possible', alsoExplains: [], source: COACHING_SOURCE,
}
const fast: Evidence = { code: 'above-card', setting: 'travel-speed', pass: null, value: 5, min: 3, max: 4 }

const EVERY: readonly Evidence[] = [
  fast,
  { code: 'below-card', setting: 'stick-out', pass: 2, value: 12.7, min: 19.05, max: null },
  { code: 'above-card', setting: 'volts', pass: 1, value: 24, min: null, max: 21 },
  { code: 'below-card', setting: 'amps', pass: null, value: 90, min: 110, max: 130 },
  { code: 'above-card', setting: 'wire-feed', pass: null, value: 80, min: 60, max: 70 },
  { code: 'polarity-differs', pass: 1, used: 'DCEP', card: 'DCEN' },
  { code: 'gas-differs', pass: null, used: 'C1', card: 'M21' },
  { code: 'bead-narrow', widthMm: 7, limitMm: 8 }, { code: 'bead-wide', widthMm: 11, limitMm: 9.6 },
  { code: 'narrower-last-third', beforeMm: 9, lastMm: 7 }, { code: 'wider-last-third', beforeMm: 9, lastMm: 11 },
  { code: 'widths-vary', smallestMm: 7, largestMm: 11 },
  ...(['upper', 'lower', 'left', 'right'] as const).flatMap((side): Evidence[] => [
    { code: 'legs-differ', longer: side, longMm: 10, shortMm: 8 }, { code: 'undercut-one-toe', toe: side },
  ]),
  { code: 'undercut-both-toes' },
  { code: 'pores-near-start', count: 2, total: 3, withinMm: 25 }, { code: 'pores-spread', count: 4, fromMm: 10, toMm: 180 },
  { code: 'at-restart', atMm: 100 }, { code: 'at-end', fromMm: 190 }, { code: 'slag-seen', count: 2 }, { code: 'spatter-seen', count: 3 },
  { code: 'seen-before', times: 2, of: 5 },
]

describe.each(LOCALES)('in %s', locale => {
  it('tells every piece of evidence in a sentence of its own, in both unit systems', () => {
    for (const units of ['in', 'mm'] as const) {
      const told = EVERY.map(one => explainEvidence(one, { locale, units }))
      told.forEach(text => expect(text).toMatch(/^[A-ZÁÉÍÓÚ][^{}]*\.$/))
      expect(new Set(told).size).toBe(EVERY.length)
    }
  })

  it('puts every symptom, cause and remedy into words', () => {
    for (const symptom of SYMPTOMS) {
      for (const cause of ALL_CAUSES) {
        const text = explainAdvice({ ...base, symptom, cause, remedy: CAUSES[cause].remedy }, { locale, units: 'mm' })
        expect(text.headline).toBe(`${symptoms[locale][symptom]}: ${locale === 'en' ? 'possibly' : 'quizá por'} ${causes[locale][cause]}.`)
        expect(text.remedy).toMatch(/^[A-ZÁÉÍÓÚ].*\.$/)
      }
    }
  })

  it('always says that it is common practice', () => {
    for (const likelihood of ['likely', 'possible'] as const) {
      for (const aim of ['mend', 'hold'] as const) {
        expect(explainAdvice({ ...base, aim, likelihood }, { locale, units: 'in' }).note).toBe(locale === 'en' ? 'Common practice, not a rule.' : 'Práctica común, no una regla.')
      }
    }
  })

  it('never claims to be certain', () => {
    const hedge = locale === 'en' ? /likely|possibly|Watch out for/ : /probablemente|quizá|Cuidado con/
    for (const likelihood of ['likely', 'possible'] as const) {
      for (const aim of ['mend', 'hold'] as const) expect(explainAdvice({ ...base, aim, likelihood }, { locale, units: 'in' }).headline).toMatch(hedge)
    }
  })
})

it('uses no English words in Spanish', () => {
  for (const catalogue of [symptoms, causes, remedies, adviceWords]) {
    const spanish: Readonly<Record<string, string>> = catalogue.es
    expect(Object.entries(catalogue.en).filter(([key, text]) => spanish[key] === text && !/^\W*\{/.test(text))).toEqual([])
  }
})

it('reads like something an instructor would say', () => {
  const advice: Advice = { ...base, likelihood: 'likely', evidence: [fast, { code: 'narrower-last-third', beforeMm: 8.75, lastMm: 7 }], alsoExplains: ['width-in-band'] }
  expect(explainAdvice(advice, { locale: 'en', units: 'in' })).toEqual({
    headline: 'Undercut: likely travelling too fast.',
    because: 'Travel speed: 11.8 in/min, over the booth card (7.1 in/min to 9.4 in/min). The last third of the bead is narrower: 0.276 in against 11/32 in before it. The same cause would explain: Bead width.',
    remedy: 'Slow down until the pool is as wide as the bead should be, and let it lead you.',
    note: 'Common practice, not a rule.',
  })
  expect(explainAdvice(advice, { locale: 'es', units: 'mm' }).because).toMatch(/^Velocidad de avance: 5\.0 mm\/s, por encima de la tarjeta de la cabina \(3\.0 mm\/s a 4\.0 mm\/s\)\./)
})

it('admits when nothing about the coupon points to the cause', () => {
  expect(explainAdvice(base, { locale: 'en', units: 'in' }).because).toBe('Nothing written down about this coupon points to it; it is a common cause of this.')
  expect(explainAdvice({ ...base, evidence: [{ code: 'seen-before', times: 1, of: 2 }] }, { locale: 'en', units: 'in' }).because).toBe(
    'Nothing written down about this coupon points to it; it is a common cause of this. Earlier coupons with the same fault: 1 of the last 2.')
})

it('names the rule that came closest on an accepted coupon', () => {
  expect(explainAdvice({ ...base, aim: 'hold' }, { locale: 'en', units: 'in' }).headline).toBe('Undercut came closest to its limit. Watch out for travelling too fast.')
  expect(explainAdvice({ ...base, aim: 'hold', likelihood: 'likely' }, { locale: 'es', units: 'in' }).headline).toBe('Lo más cercano a su límite: Socavado, probablemente por un avance demasiado rápido.')
})

it('names the pass where a coupon has several, and open ends of the card', () => {
  expect(explainEvidence({ code: 'below-card', setting: 'stick-out', pass: 2, value: 12.7, min: 19.05, max: null }, { locale: 'en', units: 'in' })).toBe('Stick-out on pass 2: 1/2 in, under the booth card (at least 3/4 in).')
  expect(explainEvidence({ code: 'above-card', setting: 'volts', pass: 1, value: 24, min: null, max: 21 }, { locale: 'es', units: 'in' })).toBe('Voltaje en la pasada 1: 24.0 V, por encima de la tarjeta de la cabina (a lo más 21.0 V).')
})

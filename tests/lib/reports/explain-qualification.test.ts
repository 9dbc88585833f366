import { expect, it } from 'vitest'
import { qualification } from '@/lib/language/qualification'
import { LOCALES } from '@/lib/language/say'
import { isoThicknessQualified, thicknessQualified } from '@/lib/qualification/thickness'
import { explainQualificationReason, explainThickness, positionName, type QualificationReason } from '@/lib/reports/explain-qualification'

const REASONS: readonly QualificationReason[] = [
  'visual-rejected', 'visual-incomplete', 'visual-missing', 'bend-rejected', 'break-rejected', 'macroetch-rejected', 'macroetch-incomplete',
  'replacement-needed', 'bends-missing', 'breaks-missing', 'macroetches-missing', 'discontinuity-too-large', 'discontinuities-sum-too-large',
  'corner-crack-too-large', 'root-not-fused', 'inclusion-too-large', 'inclusions-sum-too-large', 'crack-seen', 'fusion-incomplete',
  'profile-not-acceptable', 'undercut-too-deep', 'leg-too-small', 'macroetch-not-examined', 'position-not-covered', 'progression-differs',
  'progression-unknown', 'plate-too-thin', 'too-few-layers',
]

it.each(LOCALES.flatMap(locale => (['us', 'si', 'iso'] as const).flatMap(rules => REASONS.map(reason => [reason, rules, locale] as const))))(
  'puts %s by %s into words in %s', (reason, rules, locale) => {
    expect(explainQualificationReason(reason, { locale, rules })).toMatch(/^[A-ZÁÉÍÓÚ].*\.$/)
  })

it('gives the limit in the units the rule is written in', () => {
  expect(explainQualificationReason('discontinuity-too-large', { locale: 'en', rules: 'us' })).toContain('1/8 in')
  expect(explainQualificationReason('corner-crack-too-large', { locale: 'en', rules: 'us' })).toContain('1/4 in')
  expect(explainQualificationReason('discontinuities-sum-too-large', { locale: 'es', rules: 'si' })).toMatch(/10(\.0)? mm/)
  expect(explainQualificationReason('undercut-too-deep', { locale: 'es', rules: 'us' })).toContain('1/32 in')
})

it('puts a thickness range in the reader’s units', () => {
  const groove = thicknessQualified({ type: 'groove', thicknessMm: 9.525 }, 'us')
  expect(explainThickness(groove, { locale: 'en', units: 'in', rules: 'us' })).toBe('1/8 in to 3/4 in')
  expect(explainThickness(isoThicknessQualified({ type: 'fillet', thicknessMm: 10 }), { locale: 'es', units: 'mm', rules: 'iso' })).toMatch(/^3(\.0)? mm o más$/)
  expect(explainThickness(thicknessQualified({ type: 'groove', thicknessMm: 6 }, 'si'), { locale: 'en', units: 'mm', rules: 'si' })).toContain('10')
})

it('names positions', () => {
  expect(positionName('OH', 'en')).toBe('overhead')
  expect(positionName('OH', 'es')).toBe('sobre cabeza')
})

it('says nothing in Spanish with the English words', () => {
  const same = Object.entries(qualification.en).filter(([key, text]) => qualification.es[key as keyof typeof qualification.es] === text)
  expect(same.map(([key]) => key)).toEqual(['horizontal', 'vertical'])
})

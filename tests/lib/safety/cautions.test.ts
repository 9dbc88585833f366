import { expect, it } from 'vitest'
import { LOCALES } from '@/lib/language/say'
import { PROCESSES } from '@/lib/procedure/process'
import { explainCaution, explainCautionTopic } from '@/lib/reports/explain-caution'
import { CAUTION_CODES, CAUTION_TOPICS, cautionsFor } from '@/lib/safety/cautions'

const codes = (...args: Parameters<typeof cautionsFor>): string[] => cautionsFor(...args).map((each) => each.code)

it('gives every caution to some process, and none twice to one', () => {
  const all = new Set([...PROCESSES.flatMap((process) => codes(process, null)), ...codes('SMAW', 600)])
  expect([...all].sort()).toEqual([...CAUTION_CODES].sort())
  for (const process of PROCESSES) expect(new Set(codes(process, 200)).size).toBe(codes(process, 200).length)
})

it('keeps cautions to the processes they are about', () => {
  expect(codes('FCAW-S', 200)).toContain('barium-fluoride')
  expect(codes('FCAW-G', 200)).not.toContain('barium-fluoride')
  expect(codes('FCAW-S', 200)).not.toContain('cylinders')
  expect(codes('GMAW', 200)).toContain('cylinders')
  expect(codes('GMAW', 200)).not.toContain('hot-slag')
  expect(codes('SMAW', 100)).toContain('open-circuit-ac')
  expect(codes('GMAW', 100)).not.toContain('open-circuit-ac')
})

it('gives a source to each', () => {
  for (const process of PROCESSES) for (const caution of cautionsFor(process, 200)) expect(caution.source.title).not.toBe('')
})

it('finds words in both languages and both units for every caution, with no place left unfilled', () => {
  for (const process of PROCESSES) {
    for (const caution of [...cautionsFor(process, null), ...cautionsFor(process, 200), ...cautionsFor(process, 900)]) {
      for (const units of ['in', 'mm'] as const) {
        const [english, spanish] = LOCALES.map((locale) => explainCaution(caution, locale, units))
        expect(english).toMatch(/^[A-Z].*\.$/)
        expect(`${english}${spanish}`).not.toMatch(/[{}]|NaN|undefined/)
        expect(spanish).not.toBe(english)
      }
    }
  }
})

it('speaks the reader’s units', () => {
  const clearance = cautionsFor('SMAW', 100).find((each) => each.code === 'fire-clearance')
  if (!clearance) throw new Error('fire-clearance is missing')
  expect(explainCaution(clearance, 'en', 'in')).toContain('35 ft')
  expect(explainCaution(clearance, 'es', 'mm')).toContain('11 m ')
})

it('says one shade when the current is known and the range when it is not', () => {
  const [known, unknown] = [cautionsFor('FCAW-S', 200)[0], cautionsFor('FCAW-S', null)[0]]
  if (!known || !unknown) throw new Error('the shade is missing')
  expect(explainCaution(known, 'en', 'in')).toBe('Never weld with a filter lighter than shade 10.')
  expect(explainCaution(unknown, 'en', 'in')).toContain('shade 7 to 10, by current')
})

it('does not speak with a figure missing', () => {
  const watch = cautionsFor('SMAW', 100).find((each) => each.code === 'fire-watch')
  if (!watch) throw new Error('fire-watch is missing')
  expect(() => explainCaution({ ...watch, figures: {} }, 'en', 'in')).toThrow(/minutes/)
})

it('heads every topic', () => {
  expect(new Set(CAUTION_TOPICS.map((topic) => explainCautionTopic(topic, 'es'))).size).toBe(CAUTION_TOPICS.length)
})

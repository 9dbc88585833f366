// The sentences about agreement, and its rows for a file.
import { describe, expect, it } from 'vitest'
import { csvText } from '@/lib/interchange/csv'
import { agreementReport, compareSides } from '@/lib/reports/agreement'
import { agreementRows } from '@/lib/reports/agreement-export'
import { leaningsOf } from '@/lib/reports/agreement-leanings'
import type { ReadLook, TwoLooks } from '@/lib/reports/agreement-looks'
import { agreementAnswer, apartText, correctedText, leaningCaution, leaningText, neverPartedText, partedRules, shareWithInterval, signed, widthWords, type Teller } from '@/lib/reports/agreement-words'
import { widthBias } from '@/lib/reports/agreement-widths'
import type { Verdict } from '@/lib/scoring/types'

const NAMES: Readonly<Record<string, string>> = { a: 'Rosa', b: 'Wim', c: 'Sela' }
const teller = (you: string | null = null): Teller => ({ nameOf: (id) => NAMES[id] ?? id, you, units: 'in' })
const look = (readerId: string, undercut: 'accept' | 'reject', verdict: Verdict = undercut, widths: readonly number[] = []): ReadLook => ({
  readerId, verdict, rules: new Map([['Undercut', undercut]]), widths: widths.map((widthMm, i) => ({ atMm: 20 * (i + 1), widthMm })),
})
let made = 0
const pair = (first: ReadLook, second: ReadLook): TwoLooks => ({ couponId: `coupon-${(made += 1)}`, first, second })
const times = (n: number, make: (i: number) => TwoLooks): TwoLooks[] => Array.from({ length: n }, (_, i) => make(i))
const leaned = [
  ...times(10, (i) => pair(look('a', 'accept'), look(i < 6 ? 'b' : 'c', 'reject', 'accept'))), pair(look('a', 'reject', 'accept'), look('b', 'accept')), ...times(49, () => pair(look('b', 'accept'), look('a', 'accept'))),
]

describe('leanings', () => {
  const [found] = leaningsOf(['a'], leaned).found
  it('are spoken to the reader, or name them', () => {
    if (!found) throw new Error('Nobody leans.')
    expect(leaningText(found, teller('a'))).toBe('You accept undercut that two others reject: 10 of the 11 coupons on which you parted over it, of 60 compared.')
    expect(leaningText(found, teller())).toBe('Rosa accepts undercut that two others reject: 10 of the 11 coupons on which they parted over it, of 60 compared.')
    expect(leaningText({ ...found, otherIds: ['b'] }, teller())).toContain('Rosa accepts undercut that Wim rejects: ')
    expect(leaningText({ ...found, way: 'rejects', subject: null, otherIds: ['b'] }, teller('a'))).toBe('You reject coupons that Wim accepts: 10 of the 11 coupons on which you parted, of 60 compared.')
  })
  it('say how many chance alone would show', () => {
    expect(leaningCaution({ found: [], looked: 24, byChance: 0.64 })).toBe('24 pairings of a reader and a rule were looked at. If nobody leaned, chance alone would show about 0.6 such lines.')
    expect(leaningCaution({ found: [], looked: 1, byChance: 0.01 })).toBe('1 pairing of a reader and a rule was looked at. If nobody leaned, chance alone would hardly show such a line.')
  })
})

describe('the answer', () => {
  it('says how many verdicts were the same, what was left out, and over what they part most', () => {
    const { all } = agreementReport([...leaned, pair(look('a', 'accept', 'incomplete'), look('c', 'accept'))], null)
    expect(agreementAnswer(all, 'Two readers')).toEqual([
      'Two readers reached the same verdict on 60 of 60 coupons: 100 % (94 % to 100 %).',
      'Of 61 coupons that both looked at, 1 is left out of this, because somebody left something unmeasured.',
      'They part most over undercut: alike on 50 of 61, 82 % (71 % to 90 %).',
    ])
  })
  it('says no rate of four coupons, and nothing of rules on which nobody parted', () => {
    expect(agreementAnswer(compareSides(times(4, () => pair(look('a', 'accept'), look('b', 'accept')))), 'You and another', 'you')).toEqual(['You and another reached the same verdict on 4 of 4 coupons: too few to say more.'])
    expect(agreementAnswer(compareSides(times(9, () => pair(look('a', 'accept'), look('b', 'accept')))), 'Two readers').at(-1)).toBe('Over no rule did they part.')
  })
})

describe('rules', () => {
  it('have a row where somebody parted; the others are told in one sentence', () => {
    const twice = (undercut: 'accept' | 'reject') => pair({ ...look('a', 'accept'), rules: new Map([['Undercut', 'accept'], ['Leg size', 'reject'], ['601', 'accept']]) }, { ...look('b', undercut), rules: new Map([['Undercut', undercut], ['Leg size', 'reject'], ['601', 'not-measured']]) })
    const { rules } = compareSides([twice('accept'), twice('reject')])
    expect(partedRules(rules).map(({ rule }) => rule)).toEqual(['Undercut'])
    expect(neverPartedText(rules)).toBe('Alike on every coupon: leg size (2).')
    expect(neverPartedText(partedRules(rules))).toBeNull()
  })
})

describe('figures', () => {
  it('say why there is none', () => {
    expect(correctedText({ kind: 'few' })).toBe('from 10 coupons on')
    expect(correctedText({ kind: 'all-the-same' })).toBe('not defined, every verdict was the same')
    expect(correctedText({ kind: 'estimate', value: 1, interval: null })).toBe('1.00, without an interval')
    expect(correctedText({ kind: 'estimate', value: -0.024, interval: { low: -0.051, high: 0.4 } })).toBe('−0.02 (−0.05 to 0.40)')
  })
  it('stand beside who accepted alone and what is left out', () => {
    const { verdicts } = compareSides([pair(look('a', 'accept'), look('b', 'reject')), pair(look('a', 'accept'), look('b', 'accept', 'incomplete'))])
    expect(apartText(verdicts, ['you', 'Wim'])).toBe('1 accepted only by you, 1 left out, too few to compare')
    expect(apartText(verdicts, null)).toBe('1 left out, too few to compare')
    expect(shareWithInterval(verdicts)).toBeNull()
  })
})

describe('widths', () => {
  const by = (mm: number, spread: number) => widthBias(times(6, (i) => pair(look('a', 'accept', 'accept', [8 + mm + (i % 2 === 0 ? spread : -spread)]), look('b', 'accept', 'accept', [8]))))
  it('name a direction only where the interval leaves no difference outside', () => {
    expect(widthWords(by(0.508, 0.05), 'You', 'the others', 'in')[0]).toBe('You read widths 0.020 in wider than the others on average (0.018 in to 0.022 in), on 6 coupons.')
    expect(widthWords(by(-0.5, 0.05), 'Rosa', 'everybody else', 'mm')[0]).toBe('Rosa reads widths 0.50 mm narrower than everybody else on average (0.44 mm to 0.56 mm), on 6 coupons.')
    // Half of 1/64 in is 0.198 mm.
    expect(widthWords(by(0.19, 0.05), 'Rosa', 'Wim', 'mm')[0]).toBe('Rosa reads widths 0.19 mm wider than Wim on average (0.13 mm to 0.25 mm), on 6 coupons, less than half a step of the finest gauge: nothing to mend.')
    expect(widthWords(by(0.21, 0.05), 'Rosa', 'Wim', 'mm')[0]).toMatch(/on 6 coupons\.$/)
    expect(widthWords(by(0.02, 0.4), 'Rosa', 'everybody else', 'mm')[0]).toBe('Rosa reads widths neither wider nor narrower than everybody else, as far as 6 coupons can tell: +0.02 mm (−0.44 to +0.48) on average.')
    expect(widthWords(by(0.5, 0.1), 'You', 'the others', 'mm')[1]).toBe('A single width is off the other’s by +0.29 mm to +0.71 mm, 19 times in 20.')
    expect(widthWords({ coupons: 3, places: 15, found: null }, 'You', 'the others', 'in')).toEqual(['Widths cannot be compared yet: both measured them on 3 of the 5 coupons it takes.'])
    expect(signed(0.001, 'mm')).toBe('0.00 mm')
  })
})

describe('the file', () => {
  const report = agreementReport([...leaned, ...times(6, () => pair(look('a', 'accept', 'accept', [8.5]), look('b', 'accept', 'accept', [8])))], null)
  const lines = csvText(agreementRows(report, (id) => NAMES[id] ?? id)).split('\r\n')
  it('has a row for everything compared, empty where nothing can be said', () => {
    expect(lines[0]).toMatch(/^between,first,second,about,compared,alike,rate,/)
    expect(lines[1]).toBe('all,,,whole coupon,66,66,1,0.945,1,0,0,0,1,,,,,,every verdict was the same,,,,,,,')
    expect(lines).toContain('reader and all others,Rosa,,width,,,,,,,,,,,,,,,,6,6,0.5,0.5,0.5,0.5,0.5')
    expect(lines.find((line) => line.startsWith('pair,Rosa,Sela,Undercut'))).toBe('pair,Rosa,Sela,Undercut,4,0,,,,4,0,0,,,,,,,too few,,,,,,,')
  })
})

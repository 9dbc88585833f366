// How alike two readers of one coupon judge: what counts, what is left out, who leans, and whose widths lie over whose.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { agreementReport, compareSides } from '@/lib/reports/agreement'
import { agreementOf, compareLooks } from '@/lib/reports/agreement-figures'
import { leaningsOf } from '@/lib/reports/agreement-leanings'
import { asSeenBy, rulesByName, WHOLE_COUPON, type ReadLook, type TwoLooks } from '@/lib/reports/agreement-looks'
import { widthBias } from '@/lib/reports/agreement-widths'
import type { FindingVerdict, Verdict } from '@/lib/scoring/types'
import { everyNumber } from '../../support/every-number'

fc.configureGlobal({ seed: 53, numRuns: 150 })

type Given = { readonly verdict?: Verdict; readonly undercut?: FindingVerdict; readonly porosity?: FindingVerdict; readonly widths?: readonly number[] }
const look = (readerId: string, { verdict = 'accept', undercut = 'accept', porosity = 'not-applicable', widths = [] }: Given = {}): ReadLook => ({
  readerId, verdict, rules: new Map([['Undercut', undercut], ['Porosity', porosity]]), widths: widths.map((widthMm, i) => ({ atMm: 20 + 40 * i, widthMm })),
})
let made = 0
const pair = (first: ReadLook, second: ReadLook): TwoLooks => ({ couponId: `coupon-${(made += 1)}`, first, second })
const times = (n: number, make: () => TwoLooks): TwoLooks[] => Array.from({ length: n }, make)

describe('the figures of a table', () => {
  // The overview that comes with the R package irrCAC 1.0, printed: kappa2.table, scott2.table and gwet.ac1.table of cont3x3abstractors.
  it.each([
    ['kappa', 'kept', 0.7964094, [0.68, 0.913]],
    ['kappa', 'changing', 0.7962397, [0.679, 0.913]],
    ['ac1', 'kept', 0.8493305, [0.764, 0.935]],
  ] as const)('%s, sides %s, with the interval printed', (which, sides, value, [low, high]) => {
    const figure = agreementOf([[13, 0, 0], [0, 20, 7], [0, 4, 56]], sides)[which]
    if (figure.kind !== 'estimate') throw new Error('no estimate')
    expect(figure.value).toBeCloseTo(value, 7)
    expect(Math.abs((figure.interval?.low ?? 0) - low)).toBeLessThanOrEqual(0.0005)
    expect(Math.abs((figure.interval?.high ?? 0) - high)).toBeLessThanOrEqual(0.0005)
  })

  // Newcombe 1998, Statistics in Medicine 17:857, Table I (from memory, recomputed with R): 81 of 263 is 0.2553 to 0.3662.
  it('give the percentage Wilson’s interval', () => {
    const { share } = agreementOf([[80, 100], [82, 1]], 'kept')
    expect(share?.rate).toBeCloseTo(81 / 263, 12)
    expect([share?.low.toFixed(4), share?.high.toFixed(4)]).toEqual(['0.2553', '0.3662'])
  })

  it('say a count of four, a percentage of five, and AC1 and kappa of ten', () => {
    expect(agreementOf([[3, 0], [1, 0]], 'kept')).toMatchObject({ compared: 4, alike: 3, share: null, ac1: { kind: 'few' }, kappa: { kind: 'few' } })
    expect(agreementOf([[4, 0], [1, 0]], 'kept')).toMatchObject({ share: { rate: 0.8 }, ac1: { kind: 'few' } })
    expect(agreementOf([[8, 0], [1, 1]], 'kept')).toMatchObject({ ac1: { kind: 'estimate' }, kappa: { kind: 'estimate' } })
    expect(agreementOf([[0, 0], [0, 1]], 'kept')).toMatchObject({ compared: 1, alike: 1, share: null })
    expect(agreementOf([[0, 0], [0, 0]], 'kept')).toMatchObject({ compared: 0, alike: 0, share: null, kappa: { kind: 'few' } })
  })

  it('leave kappa undefined where every verdict was the same, and no figure certain because nobody differed', () => {
    expect(agreementOf([[20, 0], [0, 0]], 'kept')).toMatchObject({ kappa: { kind: 'all-the-same' }, ac1: { kind: 'estimate', value: 1, interval: null } })
    expect(agreementOf([[0, 0], [0, 20]], 'changing')).toMatchObject({ kappa: { kind: 'all-the-same' } })
    expect(agreementOf([[15, 0], [0, 5]], 'changing')).toMatchObject({ kappa: { kind: 'estimate', interval: null }, ac1: { interval: null } })
    for (const n of [9, 241, 487, 999]) expect(agreementOf([[n, 1], [0, 0]], 'kept').kappa).toMatchObject({ kind: 'estimate', interval: null })
    expect(agreementOf([[0, 12], [0, 0]], 'kept')).toMatchObject({ kappa: { kind: 'estimate', value: 0, interval: null } })
  })

  const tables = fc.tuple(fc.nat(40), fc.nat(40), fc.nat(40), fc.nat(40)).map(([a, b, c, d]) => [[a, b], [c, d]])
  it('are never NaN, stay where they can lie, and hold their estimates', () => {
    fc.assert(fc.property(tables, fc.constantFrom('kept', 'changing'), (table, sides) => {
      const found = agreementOf(table, sides)
      expect(everyNumber(found).every(Number.isFinite)).toBe(true)
      for (const figure of [found.ac1, found.kappa]) {
        if (figure.kind !== 'estimate' || !figure.interval) continue
        expect(figure.interval.low).toBeGreaterThanOrEqual(-1)
        expect(figure.interval.high).toBeLessThanOrEqual(1)
        expect(figure.interval.low).toBeLessThanOrEqual(figure.value)
        expect(figure.interval.high).toBeGreaterThanOrEqual(figure.value)
      }
    }))
  })
})

describe('what is compared', () => {
  it('leaves out and counts what somebody did not measure, and what only one held to apply', () => {
    const looks = [
      pair(look('a'), look('b', { undercut: 'reject' })), pair(look('a', { undercut: 'not-measured' }), look('b')),
      pair(look('a', { undercut: 'not-applicable' }), look('b')), pair(look('a', { verdict: 'incomplete' }), look('b')),
    ]
    expect(compareLooks(looks, 'Undercut', 'kept')).toMatchObject({ compared: 2, alike: 1, leftOut: 2, onlyFirst: [looks[0]?.couponId], onlySecond: [] })
    expect(compareLooks(looks, WHOLE_COUPON, 'kept')).toMatchObject({ compared: 3, alike: 3, leftOut: 1 })
  })
  it('does not hold a rule that applies to neither for agreement, nor list it', () => {
    const looks = times(12, () => pair(look('a'), look('b')))
    expect(compareLooks(looks, 'Porosity', 'kept')).toMatchObject({ compared: 0, leftOut: 0 })
    expect(compareSides(looks).rules.map(({ rule }) => rule)).toEqual(['Undercut'])
  })
  it('takes the strictest of findings that go by one name, and a gap before an acceptance', () => {
    const named = (...verdicts: FindingVerdict[]) => rulesByName(verdicts.map((verdict, i) => ({ rule: String(i), verdict })), () => 'Porosity').get('Porosity')
    expect(named('accept', 'reject', 'not-measured')).toBe('reject')
    expect(named('accept', 'not-measured', 'not-applicable')).toBe('not-measured')
    expect(named('not-applicable', 'accept')).toBe('accept')
  })
  it('lists rules with the least alike first and those of too few coupons last', () => {
    const looks = [
      ...times(6, () => pair(look('a', { porosity: 'accept' }), look('b', { porosity: 'reject' }))),
      ...times(3, () => pair(look('a', { undercut: 'reject' }), look('b'))),
    ]
    expect(compareSides(looks).rules.map(({ rule, figures }) => [rule, figures.alike, figures.compared])).toEqual([['Porosity', 0, 6], ['Undercut', 6, 9]])
    expect(compareSides(looks.slice(5)).rules.map(({ rule }) => rule)).toEqual(['Undercut', 'Porosity'])
  })
})

const verdicts = fc.constantFrom<Verdict>('accept', 'reject', 'incomplete')
const findings = fc.constantFrom<FindingVerdict>('accept', 'reject', 'not-measured', 'not-applicable')
const looksOf = fc.array(
  fc.record({
    readers: fc.constantFrom(['a', 'b'], ['b', 'a'], ['a', 'c'], ['c', 'b']),
    first: fc.record({ verdict: verdicts, undercut: findings, widths: fc.array(fc.double({ min: 3, max: 15, noNaN: true }), { maxLength: 5 }) }),
    second: fc.record({ verdict: verdicts, undercut: findings, widths: fc.array(fc.double({ min: 3, max: 15, noNaN: true }), { maxLength: 5 }) }),
  }), { maxLength: 40 },
).map((rows) => rows.map(({ readers: [one = 'a', other = 'b'], first, second }, i): TwoLooks => ({ couponId: String(i), first: look(one, first), second: look(other, second) })))

describe('the report', () => {
  const turned = (looks: readonly TwoLooks[]): TwoLooks[] => looks.map(({ couponId, first, second }) => ({ couponId, first: second, second: first }))
  const near = (found: unknown): number[] => everyNumber(found).map((value) => Math.round(value * 1e7) / 1e7)

  it('does not hang on the order of coupons, nor on who happened to look first', () => {
    fc.assert(fc.property(looksOf, (looks) => {
      const report = agreementReport(looks, null)
      for (const other of [agreementReport([...looks].reverse(), null), agreementReport(turned(looks), null)]) {
        const withoutSides = ({ all, pairs, leanings }: typeof report) => [
          all.verdicts.share, all.verdicts.ac1, all.verdicts.kappa, all.verdicts.leftOut, all.rules.map(({ figures: { compared, alike, ac1, kappa } }) => [compared, alike, ac1, kappa]),
          pairs.map((each) => [each.coupons, each.verdicts.ac1, each.verdicts.kappa, each.widths]), leanings.looked, leanings.byChance, leanings.found.map(({ p }) => p),
        ]
        expect(near(withoutSides(other))).toEqual(near(withoutSides(report)))
        expect(other.pairs.map(({ readerIds }) => readerIds)).toEqual(report.pairs.map(({ readerIds }) => readerIds))
      }
    }))
  })

  it('counts every coupon in one pair, and turns bias round when the readers change places', () => {
    fc.assert(fc.property(looksOf, (looks) => {
      const report = agreementReport(looks, null)
      expect(report.pairs.reduce((sum, each) => sum + each.coupons, 0)).toBe(looks.length)
      for (const { readerIds: [one, other] } of report.pairs) {
        const ours = looks.filter(({ first, second }) => [first.readerId, second.readerId].sort().join() === [one, other].sort().join())
        const [there, back] = [compareSides(asSeenBy(one, ours)), compareSides(asSeenBy(other, ours))]
        expect(there.verdicts.alike).toBe(back.verdicts.alike)
        expect(there.verdicts.onlyFirst).toEqual(back.verdicts.onlySecond)
        if (there.widths.found && back.widths.found) {
          expect(there.widths.found.bias.mean).toBeCloseTo(-back.widths.found.bias.mean, 9)
          expect(there.widths.found.limits.low).toBeCloseTo(-back.widths.found.limits.high, 9)
        }
      }
    }))
  })

  it('tells one reader of their own pairs and leanings only', () => {
    const looks = [...times(8, () => pair(look('a'), look('b', { undercut: 'reject' }))), ...times(8, () => pair(look('c', { undercut: 'reject' }), look('b')))]
    const own = agreementReport(looks, 'a')
    expect(own.all.coupons).toBe(8)
    expect(own.pairs.map(({ readerIds }) => readerIds)).toEqual([['a', 'b']])
    expect(own.readers.map(({ readerId }) => readerId)).toEqual(['a'])
    expect(own.leanings.found.map(({ readerId, way }) => [readerId, way])).toEqual([['a', 'accepts']])
    expect(agreementReport(looks, 'nobody').all.coupons).toBe(0)
  })
})

describe('who leans', () => {
  const kind = (reader: string, other: string): TwoLooks => pair(look(reader), look(other, { undercut: 'reject' }))

  it('is told from six coupons all one way, not from five', () => {
    const tells = (n: number) => leaningsOf(['a'], times(n, () => kind('a', n % 2 === 0 ? 'b' : 'c'))).found.length
    expect(tells(5)).toBe(0)
    expect(tells(6)).toBe(1)
  })
  it('names the way, who said the opposite, and how many coupons: nine against one of two others', () => {
    const looks = [...times(5, () => kind('a', 'b')), ...times(4, () => kind('a', 'c')), pair(look('a', { undercut: 'reject' }), look('d')), ...times(20, () => pair(look('b'), look('a')))]
    expect(leaningsOf(['a'], looks)).toMatchObject({
      looked: 1, found: [{ readerId: 'a', subject: 'Undercut', way: 'accepts', otherIds: ['b', 'c'], parted: 10, compared: 30 }],
    })
    expect(leaningsOf(['a'], looks).found[0]?.thisWay).toHaveLength(9)
    expect(leaningsOf(['a'], looks).found[0]?.p).toBeCloseTo(22 / 1024, 12)
  })
  it('tells two who part only from each other once, as the one who accepts', () => {
    expect(leaningsOf(['b', 'a'], times(7, () => kind('a', 'b'))).found.map(({ readerId, way }) => [readerId, way])).toEqual([['a', 'accepts']])
  })
  it('is nobody where nobody parted, or they part evenly', () => {
    expect(leaningsOf(['a', 'b'], times(30, () => pair(look('a'), look('b'))))).toEqual({ found: [], looked: 0, byChance: 0 })
    const even = leaningsOf(['a'], [...times(8, () => kind('a', 'b')), ...times(8, () => kind('b', 'a'))])
    expect(even.found).toEqual([])
    expect(even.byChance).toBeGreaterThan(0.01)
  })
})

describe('widths', () => {
  it('need five coupons that both measured somewhere', () => {
    const measured = (n: number) => times(n, () => pair(look('a', { widths: [8, 9] }), look('b', { widths: [7.5, 8.5, 9.5] })))
    expect(widthBias([...measured(4), pair(look('a', { widths: [8] }), look('b'))])).toEqual({ coupons: 4, places: 8, found: null })
    expect(widthBias(measured(5))).toMatchObject({ coupons: 5, places: 10, found: { bias: { mean: 0.5, low: 0.5, high: 0.5 }, standardDeviation: 0, limits: { low: 0.5, high: 0.5 } } })
  })
})

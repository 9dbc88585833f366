// The Wilson interval is held elsewhere to published values; here the interval of 8 of 10 (0.490 to 0.943, Wilson 1927, as R's
// prop.test(8, 10, correct = FALSE) gives it, from memory) only shows that it is the one used.
import { describe, expect, it } from 'vitest'
import { passRate, passRates, type CouponCount, type PassRateInput, type TestCount } from '@/lib/reports/pass-rates'
import { passRatesTable } from '@/lib/reports/pass-rates-table'
import { passRatesAnswer, rateNote } from '@/lib/reports/pass-rates-words'
import { countText, shareText } from '@/lib/reports/share-text'

const [spring, fall] = [{ id: 't1', name: 'Spring' }, { id: 't2', name: 'Fall' }]
const coupons = (classId: string, exerciseId: string, accepted: number, rejected: number, incomplete = 0, uninspected = 0): CouponCount =>
  ({ classId, exerciseId, accepted, rejected, incomplete, uninspected })
const tests = (classId: string, exerciseId: string, passed: number, attempts: number): TestCount => ({ classId, exerciseId, passed, attempts })

const input: PassRateInput = {
  classes: [{ id: 'stick', name: 'Stick', term: fall }, { id: 'wire', name: 'Wire', term: fall }, { id: 'before', name: 'Stick', term: spring }],
  exerciseTitles: new Map([['e2', '2F tee'], ['e10', '10 in strip'], ['e1', '1F lap']]),
  coupons: [coupons('stick', 'e1', 8, 2, 3, 1), coupons('stick', 'e2', 2, 2), coupons('wire', 'e10', 30, 10, 0, 5), coupons('before', 'e1', 1, 9)],
  tests: [tests('stick', 'e1', 6, 8), tests('before', 'e2', 1, 3)],
  firstTests: [tests('stick', 'e1', 4, 5), tests('before', 'e2', 0, 2)],
}

describe('a pass rate', () => {
  it('is passes of those judged, with the 95 % Wilson interval', () => {
    expect(passRate(8, 10).share).toEqual({ rate: 0.8, low: expect.closeTo(0.4902, 4) as number, high: expect.closeTo(0.9433, 4) as number })
  })

  it.each([[0, 0], [1, 1], [4, 4]])('is only a count at %i of %i: too few to compare', (passed, n) => {
    expect(passRate(passed, n)).toEqual({ passed, n, share: null })
  })

  it('is said from five on', () => {
    expect(passRate(5, 5).share).toMatchObject({ rate: 1, high: 1 })
  })

  it.each([[3, 2], [-1, 5], [1.5, 5]])('refuses %d of %d', (passed, n) => {
    expect(() => passRate(passed, n)).toThrow(RangeError)
  })
})

describe('pass rates of a program', () => {
  it('count accepted of accepted and rejected, and what was incomplete or not inspected apart', () => {
    const { overall } = passRates(input, fall.id)
    expect(overall).toMatchObject({ coupons: { passed: 40, n: 54 }, incomplete: 3, uninspected: 6, tests: { passed: 6, n: 8 }, firstTests: { passed: 4, n: 5 } })
  })

  it('show one term and leave the other out, but for the comparison of terms', () => {
    const rates = passRates(input, spring.id)
    expect(rates.byClass.map(({ key }) => key)).toEqual(['before'])
    expect(rates.byTerm.map(({ term, coupons: { passed, n } }) => [term, passed, n])).toEqual([['Fall', 40, 54], ['Spring', 1, 10]])
  })

  it('show every term where none is chosen, an exercise once for each term it was practised in', () => {
    const rates = passRates(input, null)
    expect(rates.term).toBeNull()
    expect(rates.overall.coupons).toMatchObject({ passed: 41, n: 64 })
    expect(rates.byExercise.map(({ exercise, term, coupons: { n } }) => [exercise, term, n])).toEqual([
      ['1F lap', 'Fall', 10], ['1F lap', 'Spring', 10], ['2F tee', 'Fall', 4], ['2F tee', 'Spring', 0], ['10 in strip', 'Fall', 40],
    ])
  })

  it('sort by name, never by rate', () => {
    expect(passRates(input, fall.id).byClass.map(({ className }) => className)).toEqual(['Stick', 'Wire'])
  })

  it('add up: exercises to their class, classes to the whole', () => {
    const { overall, byClass } = passRates(input, null)
    for (const each of byClass) expect(each.exercises.reduce((sum, { coupons: { n } }) => sum + n, 0)).toBe(each.coupons.n)
    expect(byClass.reduce((sum, { coupons: { n } }) => sum + n, 0)).toBe(overall.coupons.n)
  })

  it('say nothing where nothing was inspected, and do not divide by it', () => {
    const rates = passRates({ ...input, coupons: [], tests: [], firstTests: [] }, fall.id)
    expect(rates.overall.coupons).toEqual({ passed: 0, n: 0, share: null })
    expect(rates.byExercise).toEqual([])
  })

  it('refuse a count of an exercise without a title', () => {
    expect(() => passRates({ ...input, exerciseTitles: new Map() }, null)).toThrow('has no title')
  })
})

describe('pass rates in words', () => {
  it('give the answer first, then what is counted apart, then tests', () => {
    expect(passRatesAnswer(passRates(input, fall.id), 'en')).toEqual([
      '74 % of the 54 coupons inspected in Fall were accepted (61 % to 84 %).',
      '3 more were incomplete and 6 have not been looked at by an instructor. They count neither way.',
      '75 % of 8 tests were passed (41 % to 93 %).',
      '80 % of 5 first tests of an exercise were passed (38 % to 96 %).',
    ])
  })

  it('give counts where there are too few', () => {
    expect(passRatesAnswer(passRates({ ...input, coupons: [coupons('stick', 'e1', 1, 1)] }, fall.id), 'en')[0])
      .toBe('1 of the 2 coupons inspected in Fall were accepted: too few to say a rate.')
    expect(passRatesAnswer(passRates({ ...input, coupons: [], tests: [], firstTests: [] }, null), 'es').slice(0, 1)).toEqual(['No se ha inspeccionado ninguna probeta en todos los periodos.'])
  })

  it('say beside a count that it is too small, and what is not in it', () => {
    expect(rateNote(passRate(2, 4), { incomplete: 1, uninspected: 0 }, 'en')).toBe('too few to compare, 1 incomplete')
    expect(rateNote(passRate(5, 9), { incomplete: 0, uninspected: 0 }, 'en')).toBe('')
    expect(rateNote(passRate(0, 0), null, 'en')).toBe('')
  })

  it.each([[0, '0 %'], [0.004, '<1 %'], [0.634, '63 %'], [0.997, '>99 %'], [1, '100 %']])('write a share of %d as %s', (share, text) => {
    expect(shareText(share)).toBe(text)
  })

  it('refuse a share that is none, and group thousands', () => {
    expect(() => shareText(Number.NaN)).toThrow(RangeError)
    expect(countText(1912, 'en')).toBe('1,912')
  })
})

describe('pass rates as a table for a file', () => {
  const rates = passRates(input, fall.id)
  const [header = [], ...rows] = passRatesTable(rates)
  const at = (column: string): number => header.indexOf(column)

  it('hold every group of the screen three times, each row as long as the header', () => {
    const groups = 1 + rates.byTerm.length + rates.byClass.length + rates.byClass.flatMap(({ exercises }) => exercises).length + rates.byExercise.length
    expect(rows).toHaveLength(3 * groups)
    expect(rows.every((row) => row.length === header.length)).toBe(true)
  })

  it('hold the numbers of the screen', () => {
    const stick = rows.find((row) => row[at('group')] === 'class' && row[at('class')] === 'Stick')
    expect(stick?.slice(at('counted'))).toEqual(['coupons accepted by the instructor', 10, 14, 0.7143, 0.4535, 0.8828, 3, 1, null])
  })

  it('leave the rate of a small group empty, with the reason', () => {
    const tee = rows.find((row) => row[at('group')] === 'exercise' && row[at('exercise')] === '2F tee')
    expect(tee?.slice(at('passed'))).toEqual([2, 4, null, null, null, 0, 0, 'too few to compare'])
  })
})

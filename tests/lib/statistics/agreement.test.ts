import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cohensKappa, gwetAc1, percentAgreement, weightedKappa } from '@/lib/statistics/agreement'
import { fleissKappa, gwetAc1OfMany } from '@/lib/statistics/agreement-of-many'
import { krippendorffAlpha } from '@/lib/statistics/krippendorff'
import { everyNumber } from '../../support/every-number'

fc.configureGlobal({ seed: 43, numRuns: 300 })

const cell = fc.integer({ min: 0, max: 60 })
const tables = fc.integer({ min: 2, max: 5 })
  .chain(q => fc.array(fc.array(cell, { minLength: q, maxLength: q }), { minLength: q, maxLength: q }))
  .filter(table => new Set(table.flatMap((row, i) => row.flatMap((count, j) => (count > 0 ? [i, j] : [])))).size > 1)
const turned = (table: number[][]) => table.map((_, j) => table.map(row => row[j] ?? 0))

describe('two inspectors', () => {
  test('values stay within −1 to 1 and are finite with a standard error of 0 or more', () => {
    fc.assert(fc.property(tables, table => {
      for (const { value, standardError } of [cohensKappa(table), weightedKappa(table, 'linear'), weightedKappa(table, 'quadratic'), gwetAc1(table)]) {
        expect(value).toBeGreaterThanOrEqual(-1 - 1e-12)
        expect(value).toBeLessThanOrEqual(1)
        expect(standardError).toBeGreaterThanOrEqual(0)
        expect(standardError).toBeLessThan(Infinity)
      }
    }))
  })

  test('it does not matter who is called the first inspector', () => {
    fc.assert(fc.property(tables, table => {
      for (const measure of [cohensKappa, gwetAc1, (t: number[][]) => weightedKappa(t, 'linear')]) {
        expect(measure(turned(table)).value).toBeCloseTo(measure(table).value, 10)
        expect(measure(turned(table)).standardError).toBeCloseTo(measure(table).standardError, 8)
      }
    }))
  })

  test('perfect agreement is 1 with no error', () => {
    for (const measure of [cohensKappa, gwetAc1]) {
      expect(measure([[10, 0], [0, 4]]).value).toBeCloseTo(1, 12)
      expect(measure([[10, 0], [0, 4]]).standardError).toBeCloseTo(0, 12)
    }
  })

  test('with two verdicts both weightings are plain kappa', () => {
    const table = [[40, 5], [3, 12]]
    expect(weightedKappa(table, 'linear')).toEqual(cohensKappa(table))
    expect(weightedKappa(table, 'quadratic')).toEqual(cohensKappa(table))
  })

  test('when nearly all pass, kappa collapses where AC1 does not', () => {
    const table = [[90, 4], [4, 2]]
    expect(percentAgreement(table)).toBeCloseTo(0.92, 12)
    expect(cohensKappa(table).value).toBeLessThan(0.3)
    expect(gwetAc1(table).value).toBeGreaterThan(0.9)
  })

  test('when all pass, kappa refuses and AC1 is 1', () => {
    expect(() => cohensKappa([[20, 0], [0, 0]])).toThrow(RangeError)
    expect(gwetAc1([[20, 0], [0, 0]]).value).toBe(1)
  })
})

describe('several graders', () => {
  const verdicts = fc.array(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 4, maxLength: 4 }), { minLength: 2, maxLength: 25 })
    .filter(units => new Set(units.flat()).size > 1)
  const counted = (units: number[][]) => units.map(unit => [0, 1, 2].map(k => unit.filter(verdict => verdict === k).length))

  test('the order of coupons does not matter', () => {
    fc.assert(fc.property(verdicts, units => {
      const [forward, backward] = [counted(units), counted([...units].reverse())]
      expect(fleissKappa(backward).value).toBeCloseTo(fleissKappa(forward).value, 10)
      expect(gwetAc1OfMany(backward).value).toBeCloseTo(gwetAc1OfMany(forward).value, 10)
      expect(gwetAc1OfMany(backward).standardError).toBeCloseTo(gwetAc1OfMany(forward).standardError, 10)
      expect(everyNumber([fleissKappa(forward), gwetAc1OfMany(forward)]).every(Number.isFinite)).toBe(true)
    }))
  })

  test('without gaps, nominal alpha is Fleiss\' kappa corrected for few ratings', () => {
    // α = 1 − (1 − κ)(N − 1)/N with N ratings in all: both compare the same pairs, α without putting a rating back before drawing the second
    fc.assert(fc.property(verdicts, units => {
      const ratings = [0, 1, 2, 3].map(grader => units.map(unit => unit[grader] ?? null))
      const all = units.length * 4
      const { value } = fleissKappa(counted(units))
      expect(krippendorffAlpha(ratings, 'nominal')).toBeCloseTo(1 - (1 - value) * (all - 1) / all, 9)
    }))
  })

  test('AC1 for two graders by coupon equals AC1 of their table', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })), { minLength: 2, maxLength: 40 }), pairs => {
      const table = [0, 1, 2].map(i => [0, 1, 2].map(j => pairs.filter(([a, b]) => a === i && b === j).length))
      const counts = pairs.map(([a, b]) => [0, 1, 2].map(k => Number(a === k) + Number(b === k)))
      expect(gwetAc1OfMany(counts).value).toBeCloseTo(gwetAc1(table).value, 10)
      expect(gwetAc1OfMany(counts).standardError).toBeCloseTo(gwetAc1(table).standardError * Math.sqrt(pairs.length / (pairs.length - 1)), 8)
    }))
  })
})

describe('alpha', () => {
  const rating = fc.option(fc.integer({ min: 1, max: 9 }), { nil: null })
  const gappy = fc.array(fc.array(rating, { minLength: 8, maxLength: 8 }), { minLength: 3, maxLength: 5 })
    .filter(ratings => {
      const paired = ratings[0]?.map((_, u) => ratings.flatMap(row => row[u] ?? [])).filter(unit => unit.length > 1) ?? []
      return new Set(paired.flat()).size > 1
    })

  test('does not change with the order of graders or coupons, is at most 1, never NaN', () => {
    fc.assert(fc.property(gappy, fc.constantFrom('nominal', 'ordinal', 'interval', 'ratio'), (ratings, level) => {
      const alpha = krippendorffAlpha(ratings, level)
      expect(alpha).toBeLessThanOrEqual(1)
      expect(krippendorffAlpha([...ratings].reverse(), level)).toBeCloseTo(alpha, 9)
      expect(krippendorffAlpha(ratings.map(row => [...row].reverse()), level)).toBeCloseTo(alpha, 9)
    }))
  })

  test('interval alpha does not care for unit or origin, ratio alpha not for the unit', () => {
    fc.assert(fc.property(gappy, ratings => {
      const changed = (f: (x: number) => number) => ratings.map(row => row.map(value => (value === null ? null : f(value))))
      expect(krippendorffAlpha(changed(x => 25.4 * x + 3), 'interval')).toBeCloseTo(krippendorffAlpha(ratings, 'interval'), 9)
      expect(krippendorffAlpha(changed(x => 25.4 * x), 'ratio')).toBeCloseTo(krippendorffAlpha(ratings, 'ratio'), 9)
      expect(krippendorffAlpha(changed(x => x ** 3), 'ordinal')).toBeCloseTo(krippendorffAlpha(ratings, 'ordinal'), 9)
    }))
  })

  test('a coupon only one grader judged changes nothing', () => {
    const ratings = [[1, 2, 3], [1, 2, 2]]
    expect(krippendorffAlpha([[1, 2, 3, 9], [1, 2, 2, null]], 'interval')).toBe(krippendorffAlpha(ratings, 'interval'))
  })
})

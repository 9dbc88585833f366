import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { paperFor } from '@/lib/reports/paper'
import {
  acceptedOfLastTen, comparedBoth, defectsThenAndNow, everyKth, LEAST_EXERCISES, medianMark, MOST_EXERCISES, summaryRoom, type CountedCoupon, type OnTheSheet,
} from '@/lib/reports/progress-summary'
import type { Verdict } from '@/lib/scoring/types'

const coupon = (number: number, verdict: Verdict | null, mark: number | null = null, selfVerdict: Verdict | null = null): CountedCoupon => ({ number, verdict, mark, selfVerdict })

describe('accepted of the last ten', () => {
  it('counts the latest ten that were accepted or rejected, in the order of their numbers', () => {
    const coupons = Array.from({ length: 12 }, (_, i) => coupon(12 - i, i < 4 ? 'reject' : 'accept')) // 9 to 12 rejected
    expect(acceptedOfLastTen(coupons)).toEqual({ accepted: 6, of: 10 })
  })

  it('passes over coupons without a verdict that decides', () => {
    expect(acceptedOfLastTen([coupon(1, 'accept'), coupon(2, 'incomplete'), coupon(3, null), coupon(4, 'reject')])).toEqual({ accepted: 1, of: 2 })
  })

  it('is nothing, not 0 of 0, before the first', () => {
    expect(acceptedOfLastTen([coupon(1, null)])).toBeNull()
  })
})

describe('the median mark', () => {
  it.each([[[70], 70], [[60, 90], 75], [[95, 60, 70], 70]])('of %j is %d', (marks, middle) => {
    expect(medianMark(marks.map((mark, i) => coupon(i + 1, 'accept', mark)))).toBe(middle)
  })

  it('leaves out coupons without a mark: no mark is not 0', () => {
    expect(medianMark([coupon(1, 'incomplete', null), coupon(2, 'accept', 90)])).toBe(90)
    expect(medianMark([coupon(1, null)])).toBeNull()
  })
})

it('compares only coupons that both decided on', () => {
  expect(comparedBoth([
    coupon(1, 'accept', null, 'accept'), coupon(2, 'reject', null, 'accept'), coupon(3, 'accept', null, 'incomplete'), coupon(4, 'incomplete', null, 'accept'),
    coupon(5, null, null, 'accept'), coupon(6, 'accept'),
  ])).toEqual([{ self: 'accept', instructor: 'accept' }, { self: 'accept', instructor: 'reject' }])
})

describe('defects then and now', () => {
  const series = (n: number, rulesOf: (number: number) => string[]) => Array.from({ length: n }, (_, i) => ({ number: i + 1, rules: rulesOf(i + 1) }))

  it('counts coupons among the first ten and the last ten', () => {
    const found = defectsThenAndNow(series(30, (n) => (n <= 8 ? ['undercut'] : n > 28 ? ['undercut', 'leg-size'] : n === 15 ? ['porosity'] : [])), 5)
    expect(found).toEqual({ each: 10, rows: [{ rule: 'undercut', first: 8, last: 2 }, { rule: 'leg-size', first: 0, last: 2 }] })
  })

  it('halves a shorter series, so that no coupon stands on both sides', () => {
    expect(defectsThenAndNow(series(7, () => ['fusion']), 5)).toEqual({ each: 3, rows: [{ rule: 'fusion', first: 3, last: 3 }] })
  })

  it('says nothing of fewer than four coupons', () => {
    expect(defectsThenAndNow(series(3, () => ['fusion']), 5)).toBeNull()
    expect(defectsThenAndNow(series(4, () => []), 5)).toEqual({ each: 2, rows: [] })
  })

  it('names no more rules than asked, and does not care for the order given', () => {
    const coupons = series(20, (n) => ['a', 'b', 'c'].slice(0, (n % 3) + 1))
    expect(defectsThenAndNow(coupons, 2)?.rows.map(({ rule }) => rule)).toEqual(['a', 'b'])
    expect(defectsThenAndNow([...coupons].reverse(), 2)).toEqual(defectsThenAndNow(coupons, 2))
  })
})

describe('every k-th', () => {
  it('shows all where there is room', () => {
    expect(everyKth([1, 2, 3], 3)).toEqual({ k: 1, shown: [1, 2, 3] })
  })

  it('keeps the last and steps back from it', () => {
    expect(everyKth([1, 2, 3, 4, 5, 6, 7, 8], 3)).toEqual({ k: 3, shown: [2, 5, 8] })
  })

  it('never shows more than there is room for, always shows the last, and steps evenly', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 20 }), (length, most) => {
      const series = Array.from({ length }, (_, i) => i)
      const { k, shown } = everyKth(series, most)
      expect(shown.length).toBeLessThanOrEqual(most)
      expect(shown.at(-1)).toBe(length - 1)
      shown.slice(1).forEach((at, i) => expect(at - (shown[i] ?? 0)).toBe(k))
    }))
  })

  it('shows nothing of nothing, and refuses to show in no room', () => {
    expect(everyKth([], 3)).toEqual({ k: 1, shown: [] })
    expect(() => everyKth([1], 0)).toThrow(RangeError)
  })
})

describe('room on the sheet', () => {
  const sheet: OnTheSheet = { paper: 'letter', exercises: 2, longTitles: 0, answerLines: 3, noteLines: 2, footLines: 3, defects: 5, coupons: 30, ownLooks: false }

  it('leaves less to the drawings the more is written', () => {
    const [least, most] = [summaryRoom({ ...sheet, exercises: 1 }), summaryRoom({ ...sheet, exercises: MOST_EXERCISES })]
    expect(least.strips).toBeGreaterThan(most.strips)
    expect(least.trackHeight).toBeGreaterThan(most.trackHeight)
    expect(summaryRoom({ ...sheet, ownLooks: true, exercises: 5 }).strips).toBeLessThan(summaryRoom({ ...sheet, exercises: 5 }).strips)
  })

  it('puts the defects under the strips on a crowded sheet, and says when even that does not fit', () => {
    expect(summaryRoom(sheet)).toMatchObject({ crowded: false, fits: true, defects: 5 })
    expect(summaryRoom({ ...sheet, exercises: 9, noteLines: 4 })).toMatchObject({ crowded: true, defects: 2 })
    expect(summaryRoom({ ...sheet, exercises: 10, longTitles: 10, noteLines: 6 }).fits).toBe(false)
    expect(summaryRoom({ ...sheet, exercises: LEAST_EXERCISES, longTitles: LEAST_EXERCISES, noteLines: 6 }).fits).toBe(true)
  })

  it('draws few coupons at their full size', () => {
    expect(summaryRoom({ ...sheet, exercises: 8, coupons: 3 }).compact).toBe(false)
    expect(summaryRoom({ ...sheet, exercises: 8, coupons: 30 }).compact).toBe(true)
  })

  it('has more of it on A4, which is longer', () => {
    expect(summaryRoom({ ...sheet, exercises: 6, paper: 'a4' }).trackHeight).toBeGreaterThan(summaryRoom({ ...sheet, exercises: 6 }).trackHeight)
  })
})

it.each([['a4', 'in', 'a4'], ['letter', 'mm', 'letter'], [undefined, 'in', 'letter'], [undefined, 'mm', 'a4'], ['legal', 'in', 'letter']] as const)(
  'lays %s out for a reader in %s on %s', (asked, units, paper) => {
    expect(paperFor(asked, units)).toBe(paper)
  },
)

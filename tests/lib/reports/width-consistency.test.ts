import { describe, expect, it } from 'vitest'
import { explainConsistency } from '@/lib/reports/explain-consistency'
import { widthConsistency, type WidthCoupon } from '@/lib/reports/width-consistency'

const spread = (number: number, by: number): WidthCoupon => ({ number, widthsMm: [8 - by, 8, 8 + by, 8 - by, 8 + by, 8] })
const series = (bys: readonly number[]): WidthCoupon[] => bys.map((by, i) => spread(i + 1, by))

describe('how even the beads are', () => {
  it('pools the variation within coupons, not between them', () => {
    // s of 8 ± 0.8 at four of six stations: √(4 · 0.64/5) = 0.7155; over 8 it is 0.0894 (by hand). Another size of bead changes nothing.
    const { all } = widthConsistency([spread(1, 0.8), { number: 2, widthsMm: spread(2, 0.8).widthsMm.map((width) => width * 2) }])
    expect(all?.value).toBeCloseTo(0.0894, 4)
    expect(all).toMatchObject({ coupons: 2, stations: 12 })
  })
  it('calls a change clear only when the intervals do not touch', () => {
    expect(widthConsistency(series([1.6, 1.5, 1.6, 1.6, 0.2, 0.2, 0.3, 0.2])).halves?.trend).toBe('evener')
    expect(widthConsistency(series([0.2, 0.2, 0.3, 0.2, 1.6, 1.5, 1.6, 1.6])).halves?.trend).toBe('less-even')
    expect(widthConsistency(series([0.5, 0.6, 0.5, 0.6, 0.5, 0.6])).halves?.trend).toBe('no-clear-change')
  })
  it('says not enough yet with fewer than ten widths', () => {
    const few = widthConsistency([spread(1, 0.5)])
    expect(few).toEqual({ all: null, halves: null })
    expect(explainConsistency(few, 'en')).toEqual(['Not enough yet: it takes ten measured widths.'])
  })
  it('leaves a coupon with one width or none out', () => expect(widthConsistency([...series([0.5, 0.5]), { number: 9, widthsMm: [3] }, { number: 10, widthsMm: [] }]).all).toMatchObject({ coupons: 2 }))
  it('is said in words', () => {
    // Each coupon varies by its spread · √(4/5)/8; the root of the mean square over the eight is 0.1259 (by hand).
    const words = explainConsistency(widthConsistency(series([1.6, 1.5, 1.6, 1.6, 0.2, 0.2, 0.3, 0.2])), 'en')
    expect(words[0]).toMatch(/^Within one coupon your widths vary by 13 % of their mean \(between \d+ % and \d+ %, from 48 widths on 8 coupons\)\.$/)
    expect(words[1]).toMatch(/^The last half of your coupons is evener than the first: \d % against \d+ %\.$/)
  })
})

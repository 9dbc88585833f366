import { describe, expect, it } from 'vitest'
import { drawMargins, marginsByRule, type MarginCoupon } from '@/lib/reports/margins-over-time'
import type { Finding } from '@/lib/scoring/types'

const finding = (rule: string, standardMargin?: number): Finding => ({
  rule, verdict: standardMargin !== undefined && standardMargin < 0 ? 'reject' : 'accept', measured: 1, limit: { min: null, max: 1 }, unit: 'mm', margin: standardMargin ?? null,
  closeCall: false, where: null, source: { title: 'A test rule', clause: null, status: 'common-practice' }, ...(standardMargin !== undefined && { standardMargin }),
})
const coupons: MarginCoupon[] = [
  { number: 2, findings: [finding('undercut', -0.5), finding('leg', 0.4), finding('cracks')] },
  { number: 1, findings: [finding('undercut', 1), finding('leg', 1.5), finding('cracks')] },
  { number: 3, findings: [finding('leg', 0.1)] },
  { number: 4, findings: [finding('undercut', 3), finding('leg', 0.2)] },
]
const frame = { width: 100, height: 40, left: 0, right: 90, top: 0, bottom: 40 }

describe('margins over coupons', () => {
  const rules = marginsByRule(coupons)
  it('lists the rules with a margin, those outside most often first', () => {
    expect(rules.map(({ rule, out, measured }) => [rule, out, measured])).toEqual([['undercut', 1, 3], ['leg', 0, 4]])
    expect(rules[0]?.last.standardMargin).toBe(3)
  })
  it('leaves a gap where a rule was not measured: it is never on the limit', () => {
    expect(rules[0]?.points.map(({ margin }) => margin)).toEqual([1, -0.5, null, 3])
    const drawing = drawMargins(rules[0]!, { first: 1, last: 4 }, frame)
    expect(drawing.points.map(({ coupon }) => coupon)).toEqual([1, 2, 4])
    expect(drawing.lines).toEqual(['M0,10L30,25'])
  })
  it('draws inside above the limit, and far margins at the edge', () => {
    const drawing = drawMargins(rules[0]!, { first: 1, last: 4 }, frame)
    expect(drawing.limitY).toBe(20)
    expect(drawing.points.map(({ x, y }) => [x, y])).toEqual([[0, 10], [30, 25], [90, 0]])
  })
  it('refuses a number twice', () => expect(() => marginsByRule([coupons[0]!, coupons[0]!])).toThrow(RangeError))
  it('is empty without coupons', () => expect(marginsByRule([])).toEqual([]))
})

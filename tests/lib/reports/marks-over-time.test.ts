import { describe, expect, it } from 'vitest'
import { drawMarksOverTime, type CouponMark } from '@/lib/reports/marks-over-time'

const frame = { width: 120, height: 120, left: 10, right: 110, top: 10, bottom: 110 }
const accepted = (coupon: number, mark: number): CouponMark => ({ coupon, mark, verdict: 'accept' })
const open = (coupon: number): CouponMark => ({ coupon, mark: null, verdict: 'incomplete' })

describe('marks over time', () => {
  it('run from the first coupon at the left to the last at the right, 0 at the foot and 100 at the top', () => {
    expect(drawMarksOverTime([accepted(3, 100), accepted(1, 0), accepted(2, 50)], frame).line).toBe('M10,110L60,60L110,10')
  })

  it('keep an incomplete coupon off the line: no mark is not a mark of 0', () => {
    const chart = drawMarksOverTime([accepted(1, 50), open(2), accepted(3, 50)], frame)
    expect(chart.line).toBe('M10,60L110,60')
    expect(chart.points[1]).toMatchObject({ coupon: 2, mark: null, x: 60 })
  })

  it('draw no line through a single mark', () => {
    expect(drawMarksOverTime([accepted(1, 50), open(2)], frame).line).toBeNull()
  })

  it.each([
    ['no coupons', []],
    ['a coupon twice', [accepted(1, 50), accepted(1, 60)]],
    ['a mark over 100', [accepted(1, 101)]],
    ['a mark that is no number', [accepted(1, Number.NaN)]],
    ['coupon 0', [accepted(0, 50)]],
  ])('refuse %s', (_, coupons) => {
    expect(() => drawMarksOverTime(coupons, frame)).toThrow(RangeError)
  })
})

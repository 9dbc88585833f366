import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceText, drawReadinessTrack, heatStep, type TrackPoint } from '@/lib/reports/readiness-track'

const frame = { width: 120, height: 120, left: 10, right: 110, top: 10, bottom: 110 }
const known = (coupon: number, probability: number, low = probability, high = probability): TrackPoint => ({ coupon, estimate: { probability, low, high } })
const unknown = (coupon: number): TrackPoint => ({ coupon, estimate: null })

describe('the shade of a chance', () => {
  it.each([
    [null, 0], [0, 1], [0.344, 1], [0.345, 2], [0.35, 2], [0.5449, 2], [0.55, 3], [0.6949, 3], [0.7, 4], [0.8449, 4], [0.85, 5], [1, 5],
  ] as const)('of %s is step %s', (probability, step) => {
    expect(heatStep(probability)).toBe(step)
  })

  it.each([-0.01, 1.01, Number.NaN, Infinity])('of %s does not exist', (probability) => {
    expect(() => heatStep(probability)).toThrow(RangeError)
  })

  it('never falls as the chance rises', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (a, b) => {
      expect(heatStep(Math.min(a, b))).toBeLessThanOrEqual(heatStep(Math.max(a, b)))
    }))
  })
})

it('never says that a test is certain either way', () => {
  expect([0, 0.004, 0.72, 0.996, 1].map(chanceText)).toEqual(['0.01', '0.01', '0.72', '0.99', '0.99'])
})

describe('a readiness track', () => {
  it('puts the first coupon at the left edge, the last at the right, and 0 and 1 at the foot and the top', () => {
    const track = drawReadinessTrack({ points: [known(1, 0), known(2, 0.5), known(3, 1)], tests: [], threshold: 0.65 }, frame)
    expect(track.lines).toEqual(['M10,110L60,60L110,10'])
    expect(track.threshold.y).toBe(45)
  })

  it('draws the interval as one closed shape around the line', () => {
    const track = drawReadinessTrack({ points: [known(1, 0.5, 0.25, 0.75), known(2, 0.5, 0.4, 0.6)], tests: [], threshold: 0.5 }, frame)
    expect(track.bands).toEqual(['M10,35L110,50L110,70L10,85Z'])
  })

  it('draws nothing where there was no estimate, and breaks the line there', () => {
    const track = drawReadinessTrack({ points: [unknown(1), unknown(2), known(3, 0.5), unknown(4), known(5, 0.6)], tests: [], threshold: 0.5 }, frame)
    expect(track.lines).toHaveLength(2)
    expect(track.tooFew).toEqual({ from: 10, to: 60 })
    expect(track.points.filter((point) => point.y === null).map((point) => point.coupon)).toEqual([1, 2, 4])
  })

  it('has no line, and says so, when there are too few coupons for any estimate', () => {
    const track = drawReadinessTrack({ points: [unknown(1), unknown(2)], tests: [], threshold: 0.5 }, frame)
    expect(track.lines).toEqual([])
    expect(track.last).toBeNull()
    expect(track.tooFew).toEqual({ from: 10, to: 110 })
  })

  it('stands a single coupon in the middle', () => {
    expect(drawReadinessTrack({ points: [known(7, 0.5)], tests: [], threshold: 0.5 }, frame).last?.x).toBe(60)
  })

  it('makes room for a test taken after the last coupon', () => {
    const track = drawReadinessTrack({ points: [known(1, 0.5), known(2, 0.5)], tests: [{ afterCoupon: 3, passed: true }], threshold: 0.5 }, frame)
    expect(track.tests[0]?.x).toBe(110)
    expect(track.last?.x).toBe(60)
  })

  it('does not mind the order the coupons come in', () => {
    const points = [known(1, 0.2), known(2, 0.4), unknown(3), known(4, 0.6)]
    const straight = drawReadinessTrack({ points, tests: [], threshold: 0.5 }, frame)
    expect(drawReadinessTrack({ points: [...points].reverse(), tests: [], threshold: 0.5 }, frame)).toEqual(straight)
  })

  it('labels the first and last coupon and no more than eight in all', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 5000 }), (first, more) => {
      const { xTicks } = drawReadinessTrack({ points: [unknown(first), unknown(first + more)], tests: [], threshold: 0.5 }, frame)
      expect(xTicks.length).toBeLessThanOrEqual(8)
      expect(xTicks[0]?.label).toBe(String(first))
      expect(xTicks.at(-1)?.label).toBe(String(first + more))
    }))
  })

  it.each([
    ['no coupons', [], 0.5],
    ['a coupon twice', [known(1, 0.5), known(1, 0.6)], 0.5],
    ['coupon 0', [known(0, 0.5)], 0.5],
    ['half a coupon', [known(1.5, 0.5)], 0.5],
    ['a chance over 1', [known(1, 1.2)], 0.5],
    ['an interval beside its chance', [known(1, 0.5, 0.6, 0.7)], 0.5],
    ['a threshold that is no number', [known(1, 0.5)], Number.NaN],
  ])('refuses %s', (_, points, threshold) => {
    expect(() => drawReadinessTrack({ points, tests: [], threshold })).toThrow(RangeError)
  })
})

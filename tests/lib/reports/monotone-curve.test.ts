import { curveMonotoneX, line } from 'd3-shape'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { monotoneCurve, type CurvePoint } from '@/lib/reports/monotone-curve'

const points = fc
  .array(fc.record({ step: fc.double({ min: 1, max: 50, noNaN: true }), y: fc.double({ min: -20, max: 20, noNaN: true }) }), { minLength: 1, maxLength: 12 })
  .map((steps) => steps.reduce<CurvePoint[]>((all, { step, y }) => [...all, { x: (all.at(-1)?.x ?? 0) + step, y }], []))

it('passes through every point', () => {
  fc.assert(fc.property(points, (given) => {
    const curve = monotoneCurve(given)
    for (const { x, y } of given) expect(curve.at(x)).toBeCloseTo(y, 9)
  }))
})

it('stays between the heights of two neighbours', () => {
  fc.assert(fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (given, t) => {
    const curve = monotoneCurve(given)
    given.slice(1).forEach((b, i) => {
      const a = given[i] ?? b
      const y = curve.at(a.x + t * (b.x - a.x))
      expect(y).toBeGreaterThanOrEqual(Math.min(a.y, b.y) - 1e-9)
      expect(y).toBeLessThanOrEqual(Math.max(a.y, b.y) + 1e-9)
    })
  }))
})

// Second opinion: the monotone curve of d3-shape 3, which implements the same paper.
it('draws the same path as d3-shape', () => {
  fc.assert(fc.property(points, (given) => {
    fc.pre(given.length > 2)
    const theirs = line<CurvePoint>((p) => p.x, (p) => p.y).curve(curveMonotoneX)(given) ?? ''
    const numbers = (d: string) => [...d.matchAll(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)].map((match) => Number(match[0]))
    const mine = numbers(monotoneCurve(given).path(0, given.length - 1))
    expect(mine).toHaveLength(numbers(theirs).length)
    numbers(theirs).forEach((value, i) => expect(mine[i]).toBeCloseTo(value, 1))
  }))
})

it('is level beyond its ends', () => {
  const curve = monotoneCurve([{ x: 1, y: 4 }, { x: 2, y: 6 }])
  expect([curve.at(-100), curve.at(100)]).toEqual([4, 6])
})

it.each([
  ['no points', []],
  ['two points at one place', [{ x: 1, y: 1 }, { x: 1, y: 2 }]],
  ['points in the wrong order', [{ x: 2, y: 1 }, { x: 1, y: 2 }]],
  ['a height that is no number', [{ x: 2, y: Number.NaN }]],
])('refuses %s', (_, given) => {
  expect(() => monotoneCurve(given)).toThrow(RangeError)
})

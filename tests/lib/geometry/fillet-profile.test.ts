import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { filletProfile } from '@/lib/geometry/fillet-profile'
import { arcRadius, segmentArea } from '@/lib/geometry/segment'

const leg = fc.double({ min: 3, max: 25, noNaN: true })
/** Legs no more unequal than one to two leave room for a face hollow by a tenth of its width. */
const ratio = fc.double({ min: 0.5, max: 2, noNaN: true })

/** Distances from the root to points along the face, by walking the arc: slow, plain, and written apart from the formulas. */
function walkFace(a: number, b: number, face: number, steps = 4000): { x: number; y: number }[] {
  const width = Math.hypot(a, b)
  const rise = Math.abs(face)
  const radius = (width * width) / (8 * rise) + rise / 2
  return Array.from({ length: steps + 1 }, (_, i) => {
    const along = (i / steps) * width
    const fromMiddle = along - width / 2
    const stand = Math.sqrt(radius * radius - fromMiddle * fromMiddle) - (radius - rise)
    const off = face > 0 ? stand : -stand
    return { x: a - (along * a) / width + (off * b) / width, y: (along * b) / width + (off * a) / width }
  })
}

it('is the plain triangle when the face is flat', () => {
  expect(filletProfile(3, 4, 0)).toEqual({ faceWidthMm: 5, convexityMm: 0, concavityMm: 0, sizeMm: { a: 3, b: 4 }, theoreticalThroatMm: 2.4, actualThroatMm: 2.4, effectiveThroatMm: 2.4, areaMm2: 6 })
})

it('counts no convexity toward size or effective throat, and all of it toward the actual throat of equal legs', () => {
  const round = filletProfile(8, 8, 1.5)
  expect(round.sizeMm).toEqual({ a: 8, b: 8 })
  expect(round.effectiveThroatMm).toBeCloseTo(8 / Math.SQRT2, 12)
  expect(round.actualThroatMm).toBeCloseTo(8 / Math.SQRT2 + 1.5, 12)
  expect(round.convexityMm).toBe(1.5)
})

it('loses a hollow from the throat and takes the size of equal legs from it', () => {
  const hollowed = filletProfile(8, 8, -1)
  expect(hollowed.actualThroatMm).toBeCloseTo(8 / Math.SQRT2 - 1, 12)
  expect(hollowed.effectiveThroatMm).toBe(hollowed.actualThroatMm)
  expect(hollowed.sizeMm.a).toBeCloseTo((8 / Math.SQRT2 - 1) * Math.SQRT2, 6)
  expect(hollowed.sizeMm.b).toBeCloseTo(hollowed.sizeMm.a, 6)
  expect(hollowed.concavityMm).toBe(1)
})

it('finds the shortest way from root to face that a walk along the face finds', () => {
  fc.assert(fc.property(leg, ratio, fc.double({ min: -0.1, max: 0.3, noNaN: true }), (a, times, share) => {
    const b = a * times
    const face = Math.hypot(a, b) * share
    fc.pre(Math.abs(face) > 0.01)
    const shortest = Math.min(...walkFace(a, b, face).map(({ x, y }) => Math.hypot(x, y)))
    expect(filletProfile(a, b, face).actualThroatMm).toBeCloseTo(shortest, 3)
  }))
})

it('encloses the area that a walk along the face encloses', () => {
  fc.assert(fc.property(leg, ratio, fc.double({ min: -0.1, max: 0.3, noNaN: true }), (a, times, share) => {
    const b = a * times
    const face = Math.hypot(a, b) * share
    fc.pre(Math.abs(face) > 1e-4)
    const walk = walkFace(a, b, face)
    const walked = walk.reduce((sum, point, i) => {
      const next = walk[i + 1]
      return next ? sum + (point.x * next.y - next.x * point.y) / 2 : sum
    }, 0)
    expect(filletProfile(a, b, face).areaMm2 / walked).toBeCloseTo(1, 5)
  }))
})

it('gives a hollow weld the largest right triangle that fits, by trying many', () => {
  fc.assert(fc.property(leg, ratio, fc.double({ min: 0.001, max: 0.1, noNaN: true }), (a, times, share) => {
    const b = a * times
    const face = -Math.hypot(a, b) * share
    const { sizeMm } = filletProfile(a, b, face)
    const points = walkFace(a, b, face, 600)
    const isInside = (p: number, q: number): boolean => points.every(({ x, y }) => x / p + y / q >= 1 - 1e-4) && p <= a + 1e-6 && q <= b + 1e-6
    expect(isInside(sizeMm.a, sizeMm.b)).toBe(true)
    for (let p = a * 0.5; p <= a; p += a / 200) {
      const q = Math.min(b, ...points.map(({ x, y }) => (x < p ? y / (1 - x / p) : Infinity)))
      expect(p * q, `legs ${p} and ${q} fit too`).toBeLessThanOrEqual(sizeMm.a * sizeMm.b * (1 + 2e-3))
    }
  }), { numRuns: 40 })
})

it('touches the face with the middle of that triangle’s long side, as the largest one must', () => {
  fc.assert(fc.property(leg, ratio, fc.double({ min: 0.005, max: 0.08, noNaN: true }), (a, times, share) => {
    const b = a * times
    const face = -Math.hypot(a, b) * share
    const { sizeMm: { a: p, b: q } } = filletProfile(a, b, face)
    const nearest = Math.min(...walkFace(a, b, face, 20_000).map(({ x, y }) => Math.hypot(x - p / 2, y - q / 2)))
    expect(nearest / a).toBeLessThan(2e-4)
  }), { numRuns: 30 })
})

it('never gains size, throat or area by getting hollower', () => {
  fc.assert(fc.property(leg, ratio, fc.double({ min: 0.001, max: 0.06, noNaN: true }), (a, times, share) => {
    const b = a * times
    const width = Math.hypot(a, b)
    const [little, much] = [filletProfile(a, b, -width * share), filletProfile(a, b, -width * share * 1.5)]
    expect(much.sizeMm.a * much.sizeMm.b).toBeLessThanOrEqual(little.sizeMm.a * little.sizeMm.b + 1e-6)
    expect(much.effectiveThroatMm).toBeLessThan(little.effectiveThroatMm)
    expect(much.areaMm2).toBeLessThan(little.areaMm2)
  }))
})

describe('the arc', () => {
  it('is a half circle when it rises half its width', () => {
    expect(arcRadius(10, 5)).toBe(5)
    expect(segmentArea(10, 5)).toBeCloseTo((Math.PI * 25) / 2, 9)
  })
  it('runs smoothly from the exact formula into the shallow one', () => {
    expect(segmentArea(10, 0.0010001) / segmentArea(10, 0.0009999)).toBeCloseTo(1.0010001 / 1.0009999, 3)
    expect(segmentArea(10, 0.01)).toBeCloseTo((2 / 3) * 0.1, 6)
    expect(segmentArea(10, 0)).toBe(0)
  })
  it('refuses what is no arc', () => {
    expect(() => segmentArea(0, 1)).toThrow(RangeError)
    expect(() => segmentArea(10, -1)).toThrow(RangeError)
    expect(() => arcRadius(10, 0)).toThrow(RangeError)
  })
})

it('refuses a face that no arc in the corner can have', () => {
  const width = 8 * Math.SQRT2
  expect(() => filletProfile(8, 8, -width * 0.2072)).toThrow(/cut under a toe/)
  expect(filletProfile(8, 8, -width * 0.207).concavityMm).toBeCloseTo(2.342, 3)
  expect(() => filletProfile(8, 8, width * 0.51)).toThrow(/half circle/)
  expect(() => filletProfile(8, 8, Number.NaN)).toThrow(RangeError)
  expect(() => filletProfile(0, 8, 0)).toThrow(RangeError)
})

it('reaches the nearer toe, not the arc, when the face is very round', () => {
  expect(filletProfile(8, 8, 8 / Math.SQRT2).actualThroatMm).toBeCloseTo(8, 9)
})

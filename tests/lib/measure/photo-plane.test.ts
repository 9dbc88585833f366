import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { FourPoints } from '@/lib/measure/homography'
import { localScale, photoPlane, toMillimetres, toPixels, type RectangleReference } from '@/lib/measure/photo-plane'
import type { Point } from '@/lib/measure/point'
import { twoPointScale } from '@/lib/measure/two-point-scale'
import { seenAt, type Camera } from '../../support/synthetic-photo'

fc.configureGlobal({ seed: 11, numRuns: 300 })

/** A bank card: 85.60 × 53.98 mm (ISO/IEC 7810, ID-1). */
const CARD = [85.6, 53.98] as const
const cardOnPlate: FourPoints = [{ x: 10, y: 5 }, { x: 95.6, y: 5 }, { x: 95.6, y: 58.98 }, { x: 10, y: 58.98 }]

const cameras: fc.Arbitrary<Camera> = fc.record({
  width: fc.constant(1600), height: fc.constant(1200), focalPx: fc.constant(1500), at: fc.constant({ x: 60, y: 50 }), distanceMm: fc.integer({ min: 200, max: 500 }),
  tiltDeg: fc.integer({ min: 0, max: 35 }), leanDeg: fc.integer({ min: 0, max: 359 }), rollDeg: fc.integer({ min: 0, max: 359 }),
})
const places: fc.Arbitrary<Point> = fc.record({ x: fc.double({ min: 0, max: 120, noNaN: true }), y: fc.double({ min: 0, max: 100, noNaN: true }) })
const seen = (camera: Camera, [a, b, c, d]: FourPoints): FourPoints => [seenAt(camera, a), seenAt(camera, b), seenAt(camera, c), seenAt(camera, d)]
const shuffled = (corners: FourPoints): fc.Arbitrary<FourPoints> => fc.shuffledSubarray([...corners], { minLength: 4 }).map((all) => all as unknown as FourPoints)
const between = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y)

describe('four corners of a card', () => {
  it('measure any distance on the plate, whatever the camera, in any order of the corners', () => {
    fc.assert(fc.property(cameras.chain((camera) => fc.tuple(fc.constant(camera), shuffled(seen(camera, cardOnPlate)))), places, places, ([camera, corners], from, to) => {
      const plane = photoPlane({ kind: 'rectangle', corners, sidesMm: CARD })
      expect(between(toMillimetres(plane, seenAt(camera, from)), toMillimetres(plane, seenAt(camera, to)))).toBeCloseTo(between(from, to), 6)
    }))
  })

  it('give the very same mapping in all 24 orders, and with the sides typed either way', () => {
    const corners = seen({ width: 1600, height: 1200, focalPx: 1500, at: { x: 60, y: 50 }, distanceMm: 300, tiltDeg: 30, leanDeg: 50, rollDeg: 20 }, cardOnPlate)
    const orders = corners.flatMap((a, i) => corners.flatMap((b, j) => corners.flatMap((c, k) => corners.flatMap((d, l): FourPoints[] => (new Set([i, j, k, l]).size === 4 ? [[a, b, c, d]] : [])))))
    const maps = orders.flatMap((order) => [photoPlane({ kind: 'rectangle', corners: order, sidesMm: CARD }), photoPlane({ kind: 'rectangle', corners: order, sidesMm: [CARD[1], CARD[0]] })])
    expect(maps).toHaveLength(48)
    const first = toMillimetres(maps[0] ?? photoPlane({ kind: 'rectangle', corners, sidesMm: CARD }), { x: 700, y: 500 })
    for (const map of maps) expect(between(toMillimetres(map, { x: 700, y: 500 }), first)).toBeLessThan(1e-9)
  })

  it('take a pixel to the plate and back to itself', () => {
    fc.assert(fc.property(cameras, places, (camera, place) => {
      const plane = photoPlane({ kind: 'rectangle', corners: seen(camera, cardOnPlate), sidesMm: CARD })
      const pixel = seenAt(camera, place)
      expect(between(toPixels(plane, toMillimetres(plane, pixel)), pixel)).toBeLessThan(1e-6)
    }))
  })

  it('tell the scale at a point: the millimetres that a short step of the eye covers', () => {
    fc.assert(fc.property(cameras, places, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (camera, place, angle) => {
      const plane = photoPlane({ kind: 'rectangle', corners: seen(camera, cardOnPlate), sidesMm: CARD })
      const pixel = seenAt(camera, place)
      const step = 1e-3
      const covered = between(toMillimetres(plane, pixel), toMillimetres(plane, { x: pixel.x + step * Math.cos(angle), y: pixel.y + step * Math.sin(angle) })) / step
      const { finest, coarsest, mmPerPixel } = localScale(plane, pixel)
      expect(covered).toBeGreaterThan(finest * 0.999)
      expect(covered).toBeLessThan(coarsest * 1.001)
      expect(mmPerPixel ** 2).toBeCloseTo(finest * coarsest, 12)
    }))
    const above = photoPlane({ kind: 'rectangle', corners: [{ x: 0, y: 0 }, { x: 400, y: 0 }, { x: 400, y: 200 }, { x: 0, y: 200 }], sidesMm: [100, 50] })
    expect(localScale(above, { x: 30, y: 300 }).mmPerPixel).toBeCloseTo(0.25, 12)
  })

  it('may be seen so flat that the long side looks shorter, when that is said', () => {
    const camera: Camera = { width: 1600, height: 1200, focalPx: 1500, at: { x: 60, y: 50 }, distanceMm: 400, tiltDeg: 60, leanDeg: 0, rollDeg: 0 }
    const reference: RectangleReference = { kind: 'rectangle', corners: seen(camera, cardOnPlate), sidesMm: CARD, longSide: 'looks-shorter' }
    const width = (plane: ReturnType<typeof photoPlane>): number => between(toMillimetres(plane, seenAt(camera, { x: 50, y: 70 })), toMillimetres(plane, seenAt(camera, { x: 50, y: 78 })))
    expect(width(photoPlane(reference))).toBeCloseTo(8, 6)
    expect(width(photoPlane({ ...reference, longSide: 'looks-longer' }))).toBeGreaterThan(10)
  })

  it('of a square need no long side', () => {
    const plane = photoPlane({ kind: 'rectangle', corners: [{ x: 0, y: 0 }, { x: 0, y: 100 }, { x: 101, y: 0 }, { x: 100, y: 100 }], sidesMm: [25, 25] })
    expect(between(toMillimetres(plane, { x: 0, y: 0 }), toMillimetres(plane, { x: 0, y: 100 }))).toBeCloseTo(25, 9)
  })
})

describe('two points of a scale', () => {
  test('give millimetres to the pixel with their error', () => {
    const { mmPerPixel, sd } = twoPointScale({ kind: 'two-points', points: [{ x: 100, y: 100 }, { x: 400, y: 500 }], distanceMm: 100, distanceSdMm: 0.5 }, 1.5)
    expect(mmPerPixel).toBeCloseTo(0.2, 12)
    expect(sd).toBeCloseTo(0.2 * Math.sqrt((2 * 1.5 ** 2) / 500 ** 2 + 0.005 ** 2), 8)
  })

  test('measure what was photographed straight from above', () => {
    const plane = photoPlane({ kind: 'two-points', points: [{ x: 10, y: 10 }, { x: 10, y: 210 }], distanceMm: 50 })
    expect(between(toMillimetres(plane, { x: 3, y: 4 }), toMillimetres(plane, { x: 43, y: 34 }))).toBeCloseTo(12.5, 9)
    expect(between(toPixels(plane, toMillimetres(plane, { x: 3, y: 4 })), { x: 3, y: 4 })).toBeLessThan(1e-9)
    expect(localScale(plane, { x: 0, y: 0 })).toEqual({ mmPerPixel: 0.25, finest: 0.25, coarsest: 0.25 })
  })
})

import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { beadWidths, type PickedBead, type ToePair } from '@/lib/measure/bead-widths'
import type { FourPoints } from '@/lib/measure/homography'
import { measuredStations } from '@/lib/measure/measured-stations'
import type { PhotoReference } from '@/lib/measure/photo-plane'
import type { Point } from '@/lib/measure/point'
import { normalNoise } from '../../support/seeded-noise'
import { seenAt, type Camera } from '../../support/synthetic-photo'

fc.configureGlobal({ seed: 17, numRuns: 100 })

const at = (x: number, y: number): Point => ({ x, y })
const ruler: PhotoReference = { kind: 'two-points', points: [at(0, 400), at(500, 400)], distanceMm: 100 }
const bead: PickedBead = {
  reference: ruler, axis: { kind: 'ends', start: at(50, 100), end: at(800, 100) }, pickSdPx: 1,
  pairs: [{ a: at(100, 80), b: at(100, 120) }, { a: at(450, 75), b: at(450, 125) }],
}

describe('widths from toe pairs', () => {
  it('are read across the axis, their place along it from the start', () => {
    const { readings, axisLength } = beadWidths(bead)
    expect(readings.map(({ pair, atMm, widthMm, skewMm }) => [pair, atMm, widthMm, skewMm].map((value) => Number(value.toFixed(9))))).toEqual([[0, 10, 8, 0], [1, 80, 10, 0]])
    expect(axisLength?.mm).toBeCloseTo(150, 9)
  })

  it('do not grow when the toes picked are not opposite each other, and do not care which toe comes first', () => {
    const { readings } = beadWidths({ ...bead, pairs: [{ a: at(90, 80), b: at(110, 120) }, { a: at(450, 125), b: at(450, 75) }] })
    expect(readings[0]).toMatchObject({ pair: 0 })
    expect(readings[0]?.widthMm).toBeCloseTo(8, 9)
    expect(readings[0]?.atMm).toBeCloseTo(10, 9)
    expect(readings[0]?.skewMm).toBeCloseTo(4, 9)
    expect(readings[1]?.widthMm).toBeCloseTo(10, 9)
  })

  it('come with the error worked out by hand: √2 picks across, and the share of the scale', () => {
    const [reading] = beadWidths({ ...bead, pickSdPx: 0.5, referencePickSdPx: 2 }).readings
    const [scaleShare, perPixel] = [(Math.SQRT2 * 2) / 500, 0.2]
    expect(reading?.widthSdMm).toBeCloseTo(Math.hypot(8 * scaleShare, Math.SQRT2 * 0.5 * perPixel), 4)
    // Along the axis: the mean of two picks, less the start, and the scale.
    expect(reading?.atSdMm).toBeCloseTo(Math.hypot(10 * scaleShare, Math.sqrt(1.5) * 0.5 * perPixel), 4)
  })

  it('are as certain as each toe says of itself', () => {
    const [reading] = beadWidths({ ...bead, pairs: [{ a: { ...at(100, 80), sdPx: 0.3 }, b: { ...at(100, 120), sdPx: 0.4 } }], axis: { kind: 'ends', start: at(50, 100), end: at(800, 100) }, referencePickSdPx: 0 }).readings
    expect(reading?.widthSdMm).toBeCloseTo(0.5 * 0.2, 4)
  })

  it('are certain when every pick is', () => {
    expect(beadWidths({ ...bead, pickSdPx: 0 }).readings.map(({ widthSdMm, atSdMm }) => [widthSdMm, atSdMm])).toEqual([[0, 0], [0, 0]])
  })

  it('are none when no pair was picked', () => {
    expect(beadWidths({ ...bead, pairs: [] }).readings).toEqual([])
  })

  test('an axis fitted through the midpoints gives the same as one through the ends, for a straight bead', () => {
    const skewed: readonly ToePair[] = [{ a: at(95, 80), b: at(105, 120) }, { a: at(450, 75), b: at(450, 125) }, { a: at(700, 78), b: at(690, 122) }]
    const [fitted, ends] = [beadWidths({ ...bead, pairs: skewed, axis: { kind: 'fitted', start: at(50, 107) } }), beadWidths({ ...bead, pairs: skewed })]
    expect(fitted.axisLength).toBeNull()
    fitted.readings.forEach((reading, index) => {
      expect(reading.widthMm).toBeCloseTo(ends.readings[index]?.widthMm ?? NaN, 9)
      expect(reading.atMm).toBeCloseTo(ends.readings[index]?.atMm ?? NaN, 9)
    })
  })
})

// A card on the plate beside a bead 150 mm long, 8 mm wide, that runs at an angle.
const CARD = [85.6, 53.98] as const // ISO/IEC 7810, ID-1
const card: FourPoints = [at(20, 60), at(105.6, 60), at(105.6, 113.98), at(20, 113.98)]
const along = at(Math.cos(0.1), Math.sin(0.1))
const onBead = (atMm: number, asideMm: number): Point => at(10 + atMm * along.x - asideMm * along.y, 20 + atMm * along.y + asideMm * along.x)
const truth = [5, 40, 75, 110, 145].map((atMm) => ({ atMm, widthMm: 8 + atMm / 50 }))
const camera: Camera = { width: 1600, height: 1200, focalPx: 1500, at: at(75, 55), distanceMm: 260, tiltDeg: 35, leanDeg: 60, rollDeg: 15 }

/** The whole thing as picked on a photo, each pick moved by `shift`. */
function picked(seen: (place: Point) => Point, kind: PickedBead['axis']['kind'], pickSdPx: number): PickedBead {
  const [a, b, c, d] = card
  const pairs = truth.map(({ atMm, widthMm }) => ({ a: seen(onBead(atMm, -widthMm / 2)), b: seen(onBead(atMm, widthMm / 2)) }))
  const start = seen(onBead(0, 0))
  return {
    reference: { kind: 'rectangle', corners: [seen(a), seen(b), seen(c), seen(d)], sidesMm: CARD }, pairs, pickSdPx,
    axis: kind === 'ends' ? { kind, start, end: seen(onBead(150, 0)) } : { kind, start },
  }
}

describe('a card in a photo taken aslant', () => {
  it.each(['ends', 'fitted'] as const)('gives back the true widths and places, axis %s', (kind) => {
    beadWidths(picked((place) => seenAt(camera, place), kind, 1)).readings.forEach(({ atMm, widthMm }, index) => {
      expect(widthMm).toBeCloseTo(truth[index]?.widthMm ?? NaN, 6)
      expect(atMm).toBeCloseTo(truth[index]?.atMm ?? NaN, 6)
    })
  })

  it('measures the same when the picture is turned, scaled and shifted, errors included', () => {
    const still = beadWidths(picked((place) => seenAt(camera, place), 'ends', 1)).readings
    fc.assert(fc.property(fc.double({ min: 0.2, max: 4, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }), fc.integer({ min: -3000, max: 3000 }), (factor, angle, shift) => {
      const turned = ({ x, y }: Point): Point => at(factor * (x * Math.cos(angle) - y * Math.sin(angle)) + shift, factor * (x * Math.sin(angle) + y * Math.cos(angle)) - shift)
      beadWidths(picked((place) => turned(seenAt(camera, place)), 'ends', factor)).readings.forEach((reading, index) => {
        expect(reading.widthMm).toBeCloseTo(still[index]?.widthMm ?? NaN, 6)
        expect(reading.widthSdMm).toBeCloseTo(still[index]?.widthSdMm ?? NaN, 5)
        expect(reading.atMm).toBeCloseTo(still[index]?.atMm ?? NaN, 6)
        expect(reading.atSdMm).toBeCloseTo(still[index]?.atSdMm ?? NaN, 5)
      })
    }))
  })

  it.each([
    ['ends', 1.5, camera], ['fitted', 1.5, camera], ['ends', 4, camera], ['ends', 1.5, { ...camera, tiltDeg: 0 }], ['ends', 1.5, { ...camera, tiltDeg: 45 }],
  ] as const)('states an error that repeated picking bears out: axis %s, picked to %d pixels', (kind, pickSdPx, from) => {
    const random = normalNoise(2026)
    const repeats = Array.from({ length: 300 }, () => beadWidths(picked((place) => {
      const { x, y } = seenAt(from, place)
      return at(x + pickSdPx * random(), y + pickSdPx * random())
    }, kind, pickSdPx)).readings)
    truth.forEach((_, station) => {
      for (const [value, stated] of [['widthMm', 'widthSdMm'], ['atMm', 'atSdMm']] as const) {
        const values = repeats.map((readings) => readings[station]?.[value] ?? NaN)
        const mean = values.reduce((sum, one) => sum + one, 0) / values.length
        const observed = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1))
        const claimed = repeats.reduce((sum, readings) => sum + (readings[station]?.[stated] ?? NaN), 0) / repeats.length
        expect(claimed / observed, `${value} at station ${station}`).toBeGreaterThan(1 / 1.5)
        expect(claimed / observed, `${value} at station ${station}`).toBeLessThan(1.5)
      }
    })
  })
})

test('a doubtful size of the reference makes every width as doubtful', () => {
  const [reading] = beadWidths({ ...bead, reference: { ...ruler, distanceSdMm: 5 }, pickSdPx: 0 }).readings
  expect(reading?.widthSdMm).toBeCloseTo(8 * 0.05, 6)
})

describe('stations for the log', () => {
  const reading = (pair: number, atMm: number, widthMm = 8, skewMm = 0): Parameters<typeof measuredStations>[0][number] => ({ pair, atMm, atSdMm: 0.4, widthMm, widthSdMm: 0.3, skewMm })

  it('stand in their order along the weld', () => {
    expect(measuredStations([reading(0, 120), reading(1, 30, 9)], 150)).toEqual({ stations: [{ atMm: 30, widthMm: 9 }, { atMm: 120, widthMm: 8 }], dropped: [] })
  })

  it.each([
    ['before-start', reading(0, -0.9)], ['past-end', reading(0, 150.9)], ['not-opposite', reading(0, 50, 8, 8.1)], ['no-width', reading(0, 50, 0.6)],
  ] as const)('leave out a reading, and say why: %s', (reason, out) => {
    expect(measuredStations([out, reading(1, 60)], 150)).toEqual({ stations: [{ atMm: 60, widthMm: 8 }], dropped: [{ reading: out, reason }] })
  })

  it('keep a reading just outside by the picking error, at the end itself', () => {
    expect(measuredStations([reading(0, -0.7), reading(1, 150.7)], 150).stations.map(({ atMm }) => atMm)).toEqual([0, 150])
    expect(measuredStations([reading(0, 50, 8, 8), reading(1, 60, 0.61)], 150).dropped).toEqual([])
  })

  it('hold one reading of a place: the one picked first', () => {
    const [first, again] = [reading(0, -0.2, 8), reading(1, 0.01, 9)]
    expect(measuredStations([again, first], 150)).toEqual({ stations: [{ atMm: 0, widthMm: 8 }], dropped: [{ reading: again, reason: 'same-place' }] })
  })
})

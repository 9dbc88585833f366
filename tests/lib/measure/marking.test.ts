// Setting marks one after the other, and what they give to the stations of the form.
import { describe, expect, it } from 'vitest'
import { bandCall } from '@/lib/measure/band-call'
import { adjust, markedPairs, marksSet, measured, nextSlot, place, rescaled, skipStation, startMarking, step, undo, type KnownScale, type Marking } from '@/lib/measure/marking'
import { measurePhoto } from '@/lib/measure/photo-measurement'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { stationGuide } from '@/lib/measure/station-guide'
import { widthsAtStations } from '@/lib/measure/widths-at-stations'
import { mark, marksOf } from '../../support/photo-marks'

const RULER: KnownScale = { kind: 'two-points', distanceMm: 100, sizeSdMm: 0 }
const PICTURE = { widthPx: 1000, heightPx: 600 }
const set = (marking: Marking, ...places: readonly (readonly [number, number])[]): Marking => places.reduce((each, [x, y]) => place(each, mark(x, y)), marking)
const ready = (stations = 2): Marking => set(startMarking(RULER, PICTURE, stations), [100, 500], [500, 500], [100, 300], [900, 300])
const widths = (marking: Marking): number[] => {
  const result = measured(marking)
  if (result === null || result instanceof PhotoProblem) throw new Error('nothing measured')
  return result.widths.map(({ widthMm }) => widthMm)
}

describe('marks', () => {
  it('fill the scale, the ends and the toes of each station in turn', () => {
    expect(startMarking({ kind: 'rectangle', sidesMm: [85.6, 53.98], sizeSdMm: 0.1 }, PICTURE, 1).slots.map(({ kind }) => kind))
      .toEqual(['corner', 'corner', 'corner', 'corner', 'start', 'end', 'toe-a', 'toe-b'])
    expect(measured(startMarking(RULER, PICTURE, 2))).toBeNull()
    const both = set(ready(), [300, 284], [300, 316], [700, 280], [700, 320])
    expect(nextSlot(both)).toBeNull()
    expect(widths(both)).toEqual([8, 10])
    expect(place(both, mark(1, 1))).toBe(both)
  })

  it('can be moved, taken back, and left out', () => {
    const one = set(ready(), [300, 284], [300, 316])
    expect(widths(adjust(one, mark(300, 320)))).toEqual([9])
    const earlier = step(one, -1)
    expect(widths(place(earlier, mark(300, 280)))).toEqual([9])
    expect(nextSlot(undo(one))).toBe(5)
    const without = skipStation(undo(one))
    expect([markedPairs(without), nextSlot(without)]).toEqual([[], 6])
    expect(nextSlot(undo(without))).toBe(4)
  })

  it('stay under another known size, and only those of the scale go under another kind of scale', () => {
    const both = set(ready(), [300, 284], [300, 316], [700, 280], [700, 320])
    expect(widths(rescaled(both, { ...RULER, distanceMm: 50 }))).toEqual([4, 5]) // half as long, everything half as wide
    const corners = rescaled(skipStation(set(ready(), [300, 284], [300, 316])), { kind: 'rectangle', sidesMm: [100, 50], sizeSdMm: 0 })
    expect(corners.slots.map(({ kind }) => kind)).toEqual(['corner', 'corner', 'corner', 'corner', 'start', 'end', 'toe-a', 'toe-b', 'toe-a', 'toe-b'])
    expect(marksSet(corners)).toBe(4)
    expect(nextSlot(corners)).toBe(0)
    const again = set(corners, [100, 500], [500, 500], [500, 700], [100, 700])
    expect(nextSlot(again)).toBeNull()
    expect(widths(again).map((each) => Number(each.toFixed(6)))).toEqual([8])
    expect(marksSet(undo(undo(undo(undo(undo(undo(again)))))))).toBe(3) // four corners, the station left out, a toe
  })

  it('say why they cannot be measured as soon as it is so', () => {
    expect(measured(set(startMarking(RULER, PICTURE, 1), [100, 500], [100, 500]))).toMatchObject({ reason: 'points-too-close' })
    expect(measured(set(startMarking({ ...RULER, distanceMm: 0 } as KnownScale, PICTURE, 1), [100, 500], [500, 500]))).toMatchObject({ reason: 'size-not-possible' })
    const flat = startMarking({ kind: 'rectangle', sidesMm: [80, 50], sizeSdMm: 0 }, PICTURE, 1)
    expect(measured(set(flat, [0, 0], [200, 0], [400, 1], [0, 250]))).toMatchObject({ reason: 'corners-on-a-line' })
  })
})

it('shows where a station lies and which way the weld runs there', () => {
  const { scale, ends } = marksOf([])
  const guide = stationGuide(scale, ends, 0.25)
  expect([guide.middle.x, guide.middle.y, guide.pxPerMm].map((value) => Number(value.toFixed(6)))).toEqual([300, 300, 4])
  expect(Math.abs(guide.to.y - guide.from.y)).toBeCloseTo(120, 6)
  expect(guide.along.y).toBeCloseTo(0, 6)
})

describe('widths at the stations', () => {
  const at = (pairs: readonly { readonly atMm: number; readonly widthMm: number }[], lengthMm = 200) => widthsAtStations(measurePhoto(marksOf(pairs)), [20, 60, 100, 140, 180], lengthMm)

  it('go to the nearest station, and a second one there is said', () => {
    expect(at([{ atMm: 98, widthMm: 8 }, { atMm: 22, widthMm: 7 }]).filled.map(({ station, widthMm }) => [station, widthMm])).toEqual([[0, 7], [2, 8]])
    const crowded = at([{ atMm: 95, widthMm: 8 }, { atMm: 101, widthMm: 9 }])
    expect(crowded.filled.map(({ station, widthMm }) => [station, widthMm])).toEqual([[2, 9]])
    expect(crowded.dropped).toEqual([{ pair: 0, reason: 'station-taken' }])
  })

  it('are not carried to the next station by a wrong scale, which is told', () => {
    const wrong = widthsAtStations(measurePhoto(marksOf([{ atMm: 180, widthMm: 8 }])), [10, 30, 50, 70, 90], 100)
    expect(wrong.filled.map(({ station }) => station)).toEqual([4])
    expect(wrong.lengthOff).toBeCloseTo(1, 9)
  })

  it('leave out toes that are no pair', () => {
    expect(at([{ atMm: 20, widthMm: 0 }])).toMatchObject({ filled: [], dropped: [{ pair: 0, reason: 'no-width' }] })
  })
})

describe('a width against its band', () => {
  const band = { minMm: 5, maxMm: 7 }
  it.each([[6, 0.4, 'inside'], [6, 0.5, 'inside'], [6, 0.51, 'cannot-tell'], [7.2, 0.2, 'cannot-tell'], [7.5, 0.2, 'outside'], [4.5, 0.2, 'outside'], [4.9, 0.2, 'cannot-tell']] as const)('%f mm with a deviation of %f mm: %s', (width, sd, call) => {
    expect(bandCall(width, sd, band)).toBe(call)
  })
  it('is never told of what is no width', () => {
    expect(() => bandCall(NaN, 0.1, band)).toThrow(RangeError)
    expect(() => bandCall(5, -1, band)).toThrow(/two finite numbers/)
  })
})

// Measuring a photo again goes on from the marks it has: the same scale, the same ends, each pair at the station it belongs to now.
import { describe, expect, it } from 'vitest'
import { chosenFrom } from '@/lib/measure/chosen-scale'
import { knownScaleOf, markingFrom } from '@/lib/measure/earlier-marks'
import { KNOWN_OBJECTS } from '@/lib/measure/known-objects'
import { markedPairs, marksSet, measured, nextSlot, place, step } from '@/lib/measure/marking'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import { measurePhoto } from '@/lib/measure/photo-measurement'
import { mark, marksOf } from '../../support/photo-marks'

const task = (...placesMm: number[]) => ({ weldLengthMm: 200, places: placesMm.map((atMm, row) => ({ row, atMm })) })
const again = (marks: PhotoMarks, of = task(20, 60, 100, 140, 180), picture = marks.picture) => markingFrom(marks, knownScaleOf(marks.scale), picture, of)

describe('marks gone on from', () => {
  it('measure what they measured', () => {
    const marks = marksOf([{ atMm: 20, widthMm: 8 }, { atMm: 60, widthMm: 7.5 }, { atMm: 100, widthMm: 9 }, { atMm: 140, widthMm: 8 }, { atMm: 180, widthMm: 8.25 }])
    const marking = again(marks)
    expect([marksSet(marking), nextSlot(marking)]).toEqual([14, null])
    expect(measured(marking)).toEqual(measurePhoto(marks))
    const rectangle: PhotoMarks = { ...marks, scale: { kind: 'rectangle', ...KNOWN_OBJECTS.card, marks: [mark(100, 400), mark(442, 400), mark(442, 616), mark(100, 616)] } }
    expect(measured(again(rectangle))).toEqual(measurePhoto(rectangle))
  })

  it('ask again for a station that had none, and hold the last one to be moved', () => {
    const marking = again(marksOf([{ atMm: 60, widthMm: 7.5 }, { atMm: 180, widthMm: 8 }]))
    expect(markedPairs(marking).map(({ station }) => station)).toEqual([1, 4])
    expect(marking.slots[nextSlot(marking) ?? -1]).toEqual({ kind: 'toe-a', station: 0 })
    const moved = place(step({ ...marking, moving: false }, -1), mark(780, 270))
    expect(markedPairs(moved).find(({ station }) => station === 4)?.a.tap).toEqual({ x: 780, y: 270 })
    expect(markedPairs(moved)).toHaveLength(2)
  })

  it('find their stations where those are now, and leave behind what none takes', () => {
    const marks = marksOf([{ atMm: 20, widthMm: 8 }, { atMm: 100, widthMm: 9 }])
    expect(markedPairs(again(marks, task(95, 185))).map(({ station, a }) => [station, a.tap.x])).toEqual([[0, 500]])
    expect(markedPairs(again(marks, task(10)))).toHaveLength(1)
    expect(markedPairs(again({ ...marks, pairs: [] }))).toEqual([])
  })

  it('lie at the same places of a picture shown at another size', () => {
    const marks = marksOf([{ atMm: 100, widthMm: 9 }])
    const half = again(marks, undefined, { widthPx: 500, heightPx: 300 })
    expect(markedPairs(half)[0]?.a).toEqual({ tap: { x: 250, y: 141 }, snapped: null, sdPx: 0.5 })
    const result = measured(half)
    expect(result && 'widths' in result && result.widths[0]?.widthMm).toBeCloseTo(9, 9)
  })
})

describe('the scale they were set under', () => {
  it.each([['card', 'card'], ['a6', 'a6']] as const)('is known again: %s', (object, kind) => {
    expect(chosenFrom({ kind: 'rectangle', ...KNOWN_OBJECTS[object] }, 'in').choice).toEqual({ kind, typed: { long: '', short: '', distance: '' } })
  })
  it('reads as the size it is, in the reader’s units where those can say it', () => {
    expect(chosenFrom({ kind: 'two-points', distanceMm: 88.9, sizeSdMm: 0.25 }, 'in').choice).toMatchObject({ kind: 'ruler', typed: { distance: '3 1/2 in' } })
    expect(chosenFrom({ kind: 'two-points', distanceMm: 50.03, sizeSdMm: 0.25 }, 'in').choice.typed.distance).toBe('50.03 mm')
    expect(chosenFrom({ kind: 'rectangle', sidesMm: [120, 60], sizeSdMm: 0.25 }, 'mm').choice).toMatchObject({ kind: 'rectangle', typed: { long: '120.0 mm', short: '60.0 mm' } })
  })
})

import { isMark, startMarking, type KnownScale, type Marking } from './marking'
import type { Mark, MarkedScale, PhotoMarks } from './photo-marks'
import { measurePhoto } from './photo-measurement'
import { PhotoProblem } from './photo-problem'
import { widthsAtStations } from './widths-at-stations'
import type { PhotoTask } from './widths-into-form'

/** The known size of a marked scale, without its marks. */
export const knownScaleOf = (scale: MarkedScale): KnownScale => scale.kind === 'rectangle'
  ? { kind: scale.kind, sidesMm: scale.sidesMm, sizeSdMm: scale.sizeSdMm }
  : { kind: scale.kind, distanceMm: scale.distanceMm, sizeSdMm: scale.sizeSdMm }

/**
 * Marks set before, to go on from: each pair at the station it belongs to now. A pair that no station takes any more is left behind, and a
 * station without a pair is asked for again. A picture shown at another size than the marks count in scales them with it.
 *
 * @param scale under which they go on: the one of `knownScaleOf`
 */
export function markingFrom(marks: PhotoMarks, scale: KnownScale, picture: PhotoMarks['picture'], { places, weldLengthMm }: Pick<PhotoTask, 'places' | 'weldLengthMm'>): Marking {
  const blank = startMarking(scale, picture, places.length)
  const by = { x: picture.widthPx / marks.picture.widthPx, y: picture.heightPx / marks.picture.heightPx }
  const pairs = pairsAtStations(marks, places.map(({ atMm }) => atMm), weldLengthMm)
  let taken = 0
  const set = blank.slots.map((slot): Mark | null => {
    if ('station' in slot) {
      const pair = pairs.get(slot.station)
      return pair ? resized(slot.kind === 'toe-a' ? pair.a : pair.b, by) : null
    }
    if (slot.kind === 'start' || slot.kind === 'end') return resized(marks.ends[slot.kind === 'start' ? 0 : 1], by)
    const mark = marks.scale.marks[taken]
    taken += 1
    return mark ? resized(mark, by) : null
  })
  const order = set.flatMap((mark, index) => (isMark(mark) ? [index] : []))
  return { ...blank, marks: set, order, at: order.at(-1) ?? null }
}

function pairsAtStations(marks: PhotoMarks, placesMm: readonly number[], weldLengthMm: number): Map<number, PhotoMarks['pairs'][number]> {
  try {
    const { filled } = widthsAtStations(measurePhoto(marks), placesMm, weldLengthMm)
    return new Map(filled.flatMap(({ station, pair }) => {
      const found = marks.pairs[pair]
      return found ? [[station, found] as const] : []
    }))
  } catch (problem) {
    if (problem instanceof PhotoProblem) return new Map() // what cannot be measured has no place along the weld
    throw problem
  }
}

function resized({ tap, snapped, sdPx }: Mark, by: { readonly x: number; readonly y: number }): Mark {
  const point = ({ x, y }: Mark['tap']): Mark['tap'] => ({ x: x * by.x, y: y * by.y })
  return { tap: point(tap), snapped: snapped && point(snapped), sdPx: sdPx * Math.max(by.x, by.y) }
}

import type { PickedBead } from './bead-widths'
import type { PhotoReference } from './photo-plane'
import type { Point } from './point'

/** One place marked on a photo, pixels of the picture. */
export type Mark = {
  /** Where the person put it. */
  readonly tap: Point
  /** The edge it snapped to; null when none stood out, when snapping was refused, or where marks do not snap. */
  readonly snapped: Point | null
  /** Standard deviation of the place that counts, in x and in y, pixels: how finely the picture was shown, or how clearly the edge stands. */
  readonly sdPx: number
}

/** What on the photo has a known size, and where it was marked. */
export type MarkedScale =
  | { readonly kind: 'two-points'; readonly marks: readonly [Mark, Mark]; readonly distanceMm: number; readonly sizeSdMm: number }
  | { readonly kind: 'rectangle'; readonly marks: readonly [Mark, Mark, Mark, Mark]; readonly sidesMm: readonly [number, number]; readonly sizeSdMm: number }

/** The toes of one station. */
export type MarkedPair = { readonly a: Mark; readonly b: Mark }

/** Everything a person marked on one photo. The picture's size says what the pixels count: a photo shown at another size scales with it. */
export type PhotoMarks = {
  readonly picture: { readonly widthPx: number; readonly heightPx: number }
  readonly scale: MarkedScale
  /** Start and end of the weld. */
  readonly ends: readonly [Mark, Mark]
  readonly pairs: readonly MarkedPair[]
}

/** A real toe is ragged: no mark on it is surer than this, pixels. */
export const LEAST_SD_PX = 0.5

/** The place that counts: the edge where the mark snapped, else the tap. */
export const placeOf = (mark: Mark): Point => mark.snapped ?? mark.tap

/** Picked points as the geometry takes them; marks of one kind share the largest of their errors, toes keep their own. */
export function pickedBead({ scale, ends, pairs }: PhotoMarks): PickedBead {
  return {
    reference: referenceOf(scale),
    axis: { kind: 'ends', start: placeOf(ends[0]), end: placeOf(ends[1]) },
    pairs: pairs.map(({ a, b }) => ({ a: { ...placeOf(a), sdPx: sdOf(a) }, b: { ...placeOf(b), sdPx: sdOf(b) } })),
    pickSdPx: Math.max(...ends.map(sdOf)),
    referencePickSdPx: Math.max(...scale.marks.map(sdOf)),
  }
}

/** The scale as the geometry takes it. */
export function referenceOf(scale: MarkedScale): PhotoReference {
  if (scale.kind === 'two-points') {
    const [a, b] = scale.marks
    return { kind: 'two-points', points: [placeOf(a), placeOf(b)], distanceMm: scale.distanceMm, distanceSdMm: scale.sizeSdMm }
  }
  const [a, b, c, d] = scale.marks
  return { kind: 'rectangle', corners: [placeOf(a), placeOf(b), placeOf(c), placeOf(d)], sidesMm: scale.sidesMm, sideSdMm: scale.sizeSdMm }
}

const sdOf = ({ sdPx }: Mark): number => Math.max(LEAST_SD_PX, sdPx)

import { axisThroughEnds, axisThroughMidpoints, onAxis, type BeadAxis } from './bead-axis'
import { propagate, type Reading } from './first-order'
import { requireErrorSize } from './known-size'
import { planeOfSettled, settleReference, toMillimetres, type PhotoReference } from './photo-plane'
import { requireWellPicked } from './picking-error'
import { distanceBetween, midpointOf, requirePixel, type Point } from './point'

/**
 * A picked toe, pixels. `sdPx` is its own picking error where that is known, as of a snapped one; a real toe is ragged, so give no less
 * than half a pixel even where the edge is sharper.
 */
export type ToePick = Point & { readonly sdPx?: number }

/** Two toes picked at one station, one on each side of the bead. */
export type ToePair = { readonly a: ToePick; readonly b: ToePick }

/**
 * How the bead runs, pixels: from its picked start to its picked end, or through the midpoints of the toe pairs, counted from the
 * picked start. The first also gives the length of the bead.
 */
export type AxisPick = { readonly kind: 'ends'; readonly start: Point; readonly end: Point } | { readonly kind: 'fitted'; readonly start: Point }

export type PickedBead = {
  readonly reference: PhotoReference
  readonly axis: AxisPick
  readonly pairs: readonly ToePair[]
  /** Standard deviation in x and in y of a picked place that brings none of its own, pixels. */
  readonly pickSdPx: number
  /** The same for the points of the reference, where they were picked with more or less care. */
  readonly referencePickSdPx?: number
}

/** What one toe pair measures, mm; each `sd` is one standard deviation. */
export type WidthReading = {
  /** Place of the pair among those picked, from 0. */
  readonly pair: number
  /** From the start of the bead to the middle of the pair, along the axis. */
  readonly atMm: number
  readonly atSdMm: number
  /** Across the axis. */
  readonly widthMm: number
  readonly widthSdMm: number
  /** How far one toe was picked ahead of the other, along the axis. */
  readonly skewMm: number
}

export type BeadWidths = {
  readonly readings: readonly WidthReading[]
  /** Start to end as picked; null for a fitted axis, which has no end. */
  readonly axisLength: { readonly mm: number; readonly sdMm: number } | null
}

/**
 * Bead widths from toes picked on a photo: every point is mapped to the plane of the reference, the width is the distance between the
 * toes across the axis, the place that of their middle along it. Toes that are not quite opposite therefore do not widen the bead.
 *
 * The standard deviations carry the picking errors of toes, axis and reference and the uncertainty of the known sizes (`propagate`).
 * They do not know about toes that lie above or below the plane of the reference, lens distortion, or which ripple is taken for a toe.
 * Widths of one photo share the error of its reference: their mean is no more certain than that.
 *
 * @throws PhotoProblem when the reference, the axis or the picking error cannot carry a measurement
 */
export function beadWidths(bead: PickedBead): BeadWidths {
  const { axis, pairs, pickSdPx } = bead
  const referenceSdPx = bead.referencePickSdPx ?? pickSdPx
  const settled = settleReference(bead.reference)
  requireWellPicked(settled, pickSdPx)
  requireWellPicked(settled, referenceSdPx)
  const picked: readonly ToePick[] = [...axisPoints(axis), ...pairs.flatMap(({ a, b }) => [a, b])]
  requireAllPicked(axis, pairs)

  const { points, sizesMm, sizeSdMm } = settled
  const [sizesFrom, pickedFrom] = [2 * points.length, 2 * points.length + sizesMm.length]
  const results = propagate(
    [...coordinates(points, referenceSdPx), ...sizesMm.map((value) => ({ value, sd: sizeSdMm })), ...picked.flatMap((pick) => coordinates([pick], pick.sdPx ?? pickSdPx))],
    (values) => {
      const plane = planeOfSettled(pointsOf(values.slice(0, sizesFrom)), values.slice(sizesFrom, pickedFrom))
      return measured(axis.kind, pointsOf(values.slice(pickedFrom)).map((point) => toMillimetres(plane, point)))
    },
  )
  const [length, ...rest] = results
  const readings = pairs.map((_, pair) => reading(pair, rest.slice(3 * pair, 3 * pair + 3)))
  return { readings, axisLength: axis.kind === 'ends' && length !== undefined ? { mm: length.value, sdMm: length.sd } : null }
}

const axisPoints = (axis: AxisPick): Point[] => (axis.kind === 'ends' ? [axis.start, axis.end] : [axis.start])

function requireAllPicked(axis: AxisPick, pairs: readonly ToePair[]): void {
  requirePixel(axis.start, 'The start of the bead')
  if (axis.kind === 'ends') requirePixel(axis.end, 'The end of the bead')
  pairs.forEach(({ a, b }, index) => [a, b].forEach((toe) => {
    requirePixel(toe, `A toe of pair ${index + 1}`)
    requireErrorSize(toe.sdPx ?? 0, `The picking error of a toe of pair ${index + 1}`)
  }))
}

const coordinates = (points: readonly Point[], sd: number): Reading[] => points.flatMap(({ x, y }) => [{ value: x, sd }, { value: y, sd }])

function pointsOf(values: readonly number[]): Point[] {
  return Array.from({ length: values.length / 2 }, (_, index) => ({ x: values[2 * index] ?? 0, y: values[2 * index + 1] ?? 0 }))
}

/** The length of the axis (0 when it has none), then place, signed width and skew of each pair, mm. */
function measured(kind: AxisPick['kind'], placesMm: readonly Point[]): number[] {
  const ends = placesMm.slice(0, kind === 'ends' ? 2 : 1)
  const [start = ORIGIN, end = ORIGIN] = ends
  const toes = placesMm.slice(ends.length)
  const pairs = Array.from({ length: toes.length / 2 }, (_, index): ToePair => ({ a: toes[2 * index] ?? ORIGIN, b: toes[2 * index + 1] ?? ORIGIN }))
  const axis = kind === 'ends' ? axisThroughEnds(start, end) : axisThroughMidpoints(start, pairs.map(({ a, b }) => midpointOf(a, b)))
  return [kind === 'ends' ? distanceBetween(start, end) : 0, ...pairs.flatMap((pair) => across(axis, pair))]
}

const ORIGIN: Point = { x: 0, y: 0 }

function across(axis: BeadAxis, { a, b }: ToePair): number[] {
  const [one, other] = [onAxis(axis, a), onAxis(axis, b)]
  return [(one.atMm + other.atMm) / 2, other.asideMm - one.asideMm, other.atMm - one.atMm]
}

function reading(pair: number, [at, width, skew]: readonly Reading[]): WidthReading {
  return {
    pair, atMm: at?.value ?? 0, atSdMm: at?.sd ?? 0, widthMm: Math.abs(width?.value ?? 0), widthSdMm: width?.sd ?? 0, skewMm: Math.abs(skew?.value ?? 0),
  }
}

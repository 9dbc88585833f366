import { axisThroughEnds } from './bead-axis'
import { placeOf, referenceOf, type Mark, type MarkedScale } from './photo-marks'
import { localScale, photoPlane, toMillimetres, toPixels } from './photo-plane'
import type { Point } from './point'

/** Where a station lies on the photo, pixels: the middle of the line across the weld, its ends, and the way the weld runs there. */
export type StationGuide = { readonly middle: Point; readonly from: Point; readonly to: Point; readonly along: Point; readonly pxPerMm: number }

/** A line this long to each side of the middle reaches past any bead of a class, mm. */
const HALF_MM = 15

/**
 * The line across the weld at a share of its length.
 *
 * @throws PhotoProblem when the scale cannot carry it, or the line leaves the plate
 */
export function stationGuide(scale: MarkedScale, ends: readonly [Mark, Mark], share: number): StationGuide {
  const plane = photoPlane(referenceOf(scale))
  const [start, end] = [toMillimetres(plane, placeOf(ends[0])), toMillimetres(plane, placeOf(ends[1]))]
  const { along } = axisThroughEnds(start, end)
  const middle = { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) }
  const seen = (alongMm: number, asideMm: number): Point => toPixels(plane, { x: middle.x + alongMm * along.x - asideMm * along.y, y: middle.y + alongMm * along.y + asideMm * along.x })
  const [centre, ahead] = [seen(0, 0), seen(1, 0)]
  return { middle: centre, from: seen(0, -HALF_MM), to: seen(0, HALF_MM), along: { x: ahead.x - centre.x, y: ahead.y - centre.y }, pxPerMm: 1 / localScale(plane, centre).mmPerPixel }
}

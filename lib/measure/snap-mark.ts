import { snapToEdge } from './edge-snap'
import { greyWindow } from './grey-window'
import { LEAST_SD_PX, type Mark } from './photo-marks'
import { distanceBetween, type Point } from './point'

/** A picture as a canvas hands it over: four bytes a pixel, row by row. */
export type Pixels = { readonly rgba: Uint8Array | Uint8ClampedArray; readonly widthPx: number; readonly heightPx: number }

/** Beyond the search, so much of the picture is needed for smoothing and for the lines beside the tap. */
const MARGIN_PX = 12
/** An edge is looked for at least and at most this far from the tap. */
const [LEAST_REACH, MOST_REACH] = [4, 24]
/** A search never reaches farther than this share of the way to the other toe, so that it cannot snap across the bead. */
const SHARE_OF_WIDTH = 0.4

/**
 * The mark of a toe tapped at a place: snapped to the strongest edge nearby that runs along the weld, or the tap itself where none
 * stands out.
 *
 * @param reachPx how far the tap may be off
 * @param tapSdPx standard deviation of the tap
 * @throws PhotoProblem when the tap is not in the picture
 */
export function snappedMark(picture: Pixels, tap: Point, along: Point, { reachPx, tapSdPx, other }: { readonly reachPx: number; readonly tapSdPx: number; readonly other: Point | null }): Mark {
  const widest = other === null ? MOST_REACH : SHARE_OF_WIDTH * distanceBetween(tap, other)
  const reach = Math.max(LEAST_REACH, Math.min(MOST_REACH, reachPx, widest))
  const { window, origin } = greyWindow(picture.rgba, { width: picture.widthPx, height: picture.heightPx }, tap, reach + MARGIN_PX)
  const edge = snapToEdge(window, { x: tap.x - origin.x, y: tap.y - origin.y }, along, { reachPx: reach })
  if (edge === null) return { tap, snapped: null, sdPx: Math.max(LEAST_SD_PX, tapSdPx) }
  return { tap, snapped: { x: edge.point.x + origin.x, y: edge.point.y + origin.y }, sdPx: Math.max(LEAST_SD_PX, edge.sdPx) }
}

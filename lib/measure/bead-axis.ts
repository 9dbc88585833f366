import { PhotoProblem } from './photo-problem'
import { distanceBetween, type Point } from './point'

/** The middle line of a bead on the plane, mm: where it starts and the direction it runs in, of length 1. */
export type BeadAxis = { readonly origin: Point; readonly along: Point }

/** A bead shorter than this has no direction worth the name. */
const LEAST_LENGTH_MM = 1
/** Midpoints must spread this many times farther along the line than across it. */
const LEAST_SLENDERNESS = 2

/**
 * The line from the start of the bead to its end.
 *
 * @throws PhotoProblem when both are less than 1 mm apart
 */
export function axisThroughEnds(startMm: Point, endMm: Point): BeadAxis {
  const length = distanceBetween(startMm, endMm)
  if (!(length >= LEAST_LENGTH_MM)) throw new PhotoProblem('axis-too-short', 'The start and the end of the bead are at the same place: tap where the bead starts and where it ends.')
  return { origin: startMm, along: { x: (endMm.x - startMm.x) / length, y: (endMm.y - startMm.y) / length } }
}

/**
 * The line nearest to the midpoints between the toes, by squared distance across it (total least squares: the direction is
 * ½ · atan2(2 Sxy, Sxx − Syy)), from the foot of the picked start toward the midpoints.
 *
 * @throws PhotoProblem with fewer than two midpoints, midpoints all at one place or in no clear line, or a start in their middle
 */
export function axisThroughMidpoints(startMm: Point, midpointsMm: readonly Point[]): BeadAxis {
  const count = midpointsMm.length
  if (count < 2) throw new PhotoProblem('too-few-pairs', 'One pair of toes gives no direction: tap the toes at two places or more, or tap the start and the end of the bead.')
  const middle = { x: midpointsMm.reduce((sum, { x }) => sum + x, 0) / count, y: midpointsMm.reduce((sum, { y }) => sum + y, 0) / count }
  const sumOf = (term: (dx: number, dy: number) => number): number => midpointsMm.reduce((sum, { x, y }) => sum + term(x - middle.x, y - middle.y), 0)
  const [xx, yy, xy] = [sumOf((dx) => dx * dx), sumOf((_, dy) => dy * dy), sumOf((dx, dy) => dx * dy)]
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const half = Math.hypot((xx - yy) / 2, xy)
  const [spreadAlong, spreadAcross] = [Math.sqrt((xx + yy) / 2 + half), Math.sqrt(Math.max(0, (xx + yy) / 2 - half))]
  if (!(spreadAlong >= LEAST_LENGTH_MM / 2 && spreadAlong >= LEAST_SLENDERNESS * spreadAcross)) {
    throw new PhotoProblem('axis-unclear', 'The tapped toes do not lie along a line: tap toes at places farther apart, or tap the start and the end of the bead.')
  }
  const line = { x: Math.cos(angle), y: Math.sin(angle) }
  const ahead = (middle.x - startMm.x) * line.x + (middle.y - startMm.y) * line.y
  if (Math.abs(ahead) < LEAST_LENGTH_MM / 2) throw new PhotoProblem('axis-unclear', 'The start of the bead lies in the middle of the tapped toes: tap where the bead starts.')
  const along = ahead > 0 ? line : { x: -line.x, y: -line.y }
  return { origin: { x: middle.x - Math.abs(ahead) * along.x, y: middle.y - Math.abs(ahead) * along.y }, along }
}

/** Place along the axis from its origin, and distance from it to the right of its direction (on a plane whose y runs down), mm. */
export function onAxis({ origin, along }: BeadAxis, placeMm: Point): { readonly atMm: number; readonly asideMm: number } {
  const [dx, dy] = [placeMm.x - origin.x, placeMm.y - origin.y]
  return { atMm: dx * along.x + dy * along.y, asideMm: dy * along.x - dx * along.y }
}

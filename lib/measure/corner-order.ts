import type { FourPoints } from './homography'
import { PhotoProblem } from './photo-problem'
import { distanceBetween, requirePixel, type Point } from './point'

/** Corners nearer to each other, or to the line of two others, than this share of the longest diagonal: a slip, not a rectangle. */
const LEAST_SHARE = 0.02
/** A reference that spans fewer pixels cannot be told from a dot. */
const LEAST_SPAN_PX = 4
/** Sides that look this much alike are too close to call. */
const LEAST_RATIO = 1.02

/** Which pair of the real rectangle's sides looks longer in the photo. */
export type LongSide = 'looks-longer' | 'looks-shorter'

/**
 * The four corners clockwise as seen, the first two along the long side of the real rectangle, the first the one nearer the upper left
 * of the two that qualify. The order in which they were tapped does not matter.
 *
 * Long and short are told apart by the mean length of opposite sides in the picture. A rectangle seen so flat that its long side looks
 * the shorter one must be declared: the picture alone does not tell.
 *
 * @param sidesDiffer false for a square, whose sides need not be told apart
 * @throws PhotoProblem when corners are repeated, on one line, not the corners of any rectangle, or the sides look alike
 */
export function orderedCorners(corners: FourPoints, sidesDiffer: boolean, longSide: LongSide): FourPoints {
  corners.forEach((corner, index) => requirePixel(corner, `Corner ${index + 1}`))
  requireSpread(corners)
  const round = clockwise(corners)
  requireConvex(round)
  const [a, b, c, d] = round
  const [first, second] = [distanceBetween(a, b) + distanceBetween(c, d), distanceBetween(b, c) + distanceBetween(d, a)]
  if (!sidesDiffer) return startingUpperLeft(round, [0, 1, 2, 3])
  if (Math.max(first, second) < LEAST_RATIO * Math.min(first, second)) {
    throw new PhotoProblem('sides-look-alike', 'The long and the short side of the rectangle look equally long, so they cannot be told apart: take the photo more from above, or lay down a square or a longer rectangle.')
  }
  return startingUpperLeft(round, (first > second) === (longSide === 'looks-longer') ? [0, 2] : [1, 3])
}

function requireSpread(corners: FourPoints): void {
  const pairs = corners.flatMap((a, i) => corners.slice(i + 1).map((b) => distanceBetween(a, b)))
  const span = Math.max(...pairs)
  if (span < LEAST_SPAN_PX || Math.min(...pairs) < LEAST_SHARE * span) {
    throw new PhotoProblem('corner-repeated', 'Two of the four corners are at the same place, or nearly: tap each corner of the rectangle once, and take the photo more from above if it looks like a line.')
  }
  for (const left of corners) {
    const three = corners.filter((corner) => corner !== left)
    if (heightOf(three) < LEAST_SHARE * span) {
      throw new PhotoProblem('corners-on-a-line', 'Three of the four corners lie on one line: tap the four outer corners of the rectangle, and take the photo more from above if it looks like a line.')
    }
  }
}

/** Least height of a triangle: twice its area over its longest side. */
function heightOf([a, b, c]: readonly Point[]): number {
  if (a === undefined || b === undefined || c === undefined) return 0
  return Math.abs(turn(a, b, c)) / Math.max(distanceBetween(a, b), distanceBetween(b, c), distanceBetween(c, a))
}

const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

function clockwise(corners: FourPoints): FourPoints {
  const x = corners.reduce((sum, corner) => sum + corner.x, 0) / 4
  const y = corners.reduce((sum, corner) => sum + corner.y, 0) / 4
  const angle = (point: Point): number => Math.atan2(point.y - y, point.x - x)
  const [a, b, c, d] = corners
  const sorted = [a, b, c, d].sort((one, other) => angle(one) - angle(other))
  return [sorted[0] ?? a, sorted[1] ?? b, sorted[2] ?? c, sorted[3] ?? d]
}

function requireConvex(round: FourPoints): void {
  const [a, b, c, d] = round
  if ([turn(a, b, c), turn(b, c, d), turn(c, d, a), turn(d, a, b)].every((way) => way > 0)) return
  throw new PhotoProblem('corners-not-a-rectangle', 'The four points cannot be the corners of a rectangle, because one lies inside the triangle of the other three: tap the four outer corners.')
}

function startingUpperLeft(round: FourPoints, starts: readonly (0 | 1 | 2 | 3)[]): FourPoints {
  const [a, b, c, d] = round
  const turned: readonly FourPoints[] = [[a, b, c, d], [b, c, d, a], [c, d, a, b], [d, a, b, c]]
  const candidates = starts.flatMap((start) => turned.slice(start, start + 1))
  return candidates.reduce((best, next) => (comesBefore(next[0], best[0]) ? next : best), candidates[0] ?? round)
}

function comesBefore(a: Point, b: Point): boolean {
  return a.x + a.y !== b.x + b.y ? a.x + a.y < b.x + b.y : a.x < b.x
}

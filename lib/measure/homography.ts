import { solveLinear } from './linear-system'
import { inverse, product, throughMatrix, type Matrix3 } from './matrix3'
import type { Point } from './point'

export type FourPoints = readonly [Point, Point, Point, Point]

/**
 * The projective mapping that takes four points to four others, each to its fellow: the direct linear transform, on normalised
 * coordinates (Hartley & Zisserman, Multiple View Geometry, algorithms 4.1 and 4.2; from memory).
 *
 * Each pair (x, y) → (u, v) gives two rows of A·h = 0: (x, y, 1, 0, 0, 0, −ux, −uy | u) and (0, 0, 0, x, y, 1, −vx, −vy | v). Four pairs
 * meet exactly, so no least squares are needed. h₉ is set to 1: it is w at the middle of the four points, which lies inside them and so
 * never on the horizon.
 *
 * The sign is such that w > 0 among the four points: where w ≤ 0 lies beyond the horizon.
 *
 * @throws RangeError when three of the points lie on one line; `orderedCorners` says so in better words
 */
export function homographyOf(from: FourPoints, to: FourPoints): Matrix3 {
  const [near, far] = [normalising(from), normalising(to)]
  const rows = from.flatMap((point, index) => {
    const { x, y } = throughMatrix(near, point)
    const { x: u, y: v } = throughMatrix(far, to[index] ?? point)
    return [[x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]]
  })
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = solveLinear(rows)
  return product(inverse(far), product([a, b, c, d, e, f, g, h, 1], near))
}

/** Moves the middle of the points to the origin and their mean distance from it to √2. */
function normalising(points: FourPoints): Matrix3 {
  const x = points.reduce((sum, point) => sum + point.x, 0) / 4
  const y = points.reduce((sum, point) => sum + point.y, 0) / 4
  const spread = points.reduce((sum, point) => sum + Math.hypot(point.x - x, point.y - y), 0) / 4
  if (!(spread > 0)) throw new RangeError('Four points at one place do not determine a mapping.')
  const factor = Math.SQRT2 / spread
  return [factor, 0, -factor * x, 0, factor, -factor * y, 0, 0, 1]
}

import type { Point } from './point'

/** A 3 × 3 matrix, row by row. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number]

/** The product a·b: b is applied first. */
export function product(a: Matrix3, b: Matrix3): Matrix3 {
  return [
    a[0] * b[0] + a[1] * b[3] + a[2] * b[6], a[0] * b[1] + a[1] * b[4] + a[2] * b[7], a[0] * b[2] + a[1] * b[5] + a[2] * b[8],
    a[3] * b[0] + a[4] * b[3] + a[5] * b[6], a[3] * b[1] + a[4] * b[4] + a[5] * b[7], a[3] * b[2] + a[4] * b[5] + a[5] * b[8],
    a[6] * b[0] + a[7] * b[3] + a[8] * b[6], a[6] * b[1] + a[7] * b[4] + a[8] * b[7], a[6] * b[2] + a[7] * b[5] + a[8] * b[8],
  ]
}

/**
 * The inverse up to a factor: the adjugate, its sign made that of the true inverse. A mapping of the plane does not care about the factor.
 *
 * @throws RangeError when the matrix flattens the plane to a line
 */
export function inverse(m: Matrix3): Matrix3 {
  const [a, b, c, d, e, f, g, h, i] = m
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  if (!Number.isFinite(determinant) || determinant === 0) throw new RangeError('A mapping that flattens the plate to a line cannot be turned round.')
  const sign = Math.sign(determinant)
  return [
    sign * (e * i - f * h), sign * (c * h - b * i), sign * (b * f - c * e),
    sign * (f * g - d * i), sign * (a * i - c * g), sign * (c * d - a * f),
    sign * (d * h - e * g), sign * (b * g - a * h), sign * (a * e - b * d),
  ]
}

/** (x, y, 1) through the matrix: the place is (x / w, y / w). */
export function throughMatrix(m: Matrix3, { x, y }: Point): { readonly x: number; readonly y: number; readonly w: number } {
  return { x: m[0] * x + m[1] * y + m[2], y: m[3] * x + m[4] * y + m[5], w: m[6] * x + m[7] * y + m[8] }
}

import { orderedCorners, type LongSide } from './corner-order'
import { homographyOf, type FourPoints } from './homography'
import { requireErrorSize, requireKnownSize } from './known-size'
import { inverse, throughMatrix, type Matrix3 } from './matrix3'
import { PhotoProblem } from './photo-problem'
import { distanceBetween, requirePixel, type Point } from './point'

/** Two points of the photo (pixels) a known distance apart. Right only where the photo is taken straight from above. */
export type TwoPointReference = {
  readonly kind: 'two-points'
  readonly points: readonly [Point, Point]
  readonly distanceMm: number
  /** Standard deviation of the known distance; 0 when absent. */
  readonly distanceSdMm?: number
}

/** The corners of a rectangle of known size, in any order (pixels). Removes perspective for everything in the rectangle's plane. */
export type RectangleReference = {
  readonly kind: 'rectangle'
  readonly corners: FourPoints
  /** The two sides, in any order. */
  readonly sidesMm: readonly [number, number]
  /** Standard deviation of each side; 0 when absent. */
  readonly sideSdMm?: number
  /** 'looks-longer' when absent. Say 'looks-shorter' of a rectangle seen so flat that its long side appears as the shorter. */
  readonly longSide?: LongSide
}

export type PhotoReference = TwoPointReference | RectangleReference

/**
 * The mapping between a photo and the plane of its reference. What stands above or below that plane is measured where its line of
 * sight meets the plane: lay the reference at the height of the toes.
 */
export type PhotoPlane = { readonly toPlane: Matrix3; readonly toPhoto: Matrix3 }

/** A reference with its corners in order and its sizes checked: the numbers the mapping depends on. */
export type SettledReference = { readonly points: readonly Point[]; readonly sizesMm: readonly number[]; readonly sizeSdMm: number }

/** Points less than this apart are one point. */
const LEAST_APART_PX = 1

/** @throws PhotoProblem when points are repeated, on one line or not finite, or a size is zero or not finite */
export function settleReference(reference: PhotoReference): SettledReference {
  if (reference.kind === 'two-points') {
    const [a, b] = reference.points
    requireKnownSize(reference.distanceMm, 'The known distance')
    requireErrorSize(reference.distanceSdMm ?? 0, 'The uncertainty of the known distance')
    requirePixel(a, 'The first point of the scale')
    requirePixel(b, 'The second point of the scale')
    if (distanceBetween(a, b) < LEAST_APART_PX) throw new PhotoProblem('points-too-close', 'Both points of the scale are at the same place: tap two points a known distance apart.')
    return { points: [a, b], sizesMm: [reference.distanceMm], sizeSdMm: reference.distanceSdMm ?? 0 }
  }
  const [one, other] = reference.sidesMm
  requireKnownSize(one, 'A side of the rectangle')
  requireKnownSize(other, 'A side of the rectangle')
  requireErrorSize(reference.sideSdMm ?? 0, 'The uncertainty of the sides')
  const points = orderedCorners(reference.corners, one !== other, reference.longSide ?? 'looks-longer')
  return { points, sizesMm: [Math.max(one, other), Math.min(one, other)], sizeSdMm: reference.sideSdMm ?? 0 }
}

/** The mapping of a settled reference: a plain scale from two points, a homography from four. */
export function planeOfSettled(points: readonly Point[], sizesMm: readonly number[]): PhotoPlane {
  const [a, b, c, d] = points
  const [long = 0, short = 0] = sizesMm
  if (a === undefined || b === undefined) throw new RangeError('A reference has two or four points.')
  if (c === undefined || d === undefined) {
    const mmPerPixel = long / distanceBetween(a, b)
    return { toPlane: [mmPerPixel, 0, 0, 0, mmPerPixel, 0, 0, 0, 1], toPhoto: [1 / mmPerPixel, 0, 0, 0, 1 / mmPerPixel, 0, 0, 0, 1] }
  }
  const toPlane = homographyOf([a, b, c, d], [{ x: 0, y: 0 }, { x: long, y: 0 }, { x: long, y: short }, { x: 0, y: short }])
  return { toPlane, toPhoto: inverse(toPlane) }
}

/**
 * The mapping between pixels and millimetres that a reference sets up.
 *
 * @throws PhotoProblem as `settleReference`
 */
export function photoPlane(reference: PhotoReference): PhotoPlane {
  const { points, sizesMm } = settleReference(reference)
  return planeOfSettled(points, sizesMm)
}

/**
 * Where a pixel lies on the plane, mm.
 *
 * @throws PhotoProblem when the pixel lies on or beyond the horizon of the plane
 */
export function toMillimetres(plane: PhotoPlane, pixel: Point): Point {
  return mapped(plane.toPlane, pixel, 'A tapped point lies beyond the horizon of the plate: tap on the plate itself, or take the photo more from above.')
}

/**
 * Where a place on the plane (mm) shows in the photo, pixels.
 *
 * @throws PhotoProblem when the place lies behind the camera
 */
export function toPixels(plane: PhotoPlane, placeMm: Point): Point {
  return mapped(plane.toPhoto, placeMm, 'This place on the plate lies behind the camera: it is not in the photo.')
}

/** Sides of the horizon: w is 1 in the middle of the reference, up to a factor that cannot change its sign. */
function mapped(matrix: Matrix3, point: Point, beyond: string): Point {
  const { x, y, w } = throughMatrix(matrix, point)
  const place = { x: x / w, y: y / w }
  if (!(w > 0 && Number.isFinite(place.x) && Number.isFinite(place.y))) throw new PhotoProblem('beyond-horizon', beyond)
  return place
}

/** Millimetres to the pixel at one place: along the two directions in which it is finest and coarsest, and their geometric mean. */
export type LocalScale = { readonly mmPerPixel: number; readonly finest: number; readonly coarsest: number }

/**
 * The scale at a pixel: singular values of the derivative of the mapping there. Finest and coarsest are equal without perspective.
 *
 * @throws PhotoProblem when the pixel lies on or beyond the horizon
 */
export function localScale(plane: PhotoPlane, pixel: Point): LocalScale {
  const { x: u, y: v } = toMillimetres(plane, pixel)
  const [a, b, , d, e, , g, h] = plane.toPlane
  const { w } = throughMatrix(plane.toPlane, pixel)
  const [ux, uy, vx, vy] = [(a - u * g) / w, (b - u * h) / w, (d - v * g) / w, (e - v * h) / w]
  // Singular values of a 2 × 2 matrix: half the sum and half the difference of these two.
  const [sum, difference] = [Math.hypot(ux + vy, vx - uy), Math.hypot(ux - vy, vx + uy)]
  const finest = Math.abs(sum - difference) / 2
  const coarsest = (sum + difference) / 2
  return { mmPerPixel: Math.sqrt(finest * coarsest), finest, coarsest }
}

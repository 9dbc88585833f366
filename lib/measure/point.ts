import { PhotoProblem } from './photo-problem'

/**
 * A place in a picture (pixels: x to the right, y down, whole numbers at the middle of a pixel) or on the plate (mm). Which of the
 * two, each function says.
 */
export type Point = { readonly x: number; readonly y: number }

/** No photo is this many pixels wide; larger numbers would overflow on the way. */
const MOST_PIXELS = 1e6

/** @throws PhotoProblem when a picked place is not a pair of finite numbers that could lie in or near a photo */
export function requirePixel(point: Point, name: string): void {
  const within = (value: number): boolean => Number.isFinite(value) && Math.abs(value) <= MOST_PIXELS
  if (!within(point.x) || !within(point.y)) {
    throw new PhotoProblem('point-not-finite', `${name} has no place in the photo (${String(point.x)}, ${String(point.y)}): tap it again.`)
  }
}

export const distanceBetween = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y)

export const midpointOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

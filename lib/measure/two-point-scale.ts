import { propagate } from './first-order'
import { requireWellPicked } from './picking-error'
import { settleReference, type TwoPointReference } from './photo-plane'

/** Millimetres to the pixel, with the standard deviation that picking and the known distance leave it. */
export type TwoPointScale = { readonly mmPerPixel: number; readonly sd: number }

/**
 * Scale of a photo taken straight from above: s = D / d, the known distance over the distance in pixels. Its relative standard
 * deviation is √(2 σ²/d² + (σ_D / D)²), σ the picking error of each point in x and in y.
 *
 * @param pickSdPx standard deviation of a picked place in x and in y, pixels
 * @throws PhotoProblem when the points coincide or are too close for the picking error, or the distance is zero or not finite
 */
export function twoPointScale(reference: TwoPointReference, pickSdPx: number): TwoPointScale {
  const settled = settleReference(reference)
  requireWellPicked(settled, pickSdPx)
  const [a, b] = reference.points
  const read = [a.x, a.y, b.x, b.y].map((value) => ({ value, sd: pickSdPx }))
  const [scale] = propagate([...read, { value: reference.distanceMm, sd: settled.sizeSdMm }], ([ax = 0, ay = 0, bx = 0, by = 0, distance = 0]) => [distance / Math.hypot(bx - ax, by - ay)])
  return { mmPerPixel: scale?.value ?? 0, sd: scale?.sd ?? 0 }
}

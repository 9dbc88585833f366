import { requireErrorSize } from './known-size'
import { PhotoProblem } from './photo-problem'
import type { SettledReference } from './photo-plane'
import { distanceBetween } from './point'

/** The error of the reference's shortest side may be this share of it: beyond, first-order uncertainty is no longer honest. */
const MOST_SHARE = 0.1

/**
 * A reference must be much longer than the error of picking its ends, √2 · sd.
 *
 * @param pickSdPx standard deviation of a picked place in x and in y, pixels
 * @throws PhotoProblem when it is not
 */
export function requireWellPicked({ points }: SettledReference, pickSdPx: number): void {
  requireErrorSize(pickSdPx, 'The picking error')
  const sides = points.map((point, index) => distanceBetween(point, points[(index + 1) % points.length] ?? point))
  const shortest = Math.min(...sides)
  if (Math.SQRT2 * pickSdPx <= MOST_SHARE * shortest) return
  throw new PhotoProblem('reference-too-small', `The scale rests on points only ${Math.round(shortest)} pixels apart, each tapped to within about ${pickSdPx} pixels: zoom in, come closer, or choose points farther apart.`)
}

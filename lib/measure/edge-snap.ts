import { greyAt, pixelNoise, requireWindow, type GreyWindow } from './grey-window'
import { PhotoProblem } from './photo-problem'
import { requirePixel, type Point } from './point'

/** The edge a tapped point snaps to. */
export type SnappedEdge = {
  /** Place in the window, to a fraction of a pixel. */
  readonly point: Point
  /** Greatest change of the grey level across the edge, levels to the pixel, after smoothing. */
  readonly strength: number
  /** How many times the strength stands out of noise and shading; never below `LEAST_STANDING`. */
  readonly standing: number
  /** Standard deviation of the place across the edge that noise leaves, pixels; the edge taken as straight and clean. */
  readonly sdPx: number
}

export type SnapSearch = {
  /** How far from the tap an edge is looked for, on either side, pixels. */
  readonly reachPx: number
}

const USUAL_SEARCH: SnapSearch = { reachPx: 8 }

/** The profile is read every half pixel across the edge… */
const STEP_PX = 0.5
/** …as the mean over lines up to this far to both sides of the tap along the edge, a pixel apart. */
const HALF_LENGTH_PX = 4
/** Smoothing before the gradient is taken: standard deviation of the Gaussian. */
const SMOOTHING_PX = 1
const KERNEL_REACH = Math.ceil((3 * SMOOTHING_PX) / STEP_PX)

/**
 * An edge must stand out this many times the noise of the gradient. Chosen on 1500 drawn windows without an edge: at 5 none was offered
 * in noise of single pixels, 3 in 100 in grain three pixels wide (8 in 100 at 4).
 */
export const LEAST_STANDING = 5
/** Least noise, as a share of the window's range of grey levels: rounding in a perfectly shaded window is no edge. */
const LEAST_NOISE = 1e-6

/**
 * The strongest edge near a tapped point, across a known direction: the maximum of the gradient along the normal, refined by a parabola
 * through the three readings around it.
 *
 * The profile across the edge is the mean of nine parallel lines; its gradient is taken with the derivative of a Gaussian of 1 pixel.
 * From the peak the median of the gradient's size is taken off, so that even shading is no edge. What remains is measured against the
 * noise, the larger of two estimates: pixel noise of the whole window carried through the filter, and the disagreement of the nine
 * lines at the peak, which also sees texture. Below five times the noise (`LEAST_STANDING`) nothing stands out and the answer is null;
 * so it is when the gradient still rises at the limit of the search, or the window ends too near the tap.
 *
 * @param tap in window pixels
 * @param along direction in which the edge runs, of any length and either sign: the axis of the bead
 * @throws PhotoProblem when the window is smaller than 3 × 3 or not what it says, the tap lies outside it, or the direction has no length
 */
export function snapToEdge(window: GreyWindow, tap: Point, along: Point, { reachPx }: SnapSearch = USUAL_SEARCH): SnappedEdge | null {
  requireWindow(window)
  requirePixel(tap, 'The tapped point')
  if (greyAt(window, tap) === null) throw new PhotoProblem('window-not-possible', 'The tapped point is not in the picture that is searched: tap inside it.')
  const normal = normalOf(along)
  if (!(reachPx >= 1 && reachPx <= 100)) throw new PhotoProblem('window-not-possible', `An edge cannot be looked for ${String(reachPx)} pixels around: choose 1 to 100.`)

  const lines = gradientLines(window, tap, normal, reachPx)
  const gradient = lines.map((line) => Math.abs(mean(line.values)))
  const peak = gradient.reduce((best, value, index) => (value > (gradient[best] ?? 0) ? index : best), 0)
  const [before, top, after] = [gradient[peak - 1], gradient[peak], gradient[peak + 1]]
  const found = lines[peak]
  if (before === undefined || top === undefined || after === undefined || found === undefined) return null

  const strength = top - median(gradient)
  const floor = LEAST_NOISE * rangeOf(window)
  const standing = strength / Math.max(gradientNoise(window, found.values, found.values.length / 2), floor)
  if (!(standing >= LEAST_STANDING)) return null // also where an even window leaves 0 / 0
  const bend = before - 2 * top + after
  if (!(bend < 0)) return null
  const noise = Math.max(gradientNoise(window, found.values, found.values.length), floor)
  const offset = found.offset + (STEP_PX * (before - after)) / (2 * bend)
  return { point: { x: tap.x + offset * normal.x, y: tap.y + offset * normal.y }, strength: top, standing, sdPx: (SLOPE_NOISE * noise * STEP_PX ** 2) / -bend }
}

function normalOf(along: Point): Point {
  const length = Math.hypot(along.x, along.y)
  if (!(Number.isFinite(length) && length > 0)) throw new PhotoProblem('direction-not-possible', 'The edge to look for has no direction: tap the start and the end of the bead first.')
  return { x: -along.y / length, y: along.x / length }
}

/** Gradient of each parallel line, at every place of the search where the window holds all of them. */
function gradientLines(window: GreyWindow, tap: Point, normal: Point, reachPx: number): { readonly offset: number; readonly values: readonly number[] }[] {
  const steps = Math.floor(reachPx / STEP_PX)
  const asides = Array.from({ length: 2 * HALF_LENGTH_PX + 1 }, (_, index) => index - HALF_LENGTH_PX)
  const level = (step: number, aside: number): number | null =>
    greyAt(window, { x: tap.x + step * STEP_PX * normal.x + aside * normal.y, y: tap.y + step * STEP_PX * normal.y - aside * normal.x })
  const first = -steps - KERNEL_REACH
  const profiles = asides.map((aside) => Array.from({ length: 2 * (steps + KERNEL_REACH) + 1 }, (_, index) => level(first + index, aside)))
  return Array.from({ length: 2 * steps + 1 }, (_, index) => index - steps).flatMap((step) => {
    const values = profiles.map((profile) => slope(profile.slice(step - KERNEL_REACH - first, step + KERNEL_REACH - first + 1)))
    const whole = values.filter((value) => value !== null)
    return whole.length === values.length ? [{ offset: step * STEP_PX, values: whole }] : []
  })
}

/**
 * Noise of the slope of the gradient to noise of the gradient itself, for white noise under the derivative of a Gaussian: √1.5 / σ. The peak
 * moves by the noise of the slope over the bend of the gradient there.
 */
const SLOPE_NOISE = Math.sqrt(1.5) / SMOOTHING_PX

/** Derivative of a Gaussian, scaled so that an even slope of one level to the pixel gives 1. */
const KERNEL: readonly number[] = (() => {
  const places = Array.from({ length: 2 * KERNEL_REACH + 1 }, (_, index) => (index - KERNEL_REACH) * STEP_PX)
  const raw = places.map((place) => place * Math.exp(-(place ** 2) / (2 * SMOOTHING_PX ** 2)))
  const gain = raw.reduce((sum, weight, index) => sum + weight * (places[index] ?? 0), 0)
  return raw.map((weight) => weight / gain)
})()

function slope(levels: readonly (number | null)[]): number | null {
  let sum = 0
  for (const [index, level] of levels.entries()) {
    if (level === null) return null
    sum += level * (KERNEL[index] ?? 0)
  }
  return sum
}

/**
 * Noise of the mean gradient. Readings half a pixel apart come from the same pixels, so two neighbouring kernel weights act on one.
 *
 * @param independent as how many independent lines the lines count: all of them in plain noise, half where grain may join neighbours
 */
function gradientNoise(window: GreyWindow, values: readonly number[], independent: number): number {
  const gain = Math.sqrt(KERNEL.reduce((sum, weight) => sum + weight ** 2, 0) / STEP_PX)
  const fromPixels = (pixelNoise(window) * gain) / Math.sqrt(values.length)
  const middle = mean(values)
  const variance = values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1)
  return Math.max(fromPixels, Math.sqrt(variance / independent))
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const [low = 0, high = 0] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.ceil((sorted.length - 1) / 2)]]
  return (low + high) / 2
}

function rangeOf({ data }: GreyWindow): number {
  let [least, most] = [Infinity, -Infinity]
  for (const level of data) [least, most] = [Math.min(least, level), Math.max(most, level)]
  return most - least
}

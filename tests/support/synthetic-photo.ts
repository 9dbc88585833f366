// Photos drawn from known shapes: a flat plate seen by a pinhole camera, with blur, uneven light and noise. The camera is written out
// here on its own, so that the mapping under test is not tested against itself.
import type { Point } from '@/lib/measure/point'
import { normalNoise } from './seeded-noise'

/** A camera that looks at a plate: tilted, turned, at some distance. `focalPx` over distance is the scale where it looks. */
export type Camera = {
  readonly width: number
  readonly height: number
  readonly focalPx: number
  /** What it looks at on the plate, mm. */
  readonly at: Point
  readonly distanceMm: number
  /** From straight above, degrees, and the direction on the plate toward which it leans. */
  readonly tiltDeg: number
  readonly leanDeg: number
  /** Turn of the picture, degrees. */
  readonly rollDeg: number
}

type Vector = readonly [number, number, number]
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Where the camera stands, and its axes: right, down and forward. The plate is z = 0, with x to the right and y down as seen from above (z < 0). */
function pose(camera: Camera): { readonly eye: Vector; readonly right: Vector; readonly down: Vector; readonly forward: Vector } {
  const [tilt, lean, roll] = [radians(camera.tiltDeg), radians(camera.leanDeg), radians(camera.rollDeg)]
  const forward: Vector = [-Math.sin(tilt) * Math.cos(lean), -Math.sin(tilt) * Math.sin(lean), Math.cos(tilt)]
  const eye: Vector = [camera.at.x - camera.distanceMm * forward[0], camera.at.y - camera.distanceMm * forward[1], -camera.distanceMm * forward[2]]
  const level: Vector = [-Math.sin(lean), Math.cos(lean), 0]
  const other = cross(forward, level)
  const mix = (a: number, b: number): Vector => [a * level[0] + b * other[0], a * level[1] + b * other[1], a * level[2] + b * other[2]]
  return { eye, right: mix(Math.cos(roll), Math.sin(roll)), down: mix(-Math.sin(roll), Math.cos(roll)), forward }
}

/** Where a place on the plate (mm) shows in the picture. */
export function seenAt(camera: Camera, place: Point): Point {
  const { eye, right, down, forward } = pose(camera)
  const ray: Vector = [place.x - eye[0], place.y - eye[1], -eye[2]]
  const depth = dot(ray, forward)
  return { x: (camera.width - 1) / 2 + (camera.focalPx * dot(ray, right)) / depth, y: (camera.height - 1) / 2 + (camera.focalPx * dot(ray, down)) / depth }
}

/** What light falls on the sensor: grey levels of a scene (0 to 255, place in mm), and what the camera does to them. */
export type Scene = (place: Point) => number
export type Spoiling = {
  /** Standard deviation of the blur, pixels. */
  readonly blurPx: number
  /** Share of the light lost from the left to the right border. */
  readonly lightFall: number
  /** Standard deviation of the noise, grey levels. */
  readonly noise: number
  readonly seed: number
}

export type Photo = { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number }

/** Renders the scene, 2 × 2 rays to the pixel, then spoils it and rounds to whole grey levels. */
export function takePhoto(camera: Camera, scene: Scene, spoiling: Spoiling): Photo {
  const { width, height, focalPx } = camera
  const { eye, right, down, forward } = pose(camera)
  const levelAt = (x: number, y: number): number => {
    const [u, v] = [(x - (width - 1) / 2) / focalPx, (y - (height - 1) / 2) / focalPx]
    const far = -eye[2] / (forward[2] + u * right[2] + v * down[2])
    return scene({ x: eye[0] + far * (forward[0] + u * right[0] + v * down[0]), y: eye[1] + far * (forward[1] + u * right[1] + v * down[1]) })
  }
  const sharp = new Float64Array(width * height)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const light = levelAt(x - 0.25, y - 0.25) + levelAt(x + 0.25, y - 0.25) + levelAt(x - 0.25, y + 0.25) + levelAt(x + 0.25, y + 0.25)
      sharp[y * width + x] = (light / 4) * (1 - (spoiling.lightFall * x) / width)
    }
  }
  return { data: spoiled(sharp, width, height, spoiling), width, height }
}

function spoiled(sharp: Float64Array, width: number, height: number, { blurPx, noise, seed }: Spoiling): Uint8ClampedArray {
  const soft = blurPx > 0 ? blurredAndTurned(blurredAndTurned(sharp, width, height, blurPx), height, width, blurPx) : sharp
  const random = normalNoise(seed)
  return Uint8ClampedArray.from(soft, (level) => Math.round(level + noise * random()))
}

/** Blurs along the rows and hands back the transpose, so that blurring twice blurs both ways and restores the picture. */
function blurredAndTurned(from: Float64Array, width: number, height: number, sd: number): Float64Array {
  const reach = Math.ceil(3.5 * sd)
  const weights = Array.from({ length: 2 * reach + 1 }, (_, index) => Math.exp(-((index - reach) ** 2) / (2 * sd * sd)))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const turned = new Float64Array(from.length)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0
      for (let by = -reach; by <= reach; by += 1) sum += (weights[by + reach] ?? 0) * (from[y * width + Math.min(Math.max(x + by, 0), width - 1)] ?? 0)
      turned[x * height + y] = sum / total
    }
  }
  return turned
}

/** The photo as a canvas hands it over: four bytes a pixel. */
export function asRgba({ data }: Photo): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(4 * data.length).fill(255)
  data.forEach((level, index) => rgba.fill(level, 4 * index, 4 * index + 3))
  return rgba
}

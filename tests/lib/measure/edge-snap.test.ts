import { describe, expect, it } from 'vitest'
import { LEAST_STANDING, snapToEdge } from '@/lib/measure/edge-snap'
import { greyWindow, pixelNoise, type GreyWindow } from '@/lib/measure/grey-window'
import type { Point } from '@/lib/measure/point'
import { normalNoise, uniformNoise } from '../../support/seeded-noise'

const SIZE = 41
const MIDDLE: Point = { x: 20, y: 20 }

/** Share of light right of a straight edge blurred by a Gaussian: the error function by its logistic stand-in, off by under 1 %. */
const blurredStep = (place: number, sd: number): number => 1 / (1 + Math.exp((-1.702 * place) / sd))

type Drawn = { readonly angle: number; readonly offset: number; readonly contrast: number; readonly blur: number; readonly noise: number; readonly shade?: number; readonly seed: number }

/** An edge that runs at `angle`, passing the middle at `offset` along its normal. */
function drawn({ angle, offset, contrast, blur, noise, shade = 0, seed }: Drawn): GreyWindow {
  const random = normalNoise(seed)
  const data = Float64Array.from({ length: SIZE * SIZE }, (_, index) => {
    const [x, y] = [(index % SIZE) - MIDDLE.x, Math.floor(index / SIZE) - MIDDLE.y]
    const across = -x * Math.sin(angle) + y * Math.cos(angle) - offset
    return 120 + shade * x + contrast * blurredStep(across, blur) + noise * random()
  })
  return { data, width: SIZE, height: SIZE }
}

const direction = (angle: number): Point => ({ x: Math.cos(angle), y: Math.sin(angle) })
/** How far a snapped point lies off the drawn edge. */
const off = (point: Point, { angle, offset }: Drawn): number => -(point.x - MIDDLE.x) * Math.sin(angle) + (point.y - MIDDLE.y) * Math.cos(angle) - offset

const cases = Array.from({ length: 60 }, (_, seed): Drawn => {
  const random = uniformNoise(seed + 1)
  return { angle: 2 * Math.PI * random(), offset: 10 * (random() - 0.5), contrast: (random() < 0.5 ? -1 : 1) * (30 + 80 * random()), blur: 0.7 + 1.3 * random(), noise: 4 * random(), shade: 0.5 * (random() - 0.5), seed }
})

describe('a tap near an edge', () => {
  it('snaps onto it within half a pixel, whichever way it runs, through blur, noise and uneven light', () => {
    for (const edge of cases) {
      const found = snapToEdge(drawn(edge), MIDDLE, direction(edge.angle))
      expect(found, `an edge is found: ${JSON.stringify(edge)}`).not.toBeNull()
      expect(Math.abs(off(found?.point ?? MIDDLE, edge)), JSON.stringify(edge)).toBeLessThan(0.5)
      expect(found?.standing).toBeGreaterThanOrEqual(LEAST_STANDING)
    }
  })

  it('snaps within a twentieth of a pixel where the picture is clean', () => {
    for (const edge of cases) {
      const clean = { ...edge, noise: 0, shade: 0 }
      expect(Math.abs(off(snapToEdge(drawn(clean), MIDDLE, direction(edge.angle))?.point ?? MIDDLE, clean)), JSON.stringify(clean)).toBeLessThan(0.05)
    }
  })

  it('snaps within half a pixel when the direction is ten degrees off', () => {
    for (const edge of cases) {
      const found = snapToEdge(drawn(edge), MIDDLE, direction(edge.angle + 0.17))
      if (found !== null) expect(Math.abs(off(found.point, edge)), JSON.stringify(edge)).toBeLessThan(0.5)
    }
    expect(cases.filter((edge) => snapToEdge(drawn(edge), MIDDLE, direction(edge.angle + 0.17)) !== null).length).toBeGreaterThan(50)
  })

  it('does not care about the sign or the length of the direction, nor about the units of the grey scale', () => {
    const edge: Drawn = { angle: 0.4, offset: 2.3, contrast: 60, blur: 1.2, noise: 2, seed: 5 }
    const window = drawn(edge)
    const [one, other, scaled] = [
      snapToEdge(window, MIDDLE, direction(0.4)), snapToEdge(window, MIDDLE, { x: -7 * Math.cos(0.4), y: -7 * Math.sin(0.4) }),
      snapToEdge({ ...window, data: window.data.map((level) => level / 255) }, MIDDLE, direction(0.4)),
    ]
    expect(other?.point.x).toBeCloseTo(one?.point.x ?? NaN, 9)
    expect(scaled?.point.y).toBeCloseTo(one?.point.y ?? NaN, 9)
    expect(scaled?.strength).toBeCloseTo((one?.strength ?? NaN) / 255, 9)
    expect(scaled?.standing).toBeCloseTo(one?.standing ?? NaN, 6)
  })

  it('tells the strength in grey levels to the pixel', () => {
    // A step of 60 levels under a Gaussian of √(1.5² + 1²) pixels rises by 60 / (√(2π) · 1.803) at its middle.
    expect(snapToEdge(drawn({ angle: 0, offset: 0.2, contrast: 60, blur: 1.5, noise: 0, seed: 1 }), MIDDLE, direction(0))?.strength).toBeCloseTo(60 / (Math.sqrt(2 * Math.PI) * Math.hypot(1.5, 1)), 0)
  })

  it.each([[60, 1.2, 3, 0], [60, 1.2, 6, 0.4], [100, 0.8, 3, 0.9], [100, 2, 5, 0], [60, 2, 4, 2.5]])('states an error that repetition bears out: contrast %d, blur %d, noise %d, angle %d', (contrast, blur, noise, angle) => {
    const random = uniformNoise(3)
    const tries = Array.from({ length: 200 }, (_, seed) => {
      const edge: Drawn = { angle, offset: 4 * (random() - 0.5), contrast, blur, noise, seed }
      const found = snapToEdge(drawn(edge), MIDDLE, direction(angle))
      return found === null ? null : { miss: off(found.point, edge), stated: found.sdPx }
    }).filter((one) => one !== null)
    expect(tries.length).toBeGreaterThan(190)
    const observed = Math.sqrt(tries.reduce((sum, { miss }) => sum + miss ** 2, 0) / tries.length)
    const stated = tries.reduce((sum, one) => sum + one.stated, 0) / tries.length
    expect(stated / observed).toBeGreaterThan(1 / 1.5)
    expect(stated / observed).toBeLessThan(1.5)
  })

  it('takes the stronger of two edges', () => {
    const [weak, strong] = [drawn({ angle: 0, offset: -5, contrast: 30, blur: 1, noise: 0, seed: 1 }), drawn({ angle: 0, offset: 4, contrast: 80, blur: 1, noise: 0, seed: 1 })]
    const both = { ...weak, data: Float64Array.from(weak.data, (level, index) => level + (strong.data[index] ?? 0)) }
    expect(snapToEdge(both, MIDDLE, direction(0))?.point.y).toBeCloseTo(24, 1)
  })
})

describe('a tap where nothing stands out', () => {
  it('is left alone on an even plate, in even shading and on a black picture', () => {
    for (const shade of [0, 0.3, 2]) expect(snapToEdge(drawn({ angle: 0, offset: 0, contrast: 0, blur: 1, noise: 0, shade, seed: 1 }), MIDDLE, direction(1.2))).toBeNull()
    expect(snapToEdge({ data: new Uint8Array(SIZE * SIZE), width: SIZE, height: SIZE }, MIDDLE, direction(0))).toBeNull()
  })

  it('is left alone on a noisy plate: at most 1 in 100 is fooled', () => {
    const fooled = Array.from({ length: 500 }, (_, seed) => snapToEdge(drawn({ angle: 0, offset: 0, contrast: 0, blur: 1, noise: 6, shade: 0.3, seed }), MIDDLE, direction(seed))).filter((found) => found !== null)
    expect(fooled.length).toBeLessThanOrEqual(5)
  })

  it('is left alone on a rough plate, whose grain is as large as an edge is wide', () => {
    const fooled = Array.from({ length: 200 }, (_, seed) => {
      const { data, width, height } = drawn({ angle: 0, offset: 0, contrast: 0, blur: 1, noise: 25, seed })
      const grain = Float64Array.from(data, (_level, index) => [0, 1, 2, width, width + 1, width + 2, 2 * width, 2 * width + 1, 2 * width + 2].reduce((sum, step) => sum + (data[index + step] ?? 120), 0) / 9)
      return snapToEdge({ data: grain, width, height }, MIDDLE, direction(seed))
    }).filter((found) => found !== null)
    expect(fooled.length).toBeLessThanOrEqual(10)
  })

  it('is left alone when the edge lies beyond the search or the direction is across it', () => {
    const edge = drawn({ angle: 0, offset: 14, contrast: 80, blur: 1, noise: 1, seed: 3 })
    expect(snapToEdge(edge, MIDDLE, direction(0))).toBeNull()
    expect(snapToEdge(edge, MIDDLE, direction(0), { reachPx: 16 })?.point.y).toBeCloseTo(34, 1) // it is there for a wider search
    expect(snapToEdge(edge, { x: 38, y: 34 }, direction(0))).toBeNull() // the window ends before the lines do
    expect(snapToEdge(drawn({ angle: 0, offset: 2, contrast: 80, blur: 1, noise: 1, seed: 3 }), MIDDLE, direction(Math.PI / 2))).toBeNull()
  })

  it('is left alone in a window too small to hold the search, or with gaps in it', () => {
    expect(snapToEdge({ data: new Uint8Array(49).map((_, index) => (index < 24 ? 0 : 200)), width: 7, height: 7 }, { x: 3, y: 3 }, direction(0))).toBeNull()
    expect(snapToEdge({ data: new Float64Array(SIZE * SIZE).fill(NaN), width: SIZE, height: SIZE }, MIDDLE, direction(0))).toBeNull()
  })
})

describe('a window cut from a photo', () => {
  const rgba = Uint8ClampedArray.from({ length: 4 * 30 * 20 }, (_, index) => (index % 4 === 3 ? 255 : Math.floor(index / 4) % 251))

  it('holds the pixels around the tap and says where it lies', () => {
    const { window, origin } = greyWindow(rgba, { width: 30, height: 20 }, { x: 14.6, y: 9.2 }, 3)
    expect([window.width, window.height, origin]).toEqual([7, 7, { x: 12, y: 6 }])
    expect(window.data[0]).toBeCloseTo((6 * 30 + 12) % 251, 9)
    expect(window.data[48]).toBeCloseTo((12 * 30 + 18) % 251, 9)
  })

  it('is cut off at the border', () => {
    const { window, origin } = greyWindow(rgba, { width: 30, height: 20 }, { x: 29, y: 0 }, 4)
    expect([window.width, window.height, origin]).toEqual([5, 5, { x: 25, y: 0 }])
  })

  it('weighs the colours as the eye does', () => {
    const red = Uint8ClampedArray.from({ length: 4 * 9 }, (_, index) => (index % 4 === 0 || index % 4 === 3 ? 255 : 0))
    expect(greyWindow(red, { width: 3, height: 3 }, { x: 1, y: 1 }, 1).window.data[4]).toBeCloseTo(76.245, 9)
  })
})

it('reads the noise of a picture, not its shading', () => {
  const noisy = drawn({ angle: 0, offset: 0, contrast: 0, blur: 1, noise: 5, shade: 2, seed: 9 })
  expect(pixelNoise(noisy)).toBeGreaterThan(4.5)
  expect(pixelNoise(noisy)).toBeLessThan(5.5)
  expect(pixelNoise(drawn({ angle: 0, offset: 0, contrast: 0, blur: 1, noise: 0, shade: 2, seed: 9 }))).toBeLessThan(1e-9)
})

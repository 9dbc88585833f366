import { PhotoProblem } from './photo-problem'
import { requirePixel, type Point } from './point'

/** A small grey picture, row by row; any grey scale. Place (0, 0) is the middle of its first pixel. */
export type GreyWindow = { readonly data: Float64Array | Uint8Array | Uint8ClampedArray; readonly width: number; readonly height: number }

/** @throws PhotoProblem unless the sizes are whole, the window is at least 3 × 3 and holds as many numbers as it says */
export function requireWindow({ data, width, height }: GreyWindow): void {
  const whole = (size: number): boolean => Number.isSafeInteger(size) && size >= 3
  if (!whole(width) || !whole(height) || data.length !== width * height) {
    throw new PhotoProblem('window-not-possible', `A picture of ${String(width)} by ${String(height)} pixels with ${data.length} grey levels cannot be searched: choose the photo again.`)
  }
}

/**
 * The surroundings of a pixel as grey levels 0 to 255, cut off at the borders of the photo: luma 0.299 R + 0.587 G + 0.114 B
 * (ITU-R BT.601; from memory). Transparency is ignored.
 *
 * @param rgba four bytes a pixel, row by row
 * @param reachPx how far the window goes on each side of the pixel; 20 leaves `snapToEdge` room
 * @returns the window, and where its first pixel lies in the photo: add it to a place in the window to get the place in the photo
 * @throws PhotoProblem when the photo is not as large as it says, the pixel is not in it, or fewer than 3 × 3 pixels remain
 */
export function greyWindow(
  rgba: Uint8Array | Uint8ClampedArray, photo: { readonly width: number; readonly height: number }, pixel: Point, reachPx: number,
): { readonly window: GreyWindow; readonly origin: Point } {
  requirePixel(pixel, 'The tapped point')
  const { width, height } = photo
  const middle = { x: Math.round(pixel.x), y: Math.round(pixel.y) }
  if (rgba.length !== 4 * width * height || !(reachPx >= 1 && Number.isFinite(reachPx)) || middle.x < 0 || middle.y < 0 || middle.x >= width || middle.y >= height) {
    throw new PhotoProblem('window-not-possible', 'The tapped point is not in the photo: tap inside it.')
  }
  const reach = Math.floor(reachPx)
  const [left, top] = [Math.max(0, middle.x - reach), Math.max(0, middle.y - reach)]
  const [right, bottom] = [Math.min(width - 1, middle.x + reach), Math.min(height - 1, middle.y + reach)]
  const size = { width: right - left + 1, height: bottom - top + 1 }
  const data = Float64Array.from({ length: size.width * size.height }, (_, index) => {
    const at = 4 * ((top + Math.floor(index / size.width)) * width + left + (index % size.width))
    return 0.299 * (rgba[at] ?? 0) + 0.587 * (rgba[at + 1] ?? 0) + 0.114 * (rgba[at + 2] ?? 0)
  })
  const window = { data, ...size }
  requireWindow(window)
  return { window, origin: { x: left, y: top } }
}

/** Grey level between pixels, by bilinear interpolation; null outside the window. */
export function greyAt({ data, width, height }: GreyWindow, { x, y }: Point): number | null {
  if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1)) return null
  const [left, top] = [Math.min(Math.floor(x), width - 2), Math.min(Math.floor(y), height - 2)]
  const [fx, fy] = [x - left, y - top]
  const level = (dx: number, dy: number): number => data[(top + dy) * width + left + dx] ?? 0
  return (level(0, 0) * (1 - fx) + level(1, 0) * fx) * (1 - fy) + (level(0, 1) * (1 - fx) + level(1, 1) * fx) * fy
}

/**
 * Standard deviation of the noise of single pixels: mean absolute value of the window under a mask that flat and evenly shaded areas and
 * straight edges along the pixel grid leave at zero (Immerkær, Fast Noise Variance Estimation, 1996; from memory). Texture counts as noise.
 */
export function pixelNoise({ data, width, height }: GreyWindow): number {
  let sum = 0
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const level = (dx: number, dy: number): number => data[(y + dy) * width + x + dx] ?? 0
      sum += Math.abs(
        level(-1, -1) - 2 * level(0, -1) + level(1, -1) - 2 * level(-1, 0) + 4 * level(0, 0) - 2 * level(1, 0) + level(-1, 1) - 2 * level(0, 1) + level(1, 1),
      )
    }
  }
  return (Math.sqrt(Math.PI / 2) * sum) / (6 * (width - 2) * (height - 2))
}

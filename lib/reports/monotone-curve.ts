export type CurvePoint = { readonly x: number; readonly y: number }

/** A smooth line through given points that never swings past them: between two points it stays between their heights. */
export type MonotoneCurve = {
  /** The height at x; beyond the ends, the height of the nearest end. */
  readonly at: (x: number) => number
  /** SVG path of the stretch between two of the points, by index, from left to right. */
  readonly path: (from: number, to: number) => string
}

/**
 * Monotone cubic interpolation. So a drawn bead is never wider or narrower between two stations than at them.
 *
 * Source: M. Steffen, "A simple method for monotonic interpolation in one dimension", Astronomy and Astrophysics 239 (1990) 443-450.
 *
 * @throws RangeError when there is no point, a coordinate is not a number, or x does not rise from each point to the next
 */
export function monotoneCurve(points: readonly CurvePoint[]): MonotoneCurve {
  if (points.length === 0) throw new RangeError('A curve needs at least one point.')
  points.forEach((point, i) => {
    const before = points[i - 1]
    if (!Number.isFinite(point.x) || !Number.isFinite(point.y)) throw new RangeError(`A curve cannot pass through (${point.x}, ${point.y}).`)
    if (before && point.x <= before.x) throw new RangeError(`A curve runs from left to right: ${point.x} does not lie beyond ${before.x}.`)
  })
  const slopes = tangents(points)
  const segment = (i: number) => ({ a: pick(points, i), b: pick(points, i + 1), ma: pick(slopes, i), mb: pick(slopes, i + 1) })

  return {
    at: (x) => {
      const right = points.findIndex((point) => point.x >= x)
      if (right <= 0) return pick(points, right === 0 ? 0 : points.length - 1).y
      const { a, b, ma, mb } = segment(right - 1)
      return hermite(a, b, ma, mb, x)
    },
    path: (from, to) => {
      const start = pick(points, from)
      let d = `M${n(start.x)},${n(start.y)}`
      for (let i = from; i < to; i += 1) {
        const { a, b, ma, mb } = segment(i)
        const third = (b.x - a.x) / 3
        d += `C${n(a.x + third)},${n(a.y + ma * third)} ${n(b.x - third)},${n(b.y - mb * third)} ${n(b.x)},${n(b.y)}`
      }
      return d
    },
  }
}

/** The slope at each point: never steeper than twice the gentler neighbour, flat where the line turns. */
function tangents(points: readonly CurvePoint[]): number[] {
  const last = points.length - 1
  if (last === 0) return [0]
  const chord = (i: number): number => (pick(points, i + 1).y - pick(points, i).y) / (pick(points, i + 1).x - pick(points, i).x)
  const inner = (i: number): number => {
    const [s0, s1] = [chord(i - 1), chord(i)]
    const [h0, h1] = [pick(points, i).x - pick(points, i - 1).x, pick(points, i + 1).x - pick(points, i).x]
    const p = (s0 * h1 + s1 * h0) / (h0 + h1)
    return (Math.sign(s0) + Math.sign(s1)) * Math.min(Math.abs(s0), Math.abs(s1), Math.abs(p) / 2)
  }
  if (last === 1) return [chord(0), chord(0)]
  const slopes = points.map((_, i) => (i === 0 || i === last ? 0 : inner(i)))
  slopes[0] = (3 * chord(0) - pick(slopes, 1)) / 2
  slopes[last] = (3 * chord(last - 1) - pick(slopes, last - 1)) / 2
  return slopes
}

function hermite(a: CurvePoint, b: CurvePoint, ma: number, mb: number, x: number): number {
  const h = b.x - a.x
  const t = (x - a.x) / h
  const t2 = t * t
  const t3 = t2 * t
  return (2 * t3 - 3 * t2 + 1) * a.y + (t3 - 2 * t2 + t) * h * ma + (3 * t2 - 2 * t3) * b.y + (t3 - t2) * h * mb
}

function pick<T>(list: readonly T[], index: number): T {
  const item = list[index]
  if (item === undefined) throw new RangeError(`A curve of ${list.length} points has no point ${index}.`)
  return item
}

/** Coordinates to a hundredth: finer than any screen or printer draws. */
const n = (value: number): number => Math.round(value * 100) / 100

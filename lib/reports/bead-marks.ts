import type { IndicationKind } from '../scoring/types'

/** One indication as two SVG paths in the drawing's units: what is stroked and what is filled. Told apart by shape, not colour. */
export type MarkShape = { readonly stroked: string; readonly filled: string }

/** Where a mark goes: along x, on a line whose height is known at every x. */
export type MarkPlace = {
  readonly from: number
  readonly to: number
  readonly line: (x: number) => number
  /** Which way the plate lies from the line: -1 above, 1 below; on the bead itself 1. */
  readonly outward: -1 | 1
}

/** Shorter marks are widened to this, or nobody would see them; their true length stands in the words. */
const LEAST_LENGTH = 12
/** Kinds that run along the weld. The others are drawn as one sign at their middle. */
const RUNNING: readonly IndicationKind[] = ['undercut', 'overlap', 'crack', 'lack-of-fusion', 'slag']

/** The shape of an indication at its place. */
export function markShape(kind: IndicationKind, place: MarkPlace): MarkShape {
  const middle = (place.from + place.to) / 2
  const length = RUNNING.includes(kind) ? Math.max(place.to - place.from, LEAST_LENGTH) : 0
  return draw(kind, { ...place, from: middle - length / 2, to: middle + length / 2 }, middle)
}

function draw(kind: IndicationKind, place: MarkPlace, x: number): MarkShape {
  const y = place.line(x)
  switch (kind) {
    case 'undercut': return { stroked: '', filled: teeth(place) }
    case 'overlap': return { stroked: lobes(place), filled: '' }
    case 'crack': return { stroked: zigzag(place), filled: '' }
    case 'lack-of-fusion': return { stroked: along(place, -2.5) + along(place, 2.5), filled: '' }
    case 'slag': return { stroked: '', filled: lozenge(place) }
    case 'pore': return { stroked: ring(x, y, 4.5), filled: '' }
    case 'crater-pipe': return { stroked: ring(x, y, 6), filled: ring(x, y, 2) }
    case 'burn-through': return { stroked: '', filled: ring(x, y, 6.5) }
    case 'crater-crack': return { stroked: spokes(x, y, [0, 60, 120]), filled: '' }
    case 'arc-strike': return { stroked: spokes(x, y, [45, 135]), filled: '' }
    case 'poor-restart': return { stroked: path([[x - 6, y - 6], [x + 6, y + 6], [x + 6, y - 6], [x - 6, y + 6]], true), filled: '' }
    case 'spatter': return { stroked: '', filled: ring(x - 5, y + 1, 1.9) + ring(x, y - 3, 1.9) + ring(x + 5, y + 2, 1.9) }
  }
}

/** Undercut bites into the plate: a row of filled teeth from the toe outward. */
function teeth(place: MarkPlace): string {
  return repeat(place, 7, (a, b) => {
    const middle = (a + b) / 2
    return path([[a, place.line(a)], [middle, place.line(middle) + place.outward * 7], [b, place.line(b)]], true)
  })
}

/** Overlap lies on the plate: a row of round lobes from the toe outward. */
function lobes(place: MarkPlace): string {
  const sweep = place.outward === -1 ? 1 : 0
  return repeat(place, 9, (a, b) => {
    const r = n((b - a) / 2)
    return `M${n(a)},${n(place.line(a))}A${r},${r} 0 0 ${sweep} ${n(b)},${n(place.line(b))}`
  })
}

function zigzag(place: MarkPlace): string {
  const count = Math.max(2, Math.round((place.to - place.from) / 5))
  return path(steps(place, count).map((x, i) => [x, place.line(x) + (i % 2 === 0 ? 3.5 : -3.5)]))
}

function along(place: MarkPlace, offset: number): string {
  const count = Math.max(1, Math.round((place.to - place.from) / 8))
  return path(steps(place, count).map((x) => [x, place.line(x) + offset]))
}

function lozenge({ from, to, line }: MarkPlace): string {
  const middle = (from + to) / 2
  return path([[from, line(from)], [middle, line(middle) - 4], [to, line(to)], [middle, line(middle) + 4]], true)
}

function spokes(x: number, y: number, angles: readonly number[]): string {
  return angles
    .map((degrees) => [Math.cos((degrees * Math.PI) / 180) * 6, Math.sin((degrees * Math.PI) / 180) * 6] as const)
    .map(([dx, dy]) => path([[x - dx, y - dy], [x + dx, y + dy]]))
    .join('')
}

function ring(x: number, y: number, r: number): string {
  return `M${n(x - r)},${n(y)}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0Z`
}

function repeat(place: MarkPlace, size: number, one: (a: number, b: number) => string): string {
  const xs = steps(place, Math.max(1, Math.round((place.to - place.from) / size)))
  return xs.slice(1).map((b, i) => one(xs[i] ?? b, b)).join('')
}

function steps({ from, to }: MarkPlace, count: number): number[] {
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count)
}

function path(points: readonly (readonly [number, number])[], closed = false): string {
  return `M${points.map(([x, y]) => `${n(x)},${n(y)}`).join('L')}${closed ? 'Z' : ''}`
}

const n = (value: number): number => Math.round(value * 100) / 100

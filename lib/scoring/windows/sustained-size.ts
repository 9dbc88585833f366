import { TOLERANCE } from '../tolerance'
import { longestInWindow, type Covered, type Span } from './longest-in-window'

/** How much of the weld may be beyond the everyday limit: `allowedMm` in any `windowMm`. */
export type Room = { readonly windowMm: number; readonly allowedMm: number }

const byStart = (a: Span, b: Span): number => a.fromMm - b.fromMm
const byEnd = (a: Span, b: Span): number => a.toMm - b.toMm
const bySizeFalling = (a: Span, b: Span): number => b.size - a.size

/** Spans mostly come in order along the weld already. */
function inOrder(spans: readonly Span[], compare: (a: Span, b: Span) => number): readonly Span[] {
  for (let i = 1; i < spans.length; i++) {
    if (compare(spans[i - 1] as Span, spans[i] as Span) > 0) return [...spans].sort(compare)
  }
  return spans
}

function totalLength(spans: readonly Span[]): number {
  let length = 0
  for (const { fromMm, toMm } of spans) length += toMm - fromMm
  return length
}

/** The most length of the spans larger than a size, in any window. */
function longestBeyond(starting: readonly Span[], ending: readonly Span[], size: number, room: Room, weldMm: number): Covered {
  const starts: number[] = []
  const ends: number[] = []
  for (const span of starting) if (span.size > size) starts.push(span.fromMm)
  for (const span of ending) if (span.size > size) ends.push(span.toMm)
  return longestInWindow(starts, ends, room.windowMm, weldMm)
}

/**
 * The size a weld sustains: the least size such that the spans larger than it fit the room. The everyday limit is kept exactly when
 * the sustained size is within it, and the distance between the two is the rule's margin, in the unit of the reading.
 *
 * -Infinity when all spans fit the room together. O(n log n).
 */
export function sustainedSize(spans: readonly Span[], room: Room, weldMm: number): number {
  const most = room.allowedMm + TOLERANCE
  if (totalLength(spans) <= most) return -Infinity
  const falling = inOrder(spans, bySizeFalling)
  if (room.windowMm >= weldMm) return sustainedInWhole(falling, most)

  const starting = inOrder(spans, byStart)
  const ending = inOrder(spans, byEnd)
  if (longestBeyond(starting, ending, -Infinity, room, weldMm).lengthMm <= most) return -Infinity
  // Nothing is larger than the largest, so the first always fits: find the last that does.
  let fitting = 0
  let beyond = falling.length
  while (beyond - fitting > 1) {
    const middle = (fitting + beyond) >> 1
    const { size } = falling[middle] as Span
    if (longestBeyond(starting, ending, size, room, weldMm).lengthMm <= most) fitting = middle
    else beyond = middle
  }
  return (falling[fitting] as Span).size
}

/** With the whole weld for a window only lengths count, not places. */
function sustainedInWhole(falling: readonly Span[], most: number): number {
  let length = 0
  for (const { fromMm, toMm, size } of falling) {
    length += toMm - fromMm
    if (length > most) return size
  }
  return -Infinity
}

/** The most length larger than a size in any window of the room, and where that window begins. */
export function mostBeyond(spans: readonly Span[], size: number, room: Room, weldMm: number): Covered {
  return longestBeyond(inOrder(spans, byStart), inOrder(spans, byEnd), size + TOLERANCE, room, weldMm)
}

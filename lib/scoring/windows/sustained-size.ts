import { TOLERANCE } from '../tolerance'
import { longestInWindow, type Covered, type Span } from './longest-in-window'

/** How much of the weld may be beyond the everyday limit: `allowedMm` in any `windowMm`. */
export type Room = { readonly windowMm: number; readonly allowedMm: number }

const isLarger = (a: Span, b: Span): number => b.size - a.size
const beginsBefore = (a: Span, b: Span): number => a.fromMm - b.fromMm
const endsBefore = (a: Span, b: Span): number => a.toMm - b.toMm

/**
 * The size a weld sustains: the least size such that the spans larger than it fit the room. The everyday limit is kept exactly when
 * the sustained size is within it, and the distance between the two is the rule's margin, in the unit of the reading.
 *
 * -Infinity when all spans fit the room together. O(n log n).
 */
export function sustainedSize(spans: readonly Span[], room: Room, weldMm: number): number {
  if (totalLength(spans) <= room.allowedMm + TOLERANCE) return -Infinity
  const largestFirst = [...spans].sort(isLarger)
  if (room.windowMm >= weldMm) return sustainedInWhole(largestFirst, room.allowedMm)

  const byStart = [...spans].sort(beginsBefore)
  const byEnd = [...spans].sort(endsBefore)
  const fits = (size: number): boolean => lengthBeyond(byStart, byEnd, size, room, weldMm).lengthMm <= room.allowedMm + TOLERANCE
  if (fits(-Infinity)) return -Infinity
  // Nothing is larger than the largest, so the first always fits: find the last that does.
  let fitting = 0
  let beyond = largestFirst.length
  while (beyond - fitting > 1) {
    const middle = (fitting + beyond) >> 1
    if (fits((largestFirst[middle] as Span).size)) fitting = middle
    else beyond = middle
  }
  return (largestFirst[fitting] as Span).size
}

/** With the whole weld for a window only lengths count, not places. */
function sustainedInWhole(largestFirst: readonly Span[], allowedMm: number): number {
  let length = 0
  for (const { fromMm, toMm, size } of largestFirst) {
    length += toMm - fromMm
    if (length > allowedMm + TOLERANCE) return size
  }
  return -Infinity
}

function totalLength(spans: readonly Span[]): number {
  let length = 0
  for (const { fromMm, toMm } of spans) length += toMm - fromMm
  return length
}

function lengthBeyond(byStart: readonly Span[], byEnd: readonly Span[], size: number, room: Room, weldMm: number): Covered {
  const starts: number[] = []
  const ends: number[] = []
  for (const span of byStart) if (span.size > size) starts.push(span.fromMm)
  for (const span of byEnd) if (span.size > size) ends.push(span.toMm)
  return longestInWindow(starts, ends, room.windowMm, weldMm)
}

/** The most length larger than a size in any window of the room, and where that window begins. */
export function mostBeyond(spans: readonly Span[], size: number, room: Room, weldMm: number): Covered {
  const beyond = spans.filter((span) => span.size > size + TOLERANCE)
  if (beyond.length === 0) return { lengthMm: 0, fromMm: 0 }
  if (room.windowMm >= weldMm) return { lengthMm: totalLength(beyond), fromMm: 0 }
  return lengthBeyond([...beyond].sort(beginsBefore), [...beyond].sort(endsBefore), size, room, weldMm)
}

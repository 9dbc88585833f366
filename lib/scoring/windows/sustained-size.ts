import { TOLERANCE } from '../tolerance'
import { ascending, longestInWindow, type Covered, type Span } from './longest-in-window'

/** How much of the weld may be beyond the everyday limit: `allowedMm` in any `windowMm`. */
export type Room = { readonly windowMm: number; readonly allowedMm: number }

const beginsBefore = (a: Span, b: Span): number => a.fromMm - b.fromMm
const endsBefore = (a: Span, b: Span): number => a.toMm - b.toMm

/**
 * The size a weld sustains: the least size such that the spans larger than it fit the room. The everyday limit is kept exactly when
 * the sustained size is within it, and the distance between the two is the rule's margin, in the unit of the reading.
 *
 * -Infinity when all spans fit the room together. O(n log n).
 */
export function sustainedSize(spans: readonly Span[], room: Room, weldMm: number): number {
  let total = 0
  for (const span of spans) total += span.toMm - span.fromMm
  if (total <= room.allowedMm + TOLERANCE) return -Infinity

  const sizes = [...new Set(spans.map((span) => span.size))].sort(ascending)
  const byStart = [...spans].sort(beginsBefore)
  const byEnd = [...spans].sort(endsBefore)
  const fits = (size: number): boolean => lengthBeyond(byStart, byEnd, size, room, weldMm).lengthMm <= room.allowedMm + TOLERANCE
  if (fits(-Infinity)) return -Infinity
  // What is larger than the largest size is nothing, so the last size always fits: find the first that does.
  let low = 0
  let high = sizes.length - 1
  while (low < high) {
    const middle = (low + high) >> 1
    if (fits(sizes[middle] as number)) high = middle
    else low = middle + 1
  }
  return sizes[low] as number
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
  return lengthBeyond([...spans].sort(beginsBefore), [...spans].sort(endsBefore), size + TOLERANCE, room, weldMm)
}

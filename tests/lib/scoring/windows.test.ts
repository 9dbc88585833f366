import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import { heaviestWindow } from '@/lib/scoring/windows/heaviest-window'
import { longestInWindow, type Span } from '@/lib/scoring/windows/longest-in-window'
import { stretches } from '@/lib/scoring/windows/stretches'
import { mostBeyond, sustainedSize } from '@/lib/scoring/windows/sustained-size'

// Second opinion: try every window on a grid fine enough that the greatest value falls on it. All lengths are quarters of a millimetre.
const GRID = 0.25
const quarters = (most: number) => fc.integer({ min: 0, max: most * 4 }).map((n) => n / 4)

function* windowStarts(windowMm: number, weldMm: number): Generator<number> {
  for (let from = 0; from <= Math.max(0, weldMm - windowMm); from += GRID) yield from
}

function longestByGrid(spans: readonly Span[], windowMm: number, weldMm: number): number {
  let longest = 0
  for (const from of windowStarts(windowMm, weldMm)) {
    const to = from + Math.min(windowMm, weldMm)
    const length = spans.reduce((sum, span) => sum + Math.max(0, Math.min(span.toMm, to) - Math.max(span.fromMm, from)), 0)
    longest = Math.max(longest, length)
  }
  return longest
}

const WELD = 40
const spansArbitrary = fc.array(
  fc.tuple(quarters(WELD), quarters(25), fc.integer({ min: 1, max: 5 })).map(([fromMm, length, size]): Span => ({ fromMm, toMm: Math.min(fromMm + length, WELD), size })),
  { maxLength: 9 })
const windowArbitrary = quarters(50).filter((windowMm) => windowMm > 0)

it('finds the same greatest length in a sliding window as trying every window', () => {
  fc.assert(fc.property(spansArbitrary, windowArbitrary, (spans, windowMm) => {
    const starts = spans.map((span) => span.fromMm).sort((a, b) => a - b)
    const ends = spans.map((span) => span.toMm).sort((a, b) => a - b)
    const found = longestInWindow(starts, ends, windowMm, WELD)
    expect(found.lengthMm).toBeCloseTo(longestByGrid(spans, windowMm, WELD), 9)
    if (windowMm < WELD && spans.length > 0) {
      const there = spans.reduce((sum, span) => sum + Math.max(0, Math.min(span.toMm, found.fromMm + windowMm) - Math.max(span.fromMm, found.fromMm)), 0)
      expect(there).toBeCloseTo(found.lengthMm, 9)
    }
  }))
})

it('finds the same heaviest window as trying every window', () => {
  fc.assert(fc.property(fc.array(fc.tuple(quarters(WELD), fc.integer({ min: 1, max: 9 })), { maxLength: 12 }), windowArbitrary, (list, windowMm) => {
    const pores = [...list].sort(([a], [b]) => a - b)
    let heaviest = 0
    for (const from of windowStarts(windowMm, WELD)) {
      heaviest = Math.max(heaviest, pores.reduce((sum, [at, size]) => sum + (at >= from && at <= from + windowMm ? size : 0), 0))
    }
    expect(heaviestWindow(pores.map(([at]) => at), pores.map(([, size]) => size), windowMm).sum).toBe(heaviest)
  }))
})

it('sustains the least size beyond which the rest fits the room', () => {
  fc.assert(fc.property(spansArbitrary, windowArbitrary, quarters(20), (spans, windowMm, allowedMm) => {
    const fits = (size: number) => longestByGrid(spans.filter((span) => span.size > size), windowMm, WELD) <= allowedMm
    const naive = [-Infinity, ...spans.map((span) => span.size).sort((a, b) => a - b)].find(fits)
    expect(sustainedSize(spans, { windowMm, allowedMm }, WELD)).toBe(naive)
  }))
})

it('measures what is beyond a size in the worst window', () => {
  fc.assert(fc.property(spansArbitrary, windowArbitrary, fc.integer({ min: 0, max: 5 }), (spans, windowMm, size) => {
    const expected = longestByGrid(spans.filter((span) => span.size > size), windowMm, WELD)
    expect(mostBeyond(spans, size, { windowMm, allowedMm: 0 }, WELD).lengthMm).toBeCloseTo(expected, 9)
  }))
})

const at = (...places: number[]) => [...places].sort((a, b) => a - b).map((atMm) => ({ atMm }))

it('gives each station the stretch half-way to its neighbours, and the ends to the ends', () => {
  expect(stretches(at(10, 30, 80), 100)).toEqual([0, 20, 20, 55, 55, 100])
  expect(stretches(at(40), 100)).toEqual([0, 100])
  expect(stretches([], 100)).toEqual([])
})

it('gives stations at one place the same stretch', () => {
  expect(stretches(at(20, 60, 60), 100)).toEqual([0, 40, 40, 100, 40, 100])
})

it('covers the weld with stretches, without gap or overlap', () => {
  fc.assert(fc.property(fc.uniqueArray(quarters(WELD), { minLength: 1, maxLength: 9 }), (places) => {
    const bounds = stretches(at(...places), WELD)
    expect([bounds[0], bounds.at(-1)]).toEqual([0, WELD])
    for (let i = 1; i < bounds.length - 1; i += 2) expect(bounds[i]).toBe(bounds[i + 1])
  }))
})

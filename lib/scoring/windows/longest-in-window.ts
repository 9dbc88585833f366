/** A stretch of the weld and the size read there. */
export type Span = { readonly fromMm: number; readonly toMm: number; readonly size: number }

export type Covered = { readonly lengthMm: number; readonly fromMm: number }

/**
 * How much of the spans lies before a place, for places asked in rising order: each call walks on from the last, so a whole
 * sweep is linear. `starts` and `ends` are the spans' ends, each sorted.
 */
function lengthBefore(starts: readonly number[], ends: readonly number[]): (place: number) => number {
  let begun = 0
  let done = 0
  let sum = 0
  return (place) => {
    while (begun < starts.length && (starts[begun] as number) <= place) sum -= starts[begun++] as number
    while (done < ends.length && (ends[done] as number) <= place) sum += ends[done++] as number
    return sum + (begun - done) * place
  }
}

function sweep(places: readonly number[], starts: readonly number[], ends: readonly number[], windowMm: number, lastStart: number): Covered {
  const beforeStart = lengthBefore(starts, ends)
  const beforeEnd = lengthBefore(starts, ends)
  let best: Covered = { lengthMm: -1, fromMm: 0 }
  for (const place of places) {
    const from = Math.min(Math.max(place, 0), lastStart)
    const lengthMm = beforeEnd(from + windowMm) - beforeStart(from)
    if (lengthMm > best.lengthMm) best = { lengthMm, fromMm: from }
  }
  return best
}

/**
 * The greatest total length of spans inside any window of the weld, and where that window begins. Spans are clipped to the window;
 * spans that overlap (the two toes) add up. The window slides continuously: the total, as a function of where the window begins,
 * is made of straight pieces, so its greatest value is found where a span begins at the window's start or ends at its end.
 *
 * @param starts where spans begin, sorted
 * @param ends where spans end, sorted
 */
export function longestInWindow(starts: readonly number[], ends: readonly number[], windowMm: number, weldMm: number): Covered {
  if (starts.length === 0) return { lengthMm: 0, fromMm: 0 }
  const lastStart = weldMm - windowMm
  if (lastStart <= 0) {
    let lengthMm = 0
    for (let i = 0; i < starts.length; i++) lengthMm += (ends[i] as number) - (starts[i] as number)
    return { lengthMm, fromMm: 0 }
  }
  const fromStarts = sweep(starts, starts, ends, windowMm, lastStart)
  const fromEnds = sweep(ends.map((end) => end - windowMm), starts, ends, windowMm, lastStart)
  if (fromEnds.lengthMm > fromStarts.lengthMm) return fromEnds
  return fromStarts
}

/** A stretch of the weld and the size read there. */
export type Span = { readonly fromMm: number; readonly toMm: number; readonly size: number }

export type Covered = { readonly lengthMm: number; readonly fromMm: number }

/**
 * The greatest total length of spans inside any window of the weld, and where that window begins. Spans are clipped to the window;
 * spans that overlap (the two toes) add up.
 *
 * The window slides continuously: the total, as a function of where the window begins, is made of straight pieces, so its greatest
 * value is found where a span begins at the window's start or ends at its end. Those places are walked in rising order, keeping the
 * length of spans that lies before the window's start and before its end, so a whole sweep is linear.
 *
 * @param starts where spans begin, sorted
 * @param ends where spans end, sorted
 */
export function longestInWindow(starts: readonly number[], ends: readonly number[], windowMm: number, weldMm: number): Covered {
  const count = starts.length
  const lastStart = Math.max(0, weldMm - windowMm)
  let lengthMm = 0
  let fromMm = 0
  // Of the spans begun and done before a place, the length before it is: sum of the ends done, less the starts begun, plus the place
  // once for each span begun and not done.
  let begunBefore = 0, doneBefore = 0, sumBefore = 0
  let begunWithin = 0, doneWithin = 0, sumWithin = 0
  let nextStart = 0, nextEnd = 0

  while (nextStart < count || nextEnd < count) {
    const byStart = nextStart < count ? (starts[nextStart] as number) : Infinity
    const byEnd = nextEnd < count ? (ends[nextEnd] as number) - windowMm : Infinity
    if (byStart <= byEnd) nextStart++
    else nextEnd++
    const from = Math.min(Math.max(Math.min(byStart, byEnd), 0), lastStart)
    const to = from + windowMm
    while (begunBefore < count && (starts[begunBefore] as number) <= from) sumBefore -= starts[begunBefore++] as number
    while (doneBefore < count && (ends[doneBefore] as number) <= from) sumBefore += ends[doneBefore++] as number
    while (begunWithin < count && (starts[begunWithin] as number) <= to) sumWithin -= starts[begunWithin++] as number
    while (doneWithin < count && (ends[doneWithin] as number) <= to) sumWithin += ends[doneWithin++] as number
    const length = sumWithin + (begunWithin - doneWithin) * to - sumBefore - (begunBefore - doneBefore) * from
    if (length > lengthMm) {
      lengthMm = length
      fromMm = from
    }
  }
  return { lengthMm, fromMm }
}

/** Lower and upper limit in the units of the estimate; `low <= high`. */
export type Interval = { readonly low: number; readonly high: number }

/**
 * The interval cut to what the quantity can be, and stretched to hold its estimate where rounding, or a confidence so low
 * that the limits close up on the median, would leave it just outside.
 */
export function intervalAround(estimate: number, low: number, high: number, least = -Infinity, most = Infinity): Interval {
  return { low: Math.max(least, Math.min(low, estimate)), high: Math.min(most, Math.max(high, estimate)) }
}

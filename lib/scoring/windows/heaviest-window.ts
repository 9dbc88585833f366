import { TOLERANCE } from '../tolerance'

export type Heaviest = { readonly sum: number; readonly fromMm: number; readonly toMm: number }

/**
 * The greatest sum of weights whose places lie in any window of the weld. Both ends of a window belong to it: two pores exactly an
 * inch apart lie in one inch. The window slides continuously; the heaviest can always be moved until its last place is one of these.
 *
 * @param places along the weld, sorted; the result spans from the first to the last place counted
 */
export function heaviestWindow(places: readonly number[], weights: readonly number[], windowMm: number): Heaviest {
  let sum = 0
  let first = 0
  let best: Heaviest = { sum: 0, fromMm: 0, toMm: 0 }
  for (let last = 0; last < places.length; last++) {
    const end = places[last] as number
    sum += weights[last] as number
    while (end - (places[first] as number) > windowMm + TOLERANCE) sum -= weights[first++] as number
    if (sum > best.sum) best = { sum, fromMm: places[first] as number, toMm: end }
  }
  return best
}

/**
 * The stretch each station stands for: half-way to its neighbours, the end stations to the ends of the weld. Stations at one place
 * stand for the same stretch.
 *
 * @param places of the stations, sorted
 * @returns the ends of the stretches: station `i` stands for `[bounds[2i], bounds[2i + 1]]`
 */
export function stretches(places: readonly number[], weldMm: number): readonly number[] {
  const bounds: number[] = []
  let first = 0
  while (first < places.length) {
    const at = places[first] as number
    let next = first + 1
    while (next < places.length && places[next] === at) next++
    const before = places[first - 1]
    const after = places[next]
    const from = before === undefined ? 0 : (before + at) / 2
    const to = after === undefined ? weldMm : (at + after) / 2
    for (; first < next; first++) bounds.push(from, to)
  }
  return bounds
}

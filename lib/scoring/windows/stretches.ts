/**
 * The stretch each station stands for: half-way to its neighbours, the end stations to the ends of the weld. Stations at one place
 * stand for the same stretch.
 *
 * @param stations in order along the weld
 * @returns the ends of the stretches: station `i` stands for `[bounds[2i], bounds[2i + 1]]`
 */
export function stretches(stations: readonly { readonly atMm: number }[], weldMm: number): readonly number[] {
  const bounds: number[] = []
  let first = 0
  while (first < stations.length) {
    const at = stations[first]?.atMm ?? 0
    let next = first + 1
    while (next < stations.length && stations[next]?.atMm === at) next++
    const before = stations[first - 1]?.atMm
    const after = stations[next]?.atMm
    const from = before === undefined ? 0 : (before + at) / 2
    const to = after === undefined ? weldMm : (at + after) / 2
    for (; first < next; first++) bounds.push(from, to)
  }
  return bounds
}

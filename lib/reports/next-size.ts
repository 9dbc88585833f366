/** One box of the sizes form: which size, at which station, counted from 0. */
export type SizePlace<Box extends string> = { readonly station: number; readonly box: Box }

/**
 * The box to fill after `from`: the same size at the stations after it, then the next size at all stations, so that one gauge is in
 * hand at a time; past the end, what was passed over. Only empty boxes count. null when every other box holds something.
 *
 * @param from null to begin
 */
export function nextSizeToFill<Box extends string>(
  stations: readonly Readonly<Record<Box, string>>[], boxes: readonly Box[], from: SizePlace<Box> | null,
): SizePlace<Box> | null {
  const places = boxes.flatMap((box) => stations.map((_, station) => ({ station, box })))
  const at = from === null ? -1 : places.findIndex((place) => place.station === from.station && place.box === from.box)
  const ahead = [...places.slice(at + 1), ...places.slice(0, Math.max(at, 0))]
  return ahead.find((place) => isEmpty(stations[place.station]?.[place.box])) ?? null
}

/** How many boxes hold something, of how many. */
export function sizesFilled<Box extends string>(stations: readonly Readonly<Record<Box, string>>[], boxes: readonly Box[]): { readonly filled: number; readonly of: number } {
  const all = stations.flatMap((station) => boxes.map((box) => station[box]))
  return { filled: all.filter((text) => !isEmpty(text)).length, of: all.length }
}

const isEmpty = (text: string | undefined): boolean => (text ?? '').trim() === ''

import type { WidthReading } from './bead-widths'
import { measuredStations, type DropReason } from './measured-stations'
import type { PhotoMeasurement } from './photo-measurement'

/** A width that a station of the form takes, mm. */
export type StationWidth = { readonly station: number; /** The marked pair it comes from, from 0. */ readonly pair: number; readonly widthMm: number; readonly widthSdMm: number }

export type WidthsAtStations = {
  /** In the order of the stations (from 0), each at most once. */
  readonly filled: readonly StationWidth[]
  /** Pairs (from 0) that no station takes, and why. `off-station`: nearer to none of them; `station-taken`: another pair lies nearer to it. */
  readonly dropped: readonly { readonly pair: number; readonly reason: DropReason | 'off-station' | 'station-taken' }[]
  /** Marked length over the weld's own, less 1: 0.1 is a weld that measures 10 % too long. */
  readonly lengthOff: number
}

/** A weld that measures longer or shorter than it is by more than this: the scale or the ends were marked wrong. Common practice, no source. */
export const MOST_LENGTH_OFF = 0.1
/** A pair belongs to a station no farther off than this share of the way to the next one. */
const REACH_SHARE = 0.5

/**
 * Which station each measured width belongs to: the nearest. Places are taken as shares of the marked length, so that an error of the
 * scale does not carry a pair to the next station.
 *
 * @param placesMm where the stations lie, from the start of the weld
 * @throws PhotoProblem when the length of the weld is not above zero
 */
export function widthsAtStations(measurement: Pick<PhotoMeasurement, 'widths' | 'length'>, placesMm: readonly number[], weldLengthMm: number): WidthsAtStations {
  const stretch = measurement.length.mm > 0 ? weldLengthMm / measurement.length.mm : 1
  const readings = measurement.widths.map((reading) => ({ ...reading, atMm: reading.atMm * stretch, atSdMm: reading.atSdMm * stretch }))
  const { dropped } = measuredStations(readings, weldLengthMm)
  const out = new Map<number, WidthsAtStations['dropped'][number]['reason']>(dropped.map(({ reading, reason }) => [reading.pair, reason]))
  const best = new Map<number, WidthReading & { readonly off: number }>()
  for (const reading of readings) {
    if (out.has(reading.pair)) continue
    const { station, off, reach } = nearest(placesMm, reading.atMm, weldLengthMm)
    const before = best.get(station)
    if (off > reach) out.set(reading.pair, 'off-station')
    else if (before && before.off <= off) out.set(reading.pair, 'station-taken')
    else {
      if (before) out.set(before.pair, 'station-taken')
      best.set(station, { ...reading, off })
    }
  }
  return {
    filled: [...best].sort(([a], [b]) => a - b).map(([station, { pair, widthMm, widthSdMm }]) => ({ station, pair, widthMm, widthSdMm })),
    dropped: [...out].sort(([a], [b]) => a - b).map(([pair, reason]) => ({ pair, reason })),
    lengthOff: measurement.length.mm / weldLengthMm - 1,
  }
}

/** The station nearest to a place, how far it is, and how far it may be: half the way to its own nearest neighbour. */
function nearest(placesMm: readonly number[], atMm: number, weldLengthMm: number): { readonly station: number; readonly off: number; readonly reach: number } {
  const distances = placesMm.map((place) => Math.abs(place - atMm))
  const off = Math.min(...distances, Infinity)
  const station = distances.indexOf(off)
  const here = placesMm[station] ?? 0
  const gaps = placesMm.flatMap((place, index) => (index === station ? [] : [Math.abs(place - here)]))
  return { station, off, reach: REACH_SHARE * Math.min(...gaps, weldLengthMm) + 1e-9 }
}

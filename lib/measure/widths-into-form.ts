import type { SizeFrame } from '../reports/size-frame'
import type { ReadingsForm } from '../schemas/readings'
import { formatForReader } from '../units/display'
import { parseLength, type LengthUnit } from '../units/length'
import type { WidthBand } from './band-call'
import type { StationWidth } from './widths-at-stations'

/** What a photo is measured for: the stations of a form that have a place, in the reader's units, and what the criteria allow there. */
export type PhotoTask = {
  readonly units: LengthUnit
  readonly weldLengthMm: number
  /** Rows of the form (from 0) whose place can be read, from the start of the weld on. */
  readonly places: readonly { readonly row: number; readonly atMm: number }[]
  /** null where the criteria set no limit of the width. */
  readonly band: WidthBand | null
}

/** The stations of a form that lie on the weld. A place that cannot be read is passed by: the form itself says so when it is sent. */
export function stationPlaces(stations: ReadingsForm['stations'], units: LengthUnit, weldLengthMm: number): PhotoTask['places'] {
  return stations.flatMap(({ at }, row) => {
    const atMm = readPlace(at, units)
    return atMm === null || atMm > weldLengthMm ? [] : [{ row, atMm }]
  }).sort((a, b) => a.atMm - b.atMm)
}

/** What a photo is measured for on this form. */
export const photoTask = ({ stations }: Pick<ReadingsForm, 'stations'>, { units, lengthMm, pads }: SizeFrame): PhotoTask =>
  ({ units, weldLengthMm: lengthMm, places: stationPlaces(stations, units, lengthMm), band: pads.width?.allowed ?? null })

/** The form with the accepted widths in it; every other box stays as it is. `widths` count the places of the task. */
export function withWidths(readings: ReadingsForm, { places, units }: PhotoTask, widths: readonly Pick<StationWidth, 'station' | 'widthMm'>[]): ReadingsForm {
  const byRow = new Map(widths.flatMap(({ station, widthMm }) => {
    const place = places[station]
    return place ? [[place.row, formatForReader(widthMm, units).replace(/ (in|mm)$/, '')] as const] : []
  }))
  return { ...readings, stations: readings.stations.map((station, row) => ({ ...station, width: byRow.get(row) ?? station.width })) }
}

function readPlace(text: string, units: LengthUnit): number | null {
  try {
    return text.trim() === '' ? null : parseLength(text, units)
  } catch {
    return null
  }
}

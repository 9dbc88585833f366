import type { WidthReading } from './bead-widths'
import { PhotoProblem } from './photo-problem'

/** A station of the log as a photo fills it, mm. */
export type MeasuredStation = { readonly atMm: number; readonly widthMm: number }

/**
 * Why a reading does not become a station: it lies before the start or past the end of the weld; its toes are not opposite each other;
 * its width is not clear of zero; an earlier reading stands at the same place.
 */
export type DropReason = 'before-start' | 'past-end' | 'not-opposite' | 'no-width' | 'same-place'

export type MeasuredStations = {
  /** From the start of the weld on, no two at one place. */
  readonly stations: readonly MeasuredStation[]
  readonly dropped: readonly { readonly reading: WidthReading; readonly reason: DropReason }[]
}

/** So many standard deviations count as the error of picking. */
const ERRORS = 2
/** Nearer than this, two readings are of one place. */
const SAME_PLACE_MM = 0.05

/**
 * The stations that width readings give a weld of this length. A reading outside the weld by no more than two standard deviations of
 * its place was picked at the end and is put there; one farther out is dropped. Toes picked farther apart along the bead than across it
 * are no pair. Of two readings at one place (within 0.05 mm) the one picked first stands.
 *
 * @throws PhotoProblem unless the length is above zero and finite
 */
export function measuredStations(readings: readonly WidthReading[], weldLengthMm: number): MeasuredStations {
  if (!(Number.isFinite(weldLengthMm) && weldLengthMm > 0)) throw new PhotoProblem('length-not-possible', `A weld ${String(weldLengthMm)} mm long has no stations: enter the length of the weld.`)
  const stations: MeasuredStation[] = []
  const dropped: { reading: WidthReading; reason: DropReason }[] = []
  for (const reading of [...readings].sort((a, b) => a.pair - b.pair)) {
    const station = { atMm: Math.min(Math.max(reading.atMm, 0), weldLengthMm), widthMm: reading.widthMm }
    const reason = dropReason(reading, weldLengthMm) ?? (stations.some(({ atMm }) => Math.abs(atMm - station.atMm) < SAME_PLACE_MM) ? 'same-place' : null)
    if (reason === null) stations.push(station)
    else dropped.push({ reading, reason })
  }
  return { stations: stations.sort((a, b) => a.atMm - b.atMm), dropped }
}

function dropReason({ atMm, atSdMm, widthMm, widthSdMm, skewMm }: WidthReading, weldLengthMm: number): DropReason | null {
  if (!(widthMm > ERRORS * widthSdMm)) return 'no-width'
  if (skewMm > widthMm) return 'not-opposite'
  if (atMm < -ERRORS * atSdMm) return 'before-start'
  if (atMm > weldLengthMm + ERRORS * atSdMm) return 'past-end'
  return null
}

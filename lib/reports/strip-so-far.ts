import type { Locale } from '../language/say'
import type { ReadingsForm } from '../schemas/readings'
import type { Indication, Station } from '../scoring/types'
import { parseLength, type LengthUnit } from '../units/length'
import type { BeadStripInput } from './bead-strip-input'

/** What the bead of a form is drawn on. Millimetres. */
export type StripFrame = {
  readonly lengthMm: number
  readonly position: string
  readonly widthBand: BeadStripInput['widthBand']
  readonly units: LengthUnit
}

/** The bead as far as the form can be read now: boxes that are empty, unreadable or off the weld are left out of the drawing, not of the form. */
export function stripSoFar(form: Pick<ReadingsForm, 'stations' | 'indications'>, frame: StripFrame, locale: Locale): BeadStripInput {
  const { lengthMm, units } = frame
  const sizeOf = (text: string): number | null => readSize(text, units)
  const placeOf = (text: string): number | null => {
    const at = sizeOf(text)
    return at !== null && at <= lengthMm + 1e-6 ? Math.min(at, lengthMm) : null
  }
  const stations = form.stations.flatMap((row): Station[] => {
    const atMm = placeOf(row.at)
    const widthMm = sizeOf(row.width)
    return atMm === null ? [] : [{ atMm, ...(widthMm !== null && { widthMm }) }]
  })
  const indications = form.indications.flatMap((row): Indication[] => {
    const atMm = placeOf(row.at)
    const long = sizeOf(row.length)
    return atMm === null ? [] : [{ kind: row.kind, atMm, ...(long !== null && { lengthMm: Math.min(long, lengthMm - atMm) }), ...(row.toe && { toe: row.toe }) }]
  })
  const apart = stations.filter((row, index) => !stations.slice(0, index).some((before) => Math.abs(before.atMm - row.atMm) < 1e-6))
  return { weld: { lengthMm, position: frame.position }, inspection: { stations: apart, indications }, widthBand: frame.widthBand, reader: { units, locale } }
}

function readSize(text: string, units: LengthUnit): number | null {
  try {
    return text.trim() === '' ? null : parseLength(text, units)
  } catch {
    return null
  }
}

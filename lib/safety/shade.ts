import type { Process } from '../procedure/process'
import type { Source } from '../source'
import { fromInches } from '../units/length'

/** From the lightest to the darkest filter shade; the two are equal once the current is known. */
export type ShadeRange = { readonly lightest: number; readonly darkest: number }

export type ShadeAdvice = {
  /** Never weld with a lighter filter than this. */
  readonly minimum: ShadeRange
  readonly minimumSource: Source
  /** What most eyes find comfortable; null where the guide names none. */
  readonly suggested: ShadeRange | null
  readonly suggestedSource: Source
  /** The current is above the last row of the table: the row's shade is the least to wear, not the answer. */
  readonly beyondTable: boolean
}

export const MINIMUM_SHADE_SOURCE: Source = { title: 'OSHA 29 CFR 1910.133', clause: '(a)(5)', status: 'confirmed' }
export const SUGGESTED_SHADE_SOURCE: Source = {
  title: 'ANSI Z49.1:2005, lens shade guide', clause: null, status: 'secondary', note: 'Read in a gas distributor’s copy of the guide.',
}

type Row = { readonly fromAmps: number; readonly minimum: number; readonly suggested: number | null; readonly overDiameterMm?: number; readonly fromDiameterMm?: number }

/** Rows meet at their ends (60 to 160, 160 to 250): a current on the meeting point takes the darker row. */
const STICK: readonly Row[] = [
  { fromAmps: 0, minimum: 7, suggested: null },
  { fromAmps: 60, minimum: 8, suggested: 10, fromDiameterMm: fromInches(3 / 32) },
  { fromAmps: 160, minimum: 10, suggested: 12, overDiameterMm: fromInches(5 / 32) },
  { fromAmps: 250, minimum: 11, suggested: 14, overDiameterMm: fromInches(8 / 32) },
]
const WIRE: readonly Row[] = [
  { fromAmps: 0, minimum: 7, suggested: null },
  { fromAmps: 60, minimum: 10, suggested: 11 },
  { fromAmps: 160, minimum: 10, suggested: 12 },
  { fromAmps: 250, minimum: 10, suggested: 14 },
]
const LAST_AMPS = { stick: 550, wire: 500 }
const SAME_MM = 1e-6

/**
 * Filter shade for a process at a current. With the current unknown the answer runs over the whole table of the process.
 * For covered electrodes a known electrode diameter counts too, and the darker of its row and the current's is taken.
 *
 * @throws RangeError when the current or the diameter is given but not above zero
 */
export function shadeFor(process: Process, amps: number | null, electrodeDiameterMm: number | null = null): ShadeAdvice {
  requirePositive(amps, 'A welding current', 'A')
  requirePositive(electrodeDiameterMm, 'An electrode diameter', 'mm')
  const table = process === 'SMAW' ? STICK : WIRE
  const byAmps = amps === null ? -1 : table.findLastIndex((row) => amps >= row.fromAmps)
  const byDiameter = process !== 'SMAW' || electrodeDiameterMm === null ? -1 : table.findLastIndex((row, i) => i === 0 || isSized(row, electrodeDiameterMm))
  const row = table[Math.max(byAmps, byDiameter)]
  const rows = row ? [row] : table
  const suggested = rows.flatMap((each) => (each.suggested === null ? [] : [each.suggested]))
  return {
    minimum: rangeOf(rows.map((each) => each.minimum)),
    minimumSource: MINIMUM_SHADE_SOURCE,
    suggested: suggested.length === 0 ? null : rangeOf(suggested),
    suggestedSource: SUGGESTED_SHADE_SOURCE,
    beyondTable: amps !== null && amps > (process === 'SMAW' ? LAST_AMPS.stick : LAST_AMPS.wire),
  }
}

function isSized(row: Row, diameterMm: number): boolean {
  if (row.overDiameterMm !== undefined) return diameterMm > row.overDiameterMm + SAME_MM
  return row.fromDiameterMm !== undefined && diameterMm >= row.fromDiameterMm - SAME_MM
}

function rangeOf(shades: readonly number[]): ShadeRange {
  return { lightest: Math.min(...shades), darkest: Math.max(...shades) }
}

function requirePositive(value: number | null, what: string, unit: string): void {
  if (value !== null && !(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} of ${value} ${unit} is not possible.`)
}

import { formatLength, fromInches, mm, type Millimetres } from './length'

/** What the gauge in hand is divided into: sixteenths, thirty-seconds or sixty-fourths of an inch, or half millimetres. */
export const GAUGE_UNITS = ['in16', 'in32', 'in64', 'mm'] as const
export type GaugeUnit = (typeof GAUGE_UNITS)[number]

/** One key of the tap pad. */
export type GaugeStep = { readonly valueMm: Millimetres; readonly label: string }

/** A pad read with gloves on holds about eight keys. */
export const KEYS_ON_PAD = 8

const STEP_MM: Readonly<Record<GaugeUnit, number>> = { in16: fromInches(1 / 16), in32: fromInches(1 / 32), in64: fromInches(1 / 64), mm: 0.5 }
/** How many gauge steps one key may stand for when the band is too wide for the pad. */
const STRIDES = [1, 2, 4, 8, 16, 32, 64]

/** The smallest step a gauge shows, in mm: readings this close to a limit are close calls. */
export function gaugeResolutionMm(unit: GaugeUnit): number {
  return STEP_MM[unit]
}

/**
 * The keys of the tap pad for one size: neighbouring gauge steps, smallest first, that hold the exercise's band with a step to
 * spare on either side so that a reading outside it can be tapped as well. A band too wide for the pad gets coarser keys.
 *
 * @param band what the exercise asks for, in mm; a single expected size is a band whose ends are equal
 * @param page 0 shows the band, 1 the next larger sizes, -1 the next smaller. Never below `least`; the lowest page repeats
 * @param least 1 for a size a bead always has; 0 where nothing at all is a reading, as a face without convexity
 * @returns `keys` steps with labels such as '5/16 in' or '8.5 mm'
 * @throws RangeError when the band is not two lengths in order, or `keys` is not a whole number from 4 to 24
 */
export function gaugeSteps(
  band: { readonly minMm: number; readonly maxMm: number },
  unit: GaugeUnit,
  { page = 0, keys = KEYS_ON_PAD, least = 1 }: { readonly page?: number; readonly keys?: number; readonly least?: 0 | 1 } = {},
): GaugeStep[] {
  if (!(band.minMm >= 0 && band.maxMm >= band.minMm && Number.isFinite(band.maxMm))) {
    throw new RangeError(`A band from ${band.minMm} to ${band.maxMm} mm has no gauge steps: give two lengths, the smaller first.`)
  }
  if (!Number.isInteger(keys) || keys < 4 || keys > 24) throw new RangeError(`A pad of ${keys} keys cannot be laid out: ask for 4 to 24.`)
  if (!Number.isInteger(page)) throw new RangeError(`Page ${page} of the pad does not exist: pages are whole numbers.`)

  const stepMm = STEP_MM[unit]
  const stride = STRIDES.find((each) => stepsAcross(band, stepMm * each) + 2 <= keys) ?? Math.ceil((band.maxMm - band.minMm) / stepMm / (keys - 3))
  const keyMm = stepMm * stride
  const middle = (band.minMm + band.maxMm) / 2 / keyMm
  const home = Math.max(least, Math.round(middle - (keys - 1) / 2))
  const first = Math.max(least, home + page * keys)
  return Array.from({ length: keys }, (_, i) => stepAt((first + i) * stride, unit))
}

/** The gauge a reader's pad shows: the exercise's own, or the nearest in use in the units they read in. */
export function padGauge(gauge: GaugeUnit, units: 'in' | 'mm'): GaugeUnit {
  if (units === 'mm') return 'mm'
  return gauge === 'mm' ? 'in32' : gauge
}

/** The step nearest to a size, for marking the key that is already chosen. */
export function nearestStep(valueMm: number, unit: GaugeUnit): GaugeStep {
  if (!(valueMm >= 0 && Number.isFinite(valueMm))) throw new RangeError(`${valueMm} mm has no place on a gauge: sizes are zero or more.`)
  return stepAt(Math.round(valueMm / STEP_MM[unit]), unit)
}

/** Keys needed from the last one at or under the band to the first one at or over it. */
function stepsAcross(band: { readonly minMm: number; readonly maxMm: number }, keyMm: number): number {
  return Math.ceil(band.maxMm / keyMm - 1e-9) - Math.floor(band.minMm / keyMm + 1e-9) + 1
}

function stepAt(steps: number, unit: GaugeUnit): GaugeStep {
  switch (unit) {
    case 'in16': return inchStep(steps, 16)
    case 'in32': return inchStep(steps, 32)
    case 'in64': return inchStep(steps, 64)
    case 'mm': {
      const valueMm = mm(steps / 2)
      return { valueMm, label: formatLength(valueMm, { unit: 'mm', digits: steps % 2 === 0 ? 0 : 1 }) }
    }
  }
}

function inchStep(steps: number, denominator: 16 | 32 | 64): GaugeStep {
  const valueMm = fromInches(steps / denominator)
  return { valueMm, label: formatLength(valueMm, { unit: 'in', denominator }) }
}

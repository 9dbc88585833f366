import { formatLength, mm, toInches, type LengthUnit, type Millimetres } from './length'
import { fixed } from './quantity'

/** How far a length may lie from a sixty-fourth and still be called by it, in mm and as a share of the length. */
const NEAR_MM = 0.1
const NEAR_SHARE = 0.04
/** Two lengths closer than this are the same length. */
const SAME_MM = 1e-6

/**
 * The one definition of how a length is shown to a reader.
 * Inches: the nearest sixty-fourth, reduced, where the length is within 0.1 mm (and 4 %) of it, so a limit of 0.79375 mm
 * reads '1/32 in'; otherwise decimals, a third one under 1/2 in where it says something: '0.225 in', '0.09 in', '0.035 in'.
 * Millimetres: one decimal; under 1 mm a second one where it says something: '7.9 mm', '0.25 mm'.
 *
 * @throws RangeError when the value is not a finite number
 */
export function formatForReader(valueMm: number, units: LengthUnit): string {
  return units === 'in' ? inInches(mm(valueMm)) : inMillimetres(valueMm)
}

/**
 * A reading shown beside its limit. When the two differ but would read the same, the reading takes as many decimals as it needs
 * to tell them apart: nobody is told that 1/32 in was rejected because at most 1/32 in is allowed.
 *
 * @throws RangeError when either value is not a finite number
 */
export function formatBesideLimit(valueMm: number, limitMm: number, units: LengthUnit): string {
  const plain = formatForReader(valueMm, units)
  if (Math.abs(valueMm - limitMm) <= SAME_MM || plain !== formatForReader(limitMm, units)) return plain
  const per = units === 'in' ? toInches : (value: Millimetres): number => value
  const reading = per(mm(valueMm))
  const limit = per(mm(limitMm))
  for (let digits = 2; digits <= 8; digits += 1) {
    const text = fixed(reading, digits)
    const away = Number(text) - limit
    if (text !== fixed(limit, digits) && Math.sign(away) === Math.sign(reading - limit)) return `${text} ${units}`
  }
  return plain
}

function inInches(value: Millimetres): string {
  const inches = toInches(value)
  const off = Math.abs(value - mm((Math.round(inches * 64) / 64) * 25.4))
  if (off <= NEAR_MM && off <= Math.abs(value) * NEAR_SHARE) return formatLength(value, { unit: 'in', denominator: 64 })
  if (Math.abs(inches) < 1 / 16) return `${fixed(inches, 3)} in`
  return `${fixed(inches, Math.abs(inches) < 1 / 2 ? 3 : 2).replace(/(\.\d\d)0$/, '$1')} in`
}

function inMillimetres(value: number): string {
  const text = fixed(value, Math.abs(value) < 1 ? 2 : 1)
  return `${text.replace(/(\.\d)0$/, '$1')} mm`
}

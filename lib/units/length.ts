import { fixed, readQuantity, type Quantity } from './quantity'

/** A length in millimetres: the only unit of length the library computes in. */
export type Millimetres = Quantity<'mm'>
export type LengthUnit = 'in' | 'mm'
/** Steps of the inch rules and gauges in use: sixteenths, thirty-seconds, sixty-fourths. */
export type InchDenominator = 16 | 32 | 64
const DENOMINATORS: readonly number[] = [16, 32, 64] satisfies InchDenominator[]

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4

export const mm = (value: number): Millimetres => value as Millimetres
export const fromInches = (inches: number): Millimetres => mm(inches * MM_PER_INCH)
export const toInches = (length: Millimetres): number => length / MM_PER_INCH

const SPELLINGS = {
  ...Object.fromEntries(['in', 'in.', 'inch', 'inches', '"', '″', '”', '“', "''", 'pulg', 'pulg.', 'pulgada', 'pulgadas'].map((name) => [name, MM_PER_INCH])),
  ...Object.fromEntries(['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'milímetro', 'milímetros'].map((name) => [name, 1])),
}

/**
 * Reads a length as people write it: '5/16', '1 1/8', '1-1/8', '.045', '0.045 in', '3/8"', '⅜', '8', '8 mm', '8,5 mm'.
 *
 * @param unit holds when the text names none
 * @throws RangeError with a sentence that names what was typed, when it is not a length of zero or more
 */
export function parseLength(text: string, unit: LengthUnit): Millimetres {
  return mm(readQuantity(text, 'a length', SPELLINGS, unit, '5/16, 1 1/8, .045 in or 8 mm'))
}

/**
 * Writes a length: '5/16 in', '1 1/8 in', '7.9 mm'. Inches are rounded to the nearest step and the fraction reduced;
 * a difference below zero keeps its sign.
 *
 * @throws RangeError when the value is not a finite number, or the unit, steps or digits are not ones there are
 */
export function formatLength(
  value: Millimetres,
  as: { readonly unit: 'in'; readonly denominator: InchDenominator } | { readonly unit: 'mm'; readonly digits: number },
): string {
  if (as.unit === 'mm') return `${fixed(value, as.digits)} mm`
  if (as.unit !== 'in') throw new RangeError(`A length is shown in 'in' or 'mm', not "${String((as as { unit: unknown }).unit)}".`)
  if (!DENOMINATORS.includes(as.denominator)) throw new RangeError(`Inches are shown in steps of ${DENOMINATORS.join(', ')} to the inch, not ${String(as.denominator)}.`)
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be shown: it is not a finite number.`)
  const steps = Math.round((Math.abs(value) / MM_PER_INCH) * as.denominator)
  const whole = Math.floor(steps / as.denominator)
  const over = steps % as.denominator
  const shared = greatestCommonDivisor(over, as.denominator)
  const fraction = over === 0 ? '' : `${over / shared}/${as.denominator / shared}`
  const sign = value < 0 && steps > 0 ? '-' : ''
  return `${sign}${[whole === 0 && fraction ? '' : String(whole), fraction].filter(Boolean).join(' ')} in`
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}

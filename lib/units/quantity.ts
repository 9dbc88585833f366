declare const unit: unique symbol
/** A number that knows its unit, so that inches do not pass for millimetres. */
export type Quantity<U extends string> = number & { readonly [unit]: U }

/** How a person's spelling of each unit turns into the unit used inside: multiply by the factor. */
export type UnitTable = Readonly<Record<string, number>>

/** Longest text read as one quantity; no size, speed or time people write is longer. */
const MOST_CHARACTERS = 40

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅐': '1/7', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅑': '1/9', '⅒': '1/10',
}
const FRACTION = /^(?:(\d+)(?:\s*[-–]\s*|\s+))?(\d+)\s*\/\s*(\d+)(.*)$/
const DECIMAL = /^(\d+(?:[.,]\d*)?|[.,]\d+)(.*)$/

/**
 * Reads a number that is not negative, with or without a unit after it: '12.5', '12,5 mm/s', '3/4', '1 1/8 in', '⅜'.
 * A comma is a decimal mark, never a thousands mark.
 *
 * @param noun what is being read, for the error: 'a length'
 * @param units factor of each spelling, in lower case and without spaces
 * @param unit the unit that holds when the text names none; a key of `units`
 * @param example how to write it, for the error
 * @throws RangeError naming what was typed
 */
export function readQuantity(text: string, noun: string, units: UnitTable, unit: string, example: string): number {
  const refuse = (why: string): RangeError => new RangeError(`${quoted(String(text))} is not ${noun}: ${why} Write it like ${example}.`)
  if (typeof text !== 'string') throw refuse('it is not text.')
  if (!Object.hasOwn(units, String(unit).toLowerCase())) throw new RangeError(`"${String(unit)}" is not a unit that ${noun} is read in.`)
  const tidy = text.trim().replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${VULGAR_FRACTIONS[sign]}`).replace(/[⁄∕]/g, '/').trim()
  if (tidy === '') throw refuse('nothing was typed.')
  if (tidy.length > MOST_CHARACTERS) throw refuse('it is too long.')
  if (/^[-−–]/.test(tidy)) throw refuse('it must not be below zero.')

  const fraction = FRACTION.exec(tidy)
  const decimal = fraction ? null : DECIMAL.exec(tidy)
  const rest = fraction?.[4] ?? decimal?.[2]
  if (rest === undefined) throw refuse('it does not start with a number.')
  if (fraction && Number(fraction[3]) === 0) throw refuse('nothing can be divided by zero.')

  const named = (rest.trim() || unit).replace(/^-\s*(?=[a-z])/i, '').replace(/\s+/g, '').toLowerCase()
  const factor = Object.hasOwn(units, named) ? units[named] : undefined
  if (factor === undefined) throw refuse(`"${rest.trim()}" is not understood.`)
  const number = fraction
    ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
    : Number(decimal?.[1]?.replace(',', '.'))
  return number * factor
}

/**
 * The number to so many decimals, without a sign on zero.
 *
 * @throws RangeError when the value is not a number that can be shown, or `digits` is not a whole number from 0 to 10
 */
export function fixed(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be shown: it is not a finite number.`)
  if (!Number.isInteger(digits) || digits < 0 || digits > 10) throw new RangeError(`${digits} decimals cannot be shown: ask for 0 to 10.`)
  // 6.35 is stored a hair below itself; on paper it rounds up like any five.
  return (value * (1 + 1e-12)).toFixed(digits).replace(/^-(?=[0.]+$)/, '')
}

const quoted = (text: string): string => `"${text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS)}…` : text}"`

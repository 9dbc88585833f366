import { formatLength, mm as millimetres, parseLength, type LengthUnit } from '../../units/length'

/** Lengths are kept to a billionth of a millimetre: 1/32 in is then the same number however it was arrived at. */
const DIGITS = 1e9
const tidy = (value: number): number => Math.round(value * DIGITS) / DIGITS

/** A typed number: '0.25', ',25', '1/4', '-2'; null when it is none. */
export function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.')
  const fraction = /^(-?\d+)\s*\/\s*(\d+)$/.exec(plain)
  if (fraction) return Number(fraction[2]) === 0 ? null : Number(fraction[1]) / Number(fraction[2])
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null
}

/** A typed length in millimetres, the set's unit where none is named; null when it is none. A minus is for what a limit takes away. */
export function readLength(text: string, units: LengthUnit): number | null {
  const plain = text.trim()
  const minus = /^[-−]\s*/.exec(plain)
  try {
    const value = tidy(parseLength(minus ? plain.slice(minus[0].length) : plain, units))
    return minus ? -value : value
  } catch {
    return null // not a length: the form says so at the box
  }
}

/** A typed share, in per cent: '10', '10 %'; null when it is none. */
export function readShare(text: string): number | null {
  const value = readNumber(text.replace('%', ''))
  return value === null ? null : tidy(value / 100)
}

export const numberText = (value: number): string => String(value)

/** A share as its box shows it: '10 %'. */
export const shareText = (share: number): string => `${tidy(share * 100)} %`

/**
 * A length as its box shows it: the shortest way to write it in the set's unit that reads back as exactly this length, so that a copy of a
 * set judges as the set does.
 */
export function lengthText(mm: number, units: LengthUnit): string {
  const size = Math.abs(mm)
  const written = units === 'in' ? inchTexts(size).find((text) => readLength(text, 'in') === size) : undefined
  return `${mm < 0 ? '-' : ''}${written ?? `${size} mm`}`
}

const inchTexts = (mm: number): string[] => [
  formatLength(millimetres(mm), { unit: 'in', denominator: 64 }),
  `${Math.round((mm / 25.4) * 128)}/128 in`,
  ...[1, 2, 3, 4, 5, 6].map((digits) => `${Number((mm / 25.4).toFixed(digits))} in`),
]

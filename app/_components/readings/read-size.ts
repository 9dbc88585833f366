import { parseLength, type LengthUnit } from '@/lib/units/length'

/** What stands in a box, in mm; null where it is empty or cannot be read, which the server says when it is sent. */
export function readSize(text: string, units: LengthUnit): number | null {
  try {
    return text.trim() === '' ? null : parseLength(text, units)
  } catch {
    return null
  }
}

/** A length as a box holds it: the box's own unit goes without saying. */
export const withoutUnit = (text: string): string => text.replace(/ (in|mm)$/, '')

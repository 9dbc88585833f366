import { fixed, readQuantity, type Quantity } from './quantity'

/** Welding current in amperes. */
export type Amps = Quantity<'A'>
export const amps = (value: number): Amps => value as Amps

const SPELLINGS = { a: 1, amp: 1, amps: 1, ampere: 1, amperes: 1, amperio: 1, amperios: 1 }

/** Reads '180', '180 A', '180 amps'. @throws RangeError naming what was typed */
export function parseAmps(text: string): Amps {
  return amps(readQuantity(text, 'a current', SPELLINGS, 'a', '180 or 180 A'))
}

/** '180 A'. @throws RangeError when the value is not a finite number */
export function formatAmps(value: Amps, digits = 0): string {
  return `${fixed(value, digits)} A`
}

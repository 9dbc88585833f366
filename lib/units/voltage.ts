import { fixed, readQuantity, type Quantity } from './quantity'

/** Arc voltage in volts. */
export type Volts = Quantity<'V'>
export const volts = (value: number): Volts => value as Volts

const SPELLINGS = { v: 1, volt: 1, volts: 1, voltio: 1, voltios: 1 }

/** Reads '24', '24,5 V', '24 volts'. @throws RangeError naming what was typed */
export function parseVolts(text: string): Volts {
  return volts(readQuantity(text, 'a voltage', SPELLINGS, 'v', '24 or 24.5 V'))
}

/** '24.5 V'. @throws RangeError when the value is not a finite number */
export function formatVolts(value: Volts, digits = 1): string {
  return `${fixed(value, digits)} V`
}

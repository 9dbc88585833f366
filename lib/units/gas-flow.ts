import { MM_PER_INCH } from './length'
import { fixed, readQuantity, type Quantity } from './quantity'

/** Shielding gas flow in litres a minute. */
export type GasFlow = Quantity<'L/min'>
export type GasFlowUnit = 'cfh' | 'L/min'
export const litresPerMinute = (value: number): GasFlow => value as GasFlow

/** One cubic foot an hour in litres a minute: the cube of 304.8 mm, over sixty minutes. */
const L_PER_MIN_OF_CFH = (12 * MM_PER_INCH) ** 3 / 1e6 / 60
const L_PER_MIN: Readonly<Record<GasFlowUnit, number>> = { cfh: L_PER_MIN_OF_CFH, 'L/min': 1 }
const SPELLINGS = { cfh: L_PER_MIN_OF_CFH, scfh: L_PER_MIN_OF_CFH, 'ft3/h': L_PER_MIN_OF_CFH, 'ft³/h': L_PER_MIN_OF_CFH, 'l/min': 1, lpm: 1 }

/** Reads '35 cfh', '16 L/min'; `unit` holds when none is named. @throws RangeError naming what was typed */
export function parseGasFlow(text: string, unit: GasFlowUnit): GasFlow {
  return litresPerMinute(readQuantity(text, 'a gas flow', SPELLINGS, unit, '35 cfh or 16 L/min'))
}

/** '35 cfh', '16.5 L/min'. @throws RangeError when the value is not a finite number */
export function formatGasFlow(value: GasFlow, as: { readonly unit: GasFlowUnit; readonly digits: number }): string {
  return `${fixed(value / L_PER_MIN[as.unit], as.digits)} ${as.unit}`
}

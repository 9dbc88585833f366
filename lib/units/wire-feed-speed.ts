import { MM_PER_INCH } from './length'
import { fixed, readQuantity, type Quantity } from './quantity'

/** How fast the wire comes out of the gun, in millimetres a second. */
export type WireFeedSpeed = Quantity<'mm/s of wire'>
export type WireFeedSpeedUnit = 'in/min' | 'm/min' | 'mm/s'
export const wireFeedMmPerS = (value: number): WireFeedSpeed => value as WireFeedSpeed

const MM_PER_S: Readonly<Record<WireFeedSpeedUnit, number>> = { 'in/min': MM_PER_INCH / 60, 'm/min': 1000 / 60, 'mm/s': 1 }
const SPELLINGS = { ...MM_PER_S, ipm: MM_PER_S['in/min'], 'in/min.': MM_PER_S['in/min'], '"/min': MM_PER_S['in/min'], 'pulg/min': MM_PER_S['in/min'] }

/** Reads '150', '150 in/min', '150 ipm', '3,8 m/min'; `unit` holds when none is named. @throws RangeError naming what was typed */
export function parseWireFeedSpeed(text: string, unit: WireFeedSpeedUnit): WireFeedSpeed {
  return wireFeedMmPerS(readQuantity(text, 'a wire feed speed', SPELLINGS, unit, '150 in/min or 3.8 m/min'))
}

/** '150 in/min', '3.8 m/min'. @throws RangeError when the value is not a finite number */
export function formatWireFeedSpeed(value: WireFeedSpeed, as: { readonly unit: WireFeedSpeedUnit; readonly digits: number }): string {
  return `${fixed(value / MM_PER_S[as.unit], as.digits)} ${as.unit}`
}

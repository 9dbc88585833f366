import { MM_PER_INCH } from './length'
import { fixed, readQuantity, type Quantity } from './quantity'

/** How fast the arc moves along the joint, in millimetres a second. */
export type TravelSpeed = Quantity<'mm/s travelled'>
export type TravelSpeedUnit = 'in/min' | 'mm/s' | 'mm/min' | 'cm/min'
export const travelSpeedMmPerS = (value: number): TravelSpeed => value as TravelSpeed

const MM_PER_S: Readonly<Record<TravelSpeedUnit, number>> = { 'in/min': MM_PER_INCH / 60, 'mm/s': 1, 'mm/min': 1 / 60, 'cm/min': 10 / 60 }
const SPELLINGS = { ...MM_PER_S, ipm: MM_PER_S['in/min'], 'in/min.': MM_PER_S['in/min'], '"/min': MM_PER_S['in/min'], 'pulg/min': MM_PER_S['in/min'] }

/** Reads '10', '10 in/min', '10 ipm', '4,2 mm/s', '25 cm/min'; `unit` holds when none is named. @throws RangeError naming what was typed */
export function parseTravelSpeed(text: string, unit: TravelSpeedUnit): TravelSpeed {
  return travelSpeedMmPerS(readQuantity(text, 'a travel speed', SPELLINGS, unit, '10 in/min or 4.2 mm/s'))
}

/** '10.0 in/min', '4.2 mm/s'. @throws RangeError when the value is not a finite number */
export function formatTravelSpeed(value: TravelSpeed, as: { readonly unit: TravelSpeedUnit; readonly digits: number }): string {
  return `${fixed(value / MM_PER_S[as.unit], as.digits)} ${as.unit}`
}

import { MM_PER_INCH } from './length'
import { fixed } from './quantity'

export type EnergyPerLengthUnit = 'kJ/mm' | 'kJ/in'

/** 1 kJ/mm is 25.4 kJ/in. */
export const kilojoulesPerInch = (kJPerMm: number): number => kJPerMm * MM_PER_INCH
export const kilojoulesPerMm = (kJPerInch: number): number => kJPerInch / MM_PER_INCH

/** Writes arc energy or heat input, given in kJ/mm: '1.78 kJ/mm', '45.2 kJ/in'. @throws RangeError when the value is not a finite number */
export function formatEnergyPerLength(kJPerMm: number, unit: EnergyPerLengthUnit): string {
  return unit === 'kJ/mm' ? `${fixed(kJPerMm, 2)} kJ/mm` : `${fixed(kilojoulesPerInch(kJPerMm), 1)} kJ/in`
}

import { fixed, readQuantity, type Quantity } from './quantity'

/** An angle in degrees. */
export type Degrees = Quantity<'deg'>
export const degrees = (value: number): Degrees => value as Degrees

const SPELLINGS = { '°': 1, º: 1, deg: 1, 'deg.': 1, degree: 1, degrees: 1, grado: 1, grados: 1 }

/** Reads '45', '45°', '45 deg'. Drag or push is said apart from the number. @throws RangeError naming what was typed */
export function parseAngle(text: string): Degrees {
  return degrees(readQuantity(text, 'an angle', SPELLINGS, '°', '45 or 45°'))
}

/** '45°'. @throws RangeError when the value is not a finite number */
export function formatAngle(value: Degrees, digits = 0): string {
  return `${fixed(value, digits)}°`
}

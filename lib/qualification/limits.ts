/** The two columns of a dual-unit welding code. They are separate rules, not conversions of each other: a program works in one. */
export type UnitSystem = 'us' | 'si'

/** Equality within a millionth of a millimetre counts as inside: limits are inclusive and inches are stored as binary fractions. */
export const TOLERANCE_MM = 1e-6

/** True when a size is over a limit that is itself still allowed. */
export const exceeds = (sizeMm: number, limitMm: number): boolean => sizeMm > limitMm + TOLERANCE_MM

/** @throws RangeError unless the value is a number from 0 up. */
export function requireSize(value: number, what: string): number {
  if (!Number.isFinite(value) || value < 0) throw new RangeError(`${what} must be a number of millimetres from 0 up, not ${value}.`)
  return value
}

/** @throws RangeError unless the value is a number over 0. */
export function requireThickness(value: number, what: string): number {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`${what} must be a number of millimetres over 0, not ${value}.`)
  return value
}

/** Guards the door against values that came in untyped. @throws RangeError */
export function requireSystem(system: UnitSystem): UnitSystem {
  if (system !== 'us' && system !== 'si') throw new RangeError(`The unit system is 'us' or 'si', not "${String(system)}".`)
  return system
}

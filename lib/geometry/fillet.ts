import type { Source } from '../source'
import { fromInches } from '../units/length'

/** Limits read on a thickness are inclusive; lengths closer than this are equal. */
const SAME_MM = 1e-6

/**
 * Throat of a flat-faced fillet in a square corner: the height of the right triangle of its legs over the face, a·b / √(a² + b²).
 * Equal legs: 0.7071 of the leg.
 *
 * @throws RangeError unless both legs are above zero
 */
export function throatOfLegs(a: number, b: number): number {
  return (requireLeg(a) * requireLeg(b)) / Math.hypot(a, b)
}

/**
 * Face width of a flat-faced fillet, toe to toe: √(a² + b²).
 *
 * @throws RangeError unless both legs are above zero
 */
export function faceWidthOfLegs(a: number, b: number): number {
  return Math.hypot(requireLeg(a), requireLeg(b))
}

/**
 * Leg of the equal-legged fillet with this throat: √2 of it. Sizes a concave fillet from its throat gauge reading; ISO's z from a.
 *
 * @throws RangeError unless the throat is above zero
 */
export function legOfThroat(throatMm: number): number {
  if (!(throatMm > 0 && Number.isFinite(throatMm))) throw new RangeError(`A throat of ${throatMm} mm is not possible.`)
  return throatMm * Math.SQRT2
}

export type UnitSystem = 'us' | 'si'

export const MINIMUM_FILLET_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M, minimum fillet weld sizes', clause: 'Table 7.7 (2020)', status: 'secondary',
  note: 'Table 5.7 or 5.8 before 2020. Read in a research institute’s copy and in the AISC specification, Table J2.4, whose metric steps are 6, 13 and 19 mm instead.',
}

/** Up to and including `thickness` the least leg is `leg`; above the last row, `ABOVE`. Inches beside millimetres, each a rule of its own. */
const MINIMUM: Readonly<Record<UnitSystem, readonly { readonly thickness: number; readonly leg: number }[]>> = {
  us: [{ thickness: fromInches(1 / 4), leg: fromInches(1 / 8) }, { thickness: fromInches(1 / 2), leg: fromInches(3 / 16) }, { thickness: fromInches(3 / 4), leg: fromInches(1 / 4) }],
  si: [{ thickness: 6, leg: 3 }, { thickness: 12, leg: 5 }, { thickness: 20, leg: 6 }],
}
const ABOVE: Readonly<Record<UnitSystem, number>> = { us: fromInches(5 / 16), si: 8 }
const CYCLIC_LEAST: Readonly<Record<UnitSystem, number>> = { us: fromInches(3 / 16), si: 5 }

/**
 * Least leg of a fillet for a base metal thickness, in mm: the row of the table. The code asks for no more than the thinner part is
 * thick; the table’s row stands here even where the plate is thinner than that.
 *
 * @param thicknessMm the governing thickness: see `governingThickness`
 * @param system the two unit systems are two rule sets: 1/4 in is 6.35 mm in one and the step stands at 6 mm in the other
 * @param loading cyclic loading asks for at least 3/16 in (5 mm)
 * @throws RangeError unless the thickness is above zero and the system is one of the two
 */
export function minimumFilletLeg(thicknessMm: number, system: UnitSystem, loading: 'static' | 'cyclic' = 'static'): number {
  const thickness = requireThickness(thicknessMm)
  requireSystem(system)
  const leg = MINIMUM[system].find((row) => thickness <= row.thickness + SAME_MM)?.leg ?? ABOVE[system]
  return loading === 'cyclic' ? Math.max(leg, CYCLIC_LEAST[system]) : leg
}

/**
 * The thickness that governs the least leg: the thinner part with a low-hydrogen process or a preheat worked out to prevent
 * cracking, the thicker part (and a single pass) otherwise.
 *
 * @throws RangeError unless both are above zero
 */
export function governingThickness(parts: { readonly oneMm: number; readonly otherMm: number; readonly lowHydrogen: boolean }): number {
  const [one, other] = [requireThickness(parts.oneMm), requireThickness(parts.otherMm)]
  return parts.lowHydrogen ? Math.min(one, other) : Math.max(one, other)
}

export const MAXIMUM_FILLET_SOURCE: Source = { title: 'AISC 360, maximum fillet weld size along edges', clause: 'J2.2b', status: 'secondary', note: 'The 2 mm of the metric rule is from memory.' }

/**
 * Largest leg along the edge of a plate (lap joint): its thickness below 1/4 in (6 mm), and 1/16 in (2 mm) less from there on,
 * so that the edge still shows.
 *
 * @throws RangeError unless the thickness is above zero
 */
export function maximumFilletLegAlongEdge(thicknessMm: number, system: UnitSystem): number {
  const thickness = requireThickness(thicknessMm)
  const [step, setBack] = requireSystem(system) === 'us' ? [fromInches(1 / 4), fromInches(1 / 16)] : [6, 2]
  return thickness < step - SAME_MM ? thickness : thickness - setBack
}

/** Least effective length of a fillet weld: four times its size (AISC 360, J2.2b). @throws RangeError unless the leg is above zero */
export function minimumFilletLength(legMm: number): number {
  return 4 * requireLeg(legMm)
}

function requireSystem(system: UnitSystem): UnitSystem {
  if (system !== 'us' && system !== 'si') throw new RangeError(`The unit system is 'us' or 'si', not "${String(system)}".`)
  return system
}

function requireLeg(value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`A fillet leg of ${value} mm is not possible.`)
  return value
}

function requireThickness(value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`A thickness of ${value} mm is not possible.`)
  return value
}

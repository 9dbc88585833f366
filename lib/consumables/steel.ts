import { KG_PER_POUND } from '../units/mass'
import { MM_PER_INCH } from '../units/length'

/** The one density of steel here: 0.283 lb/in³ (7.83 g/cm³), as welding handbooks take it, in kg/mm³. */
export const STEEL_KG_PER_MM3 = (0.283 * KG_PER_POUND) / MM_PER_INCH ** 3

/**
 * Mass of a piece of steel in kg.
 *
 * @throws RangeError when the volume is below zero or not a number
 */
export function steelMassKg(volumeMm3: number): number {
  if (!(volumeMm3 >= 0 && Number.isFinite(volumeMm3))) throw new RangeError(`A volume of ${volumeMm3} mm³ is not possible.`)
  return volumeMm3 * STEEL_KG_PER_MM3
}

/**
 * Mass of a rectangular plate in kg.
 *
 * @throws RangeError unless every side is above zero
 */
export function plateMassKg(plate: { readonly lengthMm: number; readonly widthMm: number; readonly thicknessMm: number }): number {
  for (const side of [plate.lengthMm, plate.widthMm, plate.thicknessMm]) {
    if (!(side > 0 && Number.isFinite(side))) throw new RangeError(`A plate with a side of ${side} mm is not possible.`)
  }
  return steelMassKg(plate.lengthMm * plate.widthMm * plate.thicknessMm)
}

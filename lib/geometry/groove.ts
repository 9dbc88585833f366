import { segmentArea } from './segment'

/** A single-sided groove between square-set plates. Millimetres and degrees. */
export type Groove = {
  readonly thicknessMm: number
  /** Whole angle between the faces: 0 for a square groove. */
  readonly includedAngleDeg: number
  readonly rootOpeningMm: number
  readonly rootFaceMm: number
}

/**
 * Width of a groove at the plate surface: root opening and both bevels.
 *
 * @throws RangeError when a size is below zero, the thickness is not above zero, the root face is thicker than the plate or the angle not in [0, 180)
 */
export function grooveWidth(groove: Groove): number {
  return groove.rootOpeningMm + 2 * bevelRun(groove)
}

/** Area to fill up to the plate surface, mm². @throws RangeError as `grooveWidth` */
export function grooveArea(groove: Groove): number {
  const run = bevelRun(groove)
  return groove.rootOpeningMm * groove.thicknessMm + run * (groove.thicknessMm - groove.rootFaceMm)
}

/**
 * Area of the reinforcement over the plate surface, mm²: an arc over the face width. A reading of 0 or less is flush or below: no area.
 *
 * @throws RangeError when the width is not above zero or the height is not a number
 */
export function reinforcementArea(faceWidthMm: number, heightMm: number): number {
  if (!Number.isFinite(heightMm)) throw new RangeError(`A reinforcement of ${heightMm} mm is not possible.`)
  return segmentArea(faceWidthMm, Math.max(heightMm, 0))
}

/**
 * Height of the reinforcement over the higher plate, from depths read off one straight edge: positive stands proud.
 * With plates out of line the higher one counts, so misalignment is not taken for reinforcement.
 *
 * @throws RangeError when a reading is not a number
 */
export function reinforcementHeight(crownMm: number, plateAMm: number, plateBMm: number): number {
  if (![crownMm, plateAMm, plateBMm].every(Number.isFinite)) throw new RangeError('Reinforcement needs three heights from the same straight edge.')
  return crownMm - Math.max(plateAMm, plateBMm)
}

function bevelRun({ thicknessMm, includedAngleDeg, rootOpeningMm, rootFaceMm }: Groove): number {
  if (!(thicknessMm > 0 && Number.isFinite(thicknessMm))) throw new RangeError(`A plate ${thicknessMm} mm thick is not possible.`)
  if (!(rootOpeningMm >= 0 && Number.isFinite(rootOpeningMm))) throw new RangeError(`A root opening of ${rootOpeningMm} mm is not possible.`)
  if (!(rootFaceMm >= 0 && rootFaceMm <= thicknessMm)) throw new RangeError(`A root face of ${rootFaceMm} mm does not fit a plate of ${thicknessMm} mm.`)
  if (!(includedAngleDeg >= 0 && includedAngleDeg < 180)) throw new RangeError(`A groove angle of ${includedAngleDeg}° is not possible.`)
  return (thicknessMm - rootFaceMm) * Math.tan((includedAngleDeg * Math.PI) / 360)
}

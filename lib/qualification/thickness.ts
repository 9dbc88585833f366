import type { Source } from '../source'
import { MM_PER_INCH } from '../units/length'
import { exceeds, requireSystem, requireThickness, type UnitSystem } from './limits'

/** Thickness a passed plate test covers in production. `maxMm` null: no upper limit. */
export type ThicknessQualified =
  | { readonly kind: 'range'; readonly minMm: number; readonly maxMm: number | null; readonly source: Source }
  | { readonly kind: 'not-covered'; readonly reason: ThicknessReason; readonly neededMm: number | null; readonly source: Source }

/** 'plate-too-thin': thinner than the table's thinnest test plate. 'too-few-layers': a thick butt weld needs three for the open range. */
export type ThicknessReason = 'plate-too-thin' | 'too-few-layers'

export type PlateTestPiece = { readonly type: 'groove' | 'fillet'; readonly thicknessMm: number }

/** The angle between the members that a fillet test covers. */
export const FILLET_DIHEDRAL_DEG = { min: 60, max: 135 } as const

export const GROOVE_THICKNESS_SOURCE: Source = {
  title: 'US Army Corps of Engineers TI 809-26 (AWS D1.1:2000)',
  clause: 'Welder qualification, thickness',
  status: 'secondary',
  note: 'Twice the plate, and unlimited from 1 in. The lower end of 1/8 in (3 mm) is from memory. Table 6.11 in AWS D1.1/D1.1M:2020.',
}
export const FILLET_THICKNESS_SOURCE: Source = {
  title: 'Fillet weld break and macroetch laboratory notes citing AWS D1.1',
  clause: 'Fig. 4.36',
  status: 'secondary',
  note: 'Members meeting at 60 to 135 degrees. Size of the test plate itself is from memory and is not checked.',
}

type GrooveRow = { readonly minMm: number; readonly thinnestMm: number; readonly unlimitedFromMm: number }
const GROOVE: Readonly<Record<UnitSystem, GrooveRow>> = {
  us: { minMm: MM_PER_INCH / 8, thinnestMm: (MM_PER_INCH * 3) / 8, unlimitedFromMm: MM_PER_INCH },
  si: { minMm: 3, thinnestMm: 10, unlimitedFromMm: 25 },
}

export const THINNEST_GROOVE_PLATE_MM: Readonly<Record<UnitSystem, number>> = { us: GROOVE.us.thinnestMm, si: GROOVE.si.thinnestMm }

/**
 * Production thickness that a passed plate test covers by the structural code, from the nominal thickness of the test plate.
 *
 * @throws RangeError for a thickness that is not over 0
 */
export function thicknessQualified(piece: PlateTestPiece, system: UnitSystem): ThicknessQualified {
  const row = GROOVE[requireSystem(system)]
  const t = requireThickness(piece.thicknessMm, 'The plate thickness')
  if (piece.type === 'fillet') return { kind: 'range', minMm: row.minMm, maxMm: null, source: FILLET_THICKNESS_SOURCE }
  if (exceeds(row.thinnestMm, t)) {
    return { kind: 'not-covered', reason: 'plate-too-thin', neededMm: row.thinnestMm, source: GROOVE_THICKNESS_SOURCE }
  }
  const unlimited = !exceeds(row.unlimitedFromMm, t)
  return { kind: 'range', minMm: row.minMm, maxMm: unlimited ? null : 2 * t, source: GROOVE_THICKNESS_SOURCE }
}

/** How many specimens of each kind a test plate must give. */
export type SpecimensNeeded = {
  readonly faceBends: number
  readonly rootBends: number
  readonly sideBends: number
  readonly breaks: number
  readonly macroetches: number
}
const NONE: SpecimensNeeded = { faceBends: 0, rootBends: 0, sideBends: 0, breaks: 0, macroetches: 0 }

export const SPECIMENS_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M:2020',
  clause: 'Table 6.11',
  status: 'memory',
  note: 'Specimen counts are recalled, not read again.',
}

/**
 * Specimens the structural code asks of a plate test: a face and a root bend from the thinnest groove plate, two side bends
 * from any thicker; one break and one macroetch from a fillet T-joint, or two root bends from the fillet soundness plate.
 *
 * @throws RangeError for a thickness that is not over 0
 */
export function specimensNeeded(piece: PlateTestPiece & { readonly filletPlate?: 't-joint' | 'soundness' }, system: UnitSystem): SpecimensNeeded {
  const row = GROOVE[requireSystem(system)]
  const t = requireThickness(piece.thicknessMm, 'The plate thickness')
  if (piece.type === 'fillet') {
    return piece.filletPlate === 'soundness' ? { ...NONE, rootBends: 2 } : { ...NONE, breaks: 1, macroetches: 1 }
  }
  return exceeds(t, row.thinnestMm) ? { ...NONE, sideBends: 2 } : { ...NONE, faceBends: 1, rootBends: 1 }
}

export type IsoTestPiece =
  | { readonly type: 'butt'; readonly depositedMm: number; readonly layers: number | null }
  | { readonly type: 'fillet'; readonly thicknessMm: number }

export const ISO_THICKNESS_SOURCE: Source = {
  title: 'ISO 9606-1:2012',
  clause: 'Tables 6 and 8',
  status: 'memory',
  note: 'That 12 mm of deposit and a 3 mm fillet plate and over cover 3 mm and up was read in designation examples; the rest, and the table numbers, are recalled.',
}

const ISO_THIN_MM = 3
const ISO_OPEN_FROM_MM = 12
const ISO_LAYERS = 3

/**
 * Thickness a passed test to ISO 9606-1 covers: deposited thickness for butt welds, material thickness for fillets.
 * From 12 mm of deposit the range is open upward, provided it was laid in three layers or more; a thick test whose layers
 * nobody counted is not given the open range.
 *
 * @throws RangeError for a thickness that is not over 0 or a layer count that is not a whole number from 1
 */
export function isoThicknessQualified(piece: IsoTestPiece): ThicknessQualified {
  const source = ISO_THICKNESS_SOURCE
  if (piece.type === 'fillet') {
    const t = requireThickness(piece.thicknessMm, 'The material thickness')
    return exceeds(ISO_THIN_MM, t)
      ? { kind: 'range', minMm: t, maxMm: Math.max(2 * t, ISO_THIN_MM), source }
      : { kind: 'range', minMm: ISO_THIN_MM, maxMm: null, source }
  }
  const s = requireThickness(piece.depositedMm, 'The deposited thickness')
  if (piece.layers !== null && (!Number.isInteger(piece.layers) || piece.layers < 1)) {
    throw new RangeError(`The number of layers must be a whole number from 1, not ${piece.layers}.`)
  }
  if (exceeds(ISO_THIN_MM, s)) return { kind: 'range', minMm: s, maxMm: Math.max(2 * s, ISO_THIN_MM), source }
  if (exceeds(ISO_OPEN_FROM_MM, s)) return { kind: 'range', minMm: ISO_THIN_MM, maxMm: 2 * s, source }
  if (piece.layers === null || piece.layers < ISO_LAYERS) return { kind: 'not-covered', reason: 'too-few-layers', neededMm: null, source }
  return { kind: 'range', minMm: ISO_THIN_MM, maxMm: null, source }
}

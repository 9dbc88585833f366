import { formatForReader } from '../units/display'
import { parseLength, type LengthUnit } from '../units/length'
import { KNOWN_OBJECTS, type KnownObject } from './known-objects'
import type { KnownScale } from './marking'

/** What may give a photo its scale, as a person is asked for it. */
export const SCALE_KINDS = ['card', 'a6', 'rectangle', 'ruler'] as const
export type ScaleKind = (typeof SCALE_KINDS)[number]

export const NOTHING_TYPED = { long: '', short: '', distance: '' }
/** A known size, and how it was asked for: typed text stays as it was typed. */
export type Chosen = { readonly scale: KnownScale; readonly choice: { readonly kind: ScaleKind; readonly typed: typeof NOTHING_TYPED } }

/** The choice that a scale marked earlier came from. */
export function chosenFrom(scale: KnownScale, units: LengthUnit): Chosen {
  if (scale.kind === 'two-points') return { scale, choice: { kind: 'ruler', typed: { ...NOTHING_TYPED, distance: sizeText(scale.distanceMm, units) } } }
  const [long, short] = scale.sidesMm
  const object = (Object.keys(KNOWN_OBJECTS) as KnownObject[]).find((each) => KNOWN_OBJECTS[each].sidesMm[0] === long && KNOWN_OBJECTS[each].sidesMm[1] === short)
  return { scale, choice: object ? { kind: object, typed: NOTHING_TYPED } : { kind: 'rectangle', typed: { ...NOTHING_TYPED, long: sizeText(long, units), short: sizeText(short, units) } } }
}

/** In the reader's units where that reads back as the same size, else in millimetres. */
function sizeText(sizeMm: number, units: LengthUnit): string {
  const shown = formatForReader(sizeMm, units)
  return Math.abs(parseLength(shown, units) - sizeMm) < 1e-6 ? shown : `${String(sizeMm)} mm`
}

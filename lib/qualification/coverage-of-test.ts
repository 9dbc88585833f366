import { isoPositionOf, isoPositionsQualified, type IsoCoverage } from './iso-positions'
import type { UnitSystem } from './limits'
import { positionsQualified, type PositionsQualified } from './positions'
import { isoThicknessQualified, thicknessQualified, type ThicknessQualified } from './thickness'

/** The welded test piece, as far as coverage turns on it. `layers` is null when nobody counted them. */
export type WeldedTest = {
  readonly weldType: 'fillet' | 'groove'
  readonly position: string
  readonly progression: 'up' | 'down' | null
  readonly plateThicknessMm: number
  readonly layers: number | null
}

export type TestCoverage = {
  readonly structural: { readonly positions: PositionsQualified; readonly thickness: ThicknessQualified }
  readonly iso: { readonly positions: IsoCoverage; readonly thickness: ThicknessQualified }
}

/**
 * What one passed plate test covers under the structural steel code and under ISO 9606-1, positions and thickness. A groove test is
 * taken as welded through the whole plate, so its deposit is as thick as the plate.
 *
 * @returns null for a position that the plate tables do not list, such as one of a pipe
 * @throws RangeError for a thickness that is not over 0
 */
export function coverageOfTest({ weldType, position, progression, plateThicknessMm, layers }: WeldedTest, system: UnitSystem): TestCoverage | null {
  const listed = orNull(() => ({ structural: positionsQualified(position), iso: isoPositionsQualified(isoPositionOf(position, progression), weldType === 'groove' ? 'butt' : 'fillet') }))
  if (listed === null) return null
  return {
    structural: { positions: listed.structural, thickness: thicknessQualified({ type: weldType, thicknessMm: plateThicknessMm }, system) },
    iso: {
      positions: listed.iso,
      thickness: isoThicknessQualified(weldType === 'groove' ? { type: 'butt', depositedMm: plateThicknessMm, layers } : { type: 'fillet', thicknessMm: plateThicknessMm }),
    },
  }
}

/** The tables say that they do not list a position by throwing. */
function orNull<T>(read: () => T): T | null {
  try {
    return read()
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

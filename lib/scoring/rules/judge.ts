import type { IndicationKind, Finding } from '../types'
import { kindIndex, type Evidence } from '../evidence'

/** A rule made ready to judge any inspection. */
export type Judge = (evidence: Evidence) => Finding

/** A rule's kinds of indication as positions and as a bit set. */
export type Kinds = { readonly indexes: readonly number[]; readonly bits: number }

export function kindsOf(kinds: readonly IndicationKind[]): Kinds {
  const indexes = kinds.map(kindIndex)
  return { indexes, bits: indexes.reduce((bits, index) => bits | (1 << index), 0) }
}

export const allLookedFor = (kinds: Kinds, evidence: Evidence): boolean => (evidence.lookedFor & kinds.bits) === kinds.bits

import type { LengthUnit } from '../units/length'

/** The sizes of sheet a page can be laid out for. */
export const PAPERS = ['letter', 'a4'] as const
export type Paper = (typeof PAPERS)[number]

/** The sheet asked for; without a known one, the one that goes with the reader's units. */
export function paperFor(asked: string | undefined, units: LengthUnit): Paper {
  return PAPERS.find((paper) => paper === asked) ?? (units === 'in' ? 'letter' : 'a4')
}

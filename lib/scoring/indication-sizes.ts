import type { IndicationKind } from './types'

/** What may be measured on an indication beside its place. */
export type IndicationSize = 'length' | 'depth' | 'diameter' | 'height'

/** The sizes that mean something for each kind, in the order they are read off; a form asks for no others. Common practice, no source. */
export const INDICATION_SIZES: Readonly<Record<IndicationKind, readonly IndicationSize[]>> = {
  crack: ['length'], 'crater-crack': ['length'], 'lack-of-fusion': ['length'], undercut: ['depth', 'length'], pore: ['diameter'],
  overlap: ['height', 'length'], 'crater-pipe': ['depth', 'diameter'], 'poor-restart': ['height'], 'arc-strike': [], spatter: [],
  slag: ['length'], 'burn-through': ['diameter'],
}

/** Kinds that lie along one toe of the weld. */
export const ON_A_TOE: readonly IndicationKind[] = ['undercut', 'overlap', 'crack', 'lack-of-fusion']

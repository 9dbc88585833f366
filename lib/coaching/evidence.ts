import type { Polarity } from '../procedure/process'
import type { ToeSide } from './toe-side'

/** A setting of a pass that the booth card can advise on. */
export const SETTINGS = ['travel-speed', 'stick-out', 'volts', 'amps', 'wire-feed'] as const
export type Setting = (typeof SETTINGS)[number]

/**
 * Something written down about this coupon that points to a cause: a code and its numbers. Lengths in mm, speeds in mm/s, volts,
 * amperes. `pass` counts from 1; it is null when the coupon has one pass.
 */
export type Evidence =
  | { readonly code: 'above-card' | 'below-card'; readonly setting: Setting; readonly pass: number | null
      readonly value: number; readonly min: number | null; readonly max: number | null }
  | { readonly code: 'polarity-differs'; readonly pass: number | null; readonly used: Polarity; readonly card: Polarity }
  | { readonly code: 'gas-differs'; readonly pass: number | null; readonly used: string; readonly card: string }
  | { readonly code: 'bead-narrow' | 'bead-wide'; readonly widthMm: number; readonly limitMm: number }
  | { readonly code: 'narrower-last-third' | 'wider-last-third'; readonly beforeMm: number; readonly lastMm: number }
  | { readonly code: 'widths-vary'; readonly smallestMm: number; readonly largestMm: number }
  | { readonly code: 'legs-differ'; readonly longer: ToeSide; readonly longMm: number; readonly shortMm: number }
  | { readonly code: 'undercut-one-toe'; readonly toe: ToeSide }
  | { readonly code: 'undercut-both-toes' }
  | { readonly code: 'pores-near-start'; readonly count: number; readonly total: number; readonly withinMm: number }
  | { readonly code: 'pores-spread'; readonly count: number; readonly fromMm: number; readonly toMm: number }
  | { readonly code: 'at-restart'; readonly atMm: number }
  | { readonly code: 'at-end'; readonly fromMm: number }
  | { readonly code: 'slag-seen' | 'spatter-seen'; readonly count: number }
  | { readonly code: 'seen-before'; readonly times: number; readonly of: number }

export type EvidenceCode = Evidence['code']

import type { Process } from '../procedure/process'
import type { Evidence, Setting } from './evidence'

/** What to do about it. Several causes can have one remedy. */
export const REMEDIES = [
  'slow-down', 'speed-up', 'keep-the-pace', 'reach-the-end', 'shorten-arc', 'lengthen-arc', 'lower-amps', 'raise-amps',
  'lower-wire-feed', 'raise-wire-feed', 'lower-volts', 'raise-volts', 'shorten-stick-out', 'lengthen-stick-out', 'set-polarity',
  'mend-gas', 'block-draught', 'clean-plate', 'dry-electrodes', 'dry-wire', 'trim-wire', 'strike-ahead', 'pause-at-sides', 'pause-evenly',
  'narrow-weave', 'aim-lower', 'aim-higher', 'aim-at-root', 'mend-travel-angle', 'stay-ahead-of-slag', 'stay-ahead-of-pool',
  'clean-between-passes', 'clean-after', 'restart-in-crater', 'clean-restart', 'fill-crater', 'strike-in-joint', 'let-cool', 'check-preheat',
  'narrow-gap', 'open-gap', 'lay-more-metal', 'smaller-pool', 'change-tip', 'move-work-clamp', 'plan-the-cap', 'fill-before-cap', 'straighten-plates',
] as const
export type Remedy = (typeof REMEDIES)[number]

/** What would show that a cause is at work on this coupon. */
export type Hint = Exclude<Evidence['code'], 'above-card' | 'below-card' | 'polarity-differs' | 'gas-differs' | 'seen-before'>
  | 'upper-leg-longer' | 'lower-leg-longer' | 'undercut-upper-toe' | 'undercut-lower-toe'

type CauseFacts = {
  readonly remedy: Remedy
  /** Processes the cause exists in; absent: all. */
  readonly processes?: readonly Process[]
  /** The setting that shows it, and the side of the booth card's range. */
  readonly setting?: { readonly of: Setting | 'current'; readonly side: 'above' | 'below' }
  readonly differs?: 'polarity' | 'gas'
  readonly hints?: readonly Hint[]
  /** Readings that show the opposite: with one of them the cause is not offered, unless a setting shows it all the same. */
  readonly against?: readonly Hint[]
}

const STICK: readonly Process[] = ['SMAW']
const WIRE: readonly Process[] = ['FCAW-S', 'FCAW-G', 'GMAW']
const GAS: readonly Process[] = ['FCAW-G', 'GMAW']
const CORED: readonly Process[] = ['FCAW-S', 'FCAW-G']
const SLAG: readonly Process[] = ['SMAW', 'FCAW-S', 'FCAW-G']

/** 'current' is read from the wire feed where that was written down, else from the amperes. */
const facts = {
  'travel-too-fast': { remedy: 'slow-down', setting: { of: 'travel-speed', side: 'above' }, hints: ['bead-narrow', 'narrower-last-third', 'undercut-both-toes'], against: ['bead-wide'] },
  'travel-too-slow': { remedy: 'speed-up', setting: { of: 'travel-speed', side: 'below' }, hints: ['bead-wide', 'wider-last-third'], against: ['bead-narrow'] },
  'travel-uneven': { remedy: 'keep-the-pace', hints: ['widths-vary'] },
  'hurried-end': { remedy: 'reach-the-end', hints: ['narrower-last-third', 'at-end'], against: ['wider-last-third'] },
  'arc-too-long': { remedy: 'shorten-arc', processes: STICK, setting: { of: 'volts', side: 'above' }, hints: ['spatter-seen', 'bead-wide'], against: ['bead-narrow'] },
  'arc-too-short': { remedy: 'lengthen-arc', processes: STICK, setting: { of: 'volts', side: 'below' }, hints: ['bead-narrow'], against: ['bead-wide'] },
  'amps-too-high': { remedy: 'lower-amps', processes: STICK, setting: { of: 'current', side: 'above' }, hints: ['bead-wide', 'spatter-seen'] },
  'amps-too-low': { remedy: 'raise-amps', processes: STICK, setting: { of: 'current', side: 'below' }, hints: ['bead-narrow'] },
  'wire-feed-too-high': { remedy: 'lower-wire-feed', processes: WIRE, setting: { of: 'current', side: 'above' }, hints: ['bead-wide'] },
  'wire-feed-too-low': { remedy: 'raise-wire-feed', processes: WIRE, setting: { of: 'current', side: 'below' }, hints: ['bead-narrow'] },
  'volts-too-high': { remedy: 'lower-volts', processes: WIRE, setting: { of: 'volts', side: 'above' }, hints: ['bead-wide', 'undercut-both-toes', 'pores-spread'], against: ['bead-narrow'] },
  'volts-too-low': { remedy: 'raise-volts', processes: WIRE, setting: { of: 'volts', side: 'below' }, hints: ['bead-narrow'], against: ['bead-wide'] },
  'stick-out-too-long': { remedy: 'shorten-stick-out', processes: WIRE, setting: { of: 'stick-out', side: 'above' }, hints: ['spatter-seen', 'bead-narrow', 'pores-spread'] },
  'stick-out-too-short': { remedy: 'lengthen-stick-out', processes: WIRE, setting: { of: 'stick-out', side: 'below' }, hints: ['pores-spread'] },
  'wrong-polarity': { remedy: 'set-polarity', differs: 'polarity', hints: ['spatter-seen'] },
  'gas-coverage-poor': { remedy: 'mend-gas', processes: GAS, differs: 'gas', hints: ['pores-spread'] },
  draught: { remedy: 'block-draught', hints: ['pores-spread'] },
  'dirty-plate': { remedy: 'clean-plate', hints: ['pores-spread'] },
  'damp-electrodes': { remedy: 'dry-electrodes', processes: STICK, hints: ['pores-spread'] },
  'damp-wire': { remedy: 'dry-wire', processes: CORED, hints: ['pores-spread'] },
  'wire-end-not-trimmed': { remedy: 'trim-wire', processes: WIRE, hints: ['pores-near-start', 'at-restart'] },
  'start-struck-cold': { remedy: 'strike-ahead', processes: STICK, hints: ['pores-near-start', 'at-restart'] },
  'side-pauses-too-short': { remedy: 'pause-at-sides', hints: ['undercut-both-toes'] },
  'side-pauses-uneven': { remedy: 'pause-evenly', hints: ['legs-differ', 'undercut-one-toe'] },
  'weave-too-wide': { remedy: 'narrow-weave', hints: ['bead-wide'], against: ['bead-narrow'] },
  'aim-too-high': { remedy: 'aim-lower', hints: ['upper-leg-longer', 'undercut-upper-toe'], against: ['lower-leg-longer'] },
  'aim-too-low': { remedy: 'aim-higher', hints: ['lower-leg-longer', 'undercut-lower-toe'], against: ['upper-leg-longer'] },
  'aim-off-root': { remedy: 'aim-at-root', hints: ['legs-differ', 'undercut-one-toe'] },
  'travel-angle-wrong': { remedy: 'mend-travel-angle' },
  'slag-ahead': { remedy: 'stay-ahead-of-slag', processes: SLAG, hints: ['slag-seen'] },
  'pool-ahead': { remedy: 'stay-ahead-of-pool', hints: ['bead-wide'] },
  'not-cleaned-between-passes': { remedy: 'clean-between-passes', processes: SLAG, hints: ['slag-seen'] },
  'not-cleaned-after': { remedy: 'clean-after' },
  'restart-off-crater': { remedy: 'restart-in-crater', hints: ['at-restart'] },
  'restart-not-cleaned': { remedy: 'clean-restart', processes: SLAG, hints: ['slag-seen'] },
  'arc-broken-early': { remedy: 'fill-crater', hints: ['at-end', 'at-restart'] },
  'arc-struck-outside': { remedy: 'strike-in-joint' },
  'plate-too-hot': { remedy: 'let-cool', hints: ['wider-last-third'], against: ['narrower-last-third'] },
  'plate-too-cold': { remedy: 'check-preheat' },
  'gap-too-wide': { remedy: 'narrow-gap' },
  'gap-too-tight': { remedy: 'open-gap' },
  'bead-too-small': { remedy: 'lay-more-metal', hints: ['bead-narrow'], against: ['bead-wide'] },
  'pool-too-large': { remedy: 'smaller-pool', hints: ['bead-wide', 'lower-leg-longer'] },
  'tip-worn': { remedy: 'change-tip', processes: WIRE, hints: ['widths-vary'] },
  'arc-blow': { remedy: 'move-work-clamp', processes: STICK, hints: ['widths-vary', 'at-end'] },
  'fill-too-high': { remedy: 'plan-the-cap' },
  'fill-too-low': { remedy: 'fill-before-cap' },
  'plates-not-level': { remedy: 'straighten-plates' },
} as const satisfies Record<string, CauseFacts>

export type Cause = keyof typeof facts
/** Everything that can be to blame, with its remedy and what would show it on a coupon. Common practice, no source. */
export const CAUSES: Readonly<Record<Cause, CauseFacts>> = facts
export const ALL_CAUSES = Object.keys(facts) as readonly Cause[]

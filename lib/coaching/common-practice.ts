import type { Process } from '../procedure/process'
import type { Weld } from '../scoring/types'
import type { Source } from '../source'
import { CAUSES, type Cause } from './causes'
import type { Symptom } from './symptom'

/** No document stands behind this table: it is what welding shops tell each other. */
export const COACHING_SOURCE: Source = { title: 'Common practice', clause: null, status: 'common-practice' }

export type PositionGroup = 'flat' | 'horizontal' | 'vertical-up' | 'vertical-down' | 'overhead'

/** How often a cause is the one: 3 usually, 2 often, 1 now and then. */
export type Commonness = 1 | 2 | 3
type Entry = { readonly cause: Cause; readonly common: Commonness; readonly processes?: readonly Process[]; readonly positions?: readonly PositionGroup[] }

const OUT_OF_FLAT: readonly PositionGroup[] = ['vertical-up', 'overhead']
const SIDE_BY_SIDE: readonly PositionGroup[] = ['flat', 'vertical-up', 'vertical-down', 'overhead']
const ONE_ABOVE: readonly PositionGroup[] = ['horizontal', 'overhead']
const SLAG: readonly Process[] = ['SMAW', 'FCAW-S', 'FCAW-G']

const usually = (cause: Cause, only: Omit<Entry, 'cause' | 'common'> = {}): Entry => ({ cause, common: 3, ...only })
const often = (cause: Cause, only: Omit<Entry, 'cause' | 'common'> = {}): Entry => ({ cause, common: 2, ...only })
const sometimes = (cause: Cause, only: Omit<Entry, 'cause' | 'common'> = {}): Entry => ({ cause, common: 1, ...only })

const MORE_HEAT_NEEDED = [usually('amps-too-low'), usually('wire-feed-too-low')]
const LESS_HEAT_NEEDED = [often('amps-too-high'), often('wire-feed-too-high')]

/** Causes of each symptom. A process named in `CAUSES` limits a cause further, so stick and wire rows can stand side by side. */
const PRACTICE: Readonly<Record<Symptom, readonly Entry[]>> = {
  undercut: [
    usually('travel-too-fast'), usually('arc-too-long'), usually('volts-too-high'), ...LESS_HEAT_NEEDED,
    usually('side-pauses-too-short', { positions: ['vertical-up'] }), often('side-pauses-too-short', { positions: ['overhead'] }),
    often('aim-too-high', { positions: ['horizontal'] }), sometimes('aim-too-low', { positions: ['horizontal'] }),
    sometimes('aim-off-root', { positions: SIDE_BY_SIDE }), sometimes('side-pauses-uneven', { positions: ['vertical-up'] }),
    sometimes('weave-too-wide'), sometimes('travel-angle-wrong'),
  ],
  overlap: [
    usually('travel-too-slow'), often('amps-too-low'), often('volts-too-low'), often('wire-feed-too-high'),
    usually('aim-too-low', { positions: ['horizontal'] }), usually('pool-too-large', { positions: [...OUT_OF_FLAT, 'horizontal'] }),
    usually('pool-ahead', { positions: ['vertical-down'] }), sometimes('travel-angle-wrong'),
  ],
  porosity: [
    usually('stick-out-too-long', { processes: ['FCAW-G', 'GMAW'] }), sometimes('stick-out-too-long', { processes: ['FCAW-S'] }),
    often('stick-out-too-short', { processes: ['FCAW-S'] }), sometimes('stick-out-too-short', { processes: ['FCAW-G'] }),
    usually('volts-too-high', { processes: ['FCAW-S'] }), often('volts-too-high', { processes: ['FCAW-G'] }), sometimes('volts-too-high', { processes: ['GMAW'] }),
    usually('gas-coverage-poor'), often('draught', { processes: ['FCAW-G', 'GMAW'] }), sometimes('draught', { processes: ['SMAW', 'FCAW-S'] }),
    often('wrong-polarity', { processes: ['FCAW-S'] }), sometimes('wrong-polarity', { processes: ['SMAW', 'FCAW-G', 'GMAW'] }),
    usually('arc-too-long'), usually('damp-electrodes'), sometimes('damp-wire'), often('dirty-plate'),
    often('wire-end-not-trimmed', { processes: ['FCAW-S', 'FCAW-G'] }), sometimes('wire-end-not-trimmed', { processes: ['GMAW'] }),
    often('start-struck-cold'), sometimes('travel-too-fast'), sometimes('travel-angle-wrong', { processes: ['FCAW-G', 'GMAW'] }), sometimes('arc-blow'),
  ],
  'lack-of-fusion': [
    ...MORE_HEAT_NEEDED, often('volts-too-low'), usually('slag-ahead'), usually('pool-ahead', { processes: ['GMAW'] }),
    often('pool-ahead', { processes: SLAG, positions: ['vertical-down'] }), often('travel-too-fast'), often('travel-too-slow'),
    often('aim-off-root'), often('aim-too-low', { positions: ['horizontal'] }), often('stick-out-too-long'), often('not-cleaned-between-passes'),
    often('side-pauses-too-short', { positions: OUT_OF_FLAT }), sometimes('dirty-plate'), sometimes('wrong-polarity'), sometimes('arc-blow'),
  ],
  'incomplete-penetration': [
    ...MORE_HEAT_NEEDED, usually('gap-too-tight'), often('travel-too-fast'), often('aim-off-root'), often('arc-too-long'), often('stick-out-too-long'),
    sometimes('slag-ahead'), sometimes('travel-angle-wrong'), sometimes('wrong-polarity'),
  ],
  crack: [
    usually('bead-too-small'), often('plate-too-cold'), often('damp-electrodes'), sometimes('damp-wire'), often('gap-too-wide'),
    sometimes('dirty-plate'), sometimes('travel-too-fast'), sometimes('arc-broken-early'),
  ],
  'crater-crack': [usually('arc-broken-early'), often('hurried-end'), sometimes('amps-too-high'), sometimes('wire-feed-too-high'), sometimes('bead-too-small')],
  crater: [usually('arc-broken-early'), often('hurried-end'), sometimes('amps-too-high'), sometimes('wire-feed-too-high'), sometimes('travel-too-fast')],
  slag: [
    usually('slag-ahead'), usually('not-cleaned-between-passes'), usually('not-cleaned-after', { processes: SLAG }), often('travel-angle-wrong'),
    often('amps-too-low'), sometimes('volts-too-low'), sometimes('travel-too-slow'), sometimes('not-cleaned-after', { processes: ['GMAW'] }),
  ],
  spatter: [
    usually('not-cleaned-after'), often('arc-too-long'), often('volts-too-high'), often('volts-too-low', { processes: ['GMAW'] }),
    often('stick-out-too-long'), often('wrong-polarity'), sometimes('amps-too-high'), sometimes('arc-blow'), sometimes('dirty-plate'),
    sometimes('damp-electrodes'), sometimes('gas-coverage-poor'),
  ],
  'arc-strike': [usually('arc-struck-outside')],
  'burn-through': [
    usually('amps-too-high'), usually('wire-feed-too-high'), usually('travel-too-slow'), often('gap-too-wide'), often('plate-too-hot'),
    sometimes('volts-too-high'), sometimes('wrong-polarity'),
  ],
  'poor-restart': [
    usually('restart-off-crater'), often('restart-not-cleaned'), often('wire-end-not-trimmed'), often('start-struck-cold'), sometimes('arc-broken-early'),
  ],
  'bead-too-wide': [
    usually('travel-too-slow'), often('weave-too-wide'), often('volts-too-high'), often('arc-too-long'), sometimes('amps-too-high'),
    sometimes('wire-feed-too-high'), sometimes('plate-too-hot'), sometimes('stick-out-too-short'), sometimes('pool-ahead', { positions: ['vertical-down'] }),
  ],
  'bead-too-narrow': [
    usually('travel-too-fast'), often('volts-too-low'), often('amps-too-low'), often('wire-feed-too-low'), often('stick-out-too-long'),
    sometimes('arc-too-short'), sometimes('hurried-end'),
  ],
  'width-uneven': [
    usually('travel-uneven'), often('hurried-end'), sometimes('plate-too-hot'), sometimes('tip-worn'), sometimes('arc-blow'),
    often('side-pauses-uneven', { positions: OUT_OF_FLAT }),
  ],
  'leg-too-short': [
    usually('travel-too-fast'), often('amps-too-low'), often('wire-feed-too-low'), often('aim-too-low', { positions: ONE_ABOVE }),
    often('aim-too-high', { positions: ONE_ABOVE }), often('aim-off-root', { positions: SIDE_BY_SIDE }), often('hurried-end'),
    sometimes('gap-too-wide'), sometimes('stick-out-too-long'),
  ],
  'legs-unequal': [
    usually('aim-too-low', { positions: ONE_ABOVE }), usually('aim-too-high', { positions: ONE_ABOVE }), usually('aim-off-root', { positions: SIDE_BY_SIDE }),
    often('side-pauses-uneven', { positions: OUT_OF_FLAT }), often('travel-too-slow', { positions: ['horizontal'] }),
    often('pool-too-large', { positions: ONE_ABOVE }), sometimes('amps-too-high'), sometimes('wire-feed-too-high'), sometimes('arc-blow'),
  ],
  convex: [
    usually('volts-too-low'), often('amps-too-low'), often('travel-too-slow'), usually('side-pauses-too-short', { positions: OUT_OF_FLAT }),
    often('stick-out-too-long'), often('pool-too-large', { positions: OUT_OF_FLAT }), sometimes('arc-too-short'), sometimes('wire-feed-too-high'),
    sometimes('travel-angle-wrong'),
  ],
  'reinforcement-high': [
    usually('travel-too-slow'), often('fill-too-high'), often('volts-too-low'), often('side-pauses-too-short', { positions: OUT_OF_FLAT }),
    sometimes('amps-too-low'), sometimes('wire-feed-too-high'),
  ],
  underfill: [usually('travel-too-fast'), usually('fill-too-low'), often('side-pauses-too-short', { positions: OUT_OF_FLAT }), sometimes('hurried-end')],
  'throat-too-thin': [
    usually('travel-too-fast'), often('volts-too-high'), often('arc-too-long'), often('gap-too-wide'), often('wire-feed-too-low'), often('amps-too-low'),
    sometimes('weave-too-wide'),
  ],
  'weld-too-large': [usually('travel-too-slow'), often('weave-too-wide'), sometimes('wire-feed-too-high'), sometimes('amps-too-high'), sometimes('plate-too-hot')],
  'excess-penetration': [usually('amps-too-high'), usually('wire-feed-too-high'), often('gap-too-wide'), often('travel-too-slow'), sometimes('plate-too-hot')],
  'root-concavity': [often('arc-too-long'), often('volts-too-high'), often('gap-too-wide'), often('travel-too-fast'), sometimes('plate-too-hot'), sometimes('pool-too-large', { positions: ['overhead'] })],
  'toe-too-steep': [
    usually('volts-too-low'), usually('travel-too-slow'), often('amps-too-low'), often('side-pauses-too-short', { positions: OUT_OF_FLAT }),
    sometimes('arc-too-short'), sometimes('wire-feed-too-high'), sometimes('stick-out-too-long'), sometimes('travel-angle-wrong'),
  ],
  'root-gap-wide': [usually('gap-too-wide'), sometimes('plates-not-level')],
  misalignment: [usually('plates-not-level')],
}

/** The group a test position belongs to; null for one that is not a plate test position. */
export function positionGroup(weld: Pick<Weld, 'position' | 'progression'>): PositionGroup | null {
  switch (/^([1-4])[FG]/.exec(weld.position.trim().toUpperCase())?.[1]) {
    case '1': return 'flat'
    case '2': return 'horizontal'
    case '3': return weld.progression === 'down' ? 'vertical-down' : 'vertical-up'
    case '4': return 'overhead'
    default: return null
  }
}

/** The causes to think of for a symptom in this process and position, the commonest first. Never empty. */
export function usualCauses(symptom: Symptom, weld: Pick<Weld, 'process' | 'position' | 'progression'>): { cause: Cause; common: Commonness }[] {
  const group = positionGroup(weld)
  const fits = ({ cause, processes, positions }: Entry): boolean =>
    (CAUSES[cause].processes?.includes(weld.process) ?? true)
    && (processes?.includes(weld.process) ?? true)
    && (positions === undefined || (group !== null && positions.includes(group)))
  const found = new Map<Cause, Commonness>()
  for (const entry of PRACTICE[symptom]) {
    if (fits(entry) && (found.get(entry.cause) ?? 0) < entry.common) found.set(entry.cause, entry.common)
  }
  return [...found].map(([cause, common]) => ({ cause, common })).sort((a, b) => b.common - a.common)
}

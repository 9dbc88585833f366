import type { Source } from '../source'
import { MM_PER_INCH } from '../units/length'
import { exceeds, requireSize, requireSystem, requireThickness, type UnitSystem } from './limits'

/** What was seen on an etched cross-section. null: not looked at. Legs and nominal leg matter for fillets only. */
export type Macroetch = {
  readonly type: 'fillet' | 'groove'
  readonly crackSeen: boolean | null
  /** Fusion to the root of the joint; a fillet need not go beyond it. */
  readonly rootFused: boolean | null
  /** Full fusion between layers and to the base metal. */
  readonly fusionComplete: boolean | null
  readonly profileAcceptable: boolean | null
  readonly undercutMm: number | null
  readonly legAMm: number | null
  readonly legBMm: number | null
  readonly nominalLegMm: number | null
}

export type MacroetchReason =
  | 'crack-seen' | 'root-not-fused' | 'fusion-incomplete' | 'profile-not-acceptable' | 'undercut-too-deep' | 'leg-too-small'
  | 'macroetch-not-examined'
export type MacroetchJudgement = { readonly verdict: 'accept' | 'reject' | 'incomplete'; readonly reasons: MacroetchReason[] }

export const MACROETCH_ROOT_SOURCE: Source = {
  title: 'Fillet weld break and macroetch laboratory notes citing AWS D1.1',
  clause: null,
  status: 'secondary',
  note: 'Fusion to the root of a fillet, not necessarily beyond it.',
}
export const MACROETCH_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M, macroetch acceptance for welder qualification',
  clause: null,
  status: 'memory',
  note: 'No cracks, full fusion, acceptable profile, undercut up to 1/32 in (1 mm), legs not under size.',
}

export const MACROETCH_UNDERCUT_MM: Readonly<Record<UnitSystem, number>> = { us: MM_PER_INCH / 32, si: 1 }

/**
 * Judges an etched cross-section. Anything rejected rejects it; otherwise anything not looked at leaves it incomplete.
 *
 * @throws RangeError for a size that is negative or not a number
 */
export function judgeMacroetch(section: Macroetch, system: UnitSystem): MacroetchJudgement {
  const limitMm = MACROETCH_UNDERCUT_MM[requireSystem(system)]
  const answers: readonly (readonly [MacroetchReason, boolean | null])[] = [
    ['crack-seen', section.crackSeen],
    ['root-not-fused', opposite(section.rootFused)],
    ['fusion-incomplete', opposite(section.fusionComplete)],
    ['profile-not-acceptable', opposite(section.profileAcceptable)],
    ['undercut-too-deep', section.undercutMm === null ? null : exceeds(requireSize(section.undercutMm, 'The undercut'), limitMm)],
    ...(section.type === 'fillet' ? [['leg-too-small', legTooSmall(section)] as const] : []),
  ]
  const rejected = answers.filter(([, fault]) => fault === true).map(([reason]) => reason)
  if (rejected.length > 0) return { verdict: 'reject', reasons: rejected }
  if (answers.some(([, fault]) => fault === null)) return { verdict: 'incomplete', reasons: ['macroetch-not-examined'] }
  return { verdict: 'accept', reasons: [] }
}

const opposite = (value: boolean | null): boolean | null => (value === null ? null : !value)

function legTooSmall({ legAMm, legBMm, nominalLegMm }: Macroetch): boolean | null {
  const nominal = nominalLegMm === null ? null : requireThickness(nominalLegMm, 'The specified leg')
  const legs = [legAMm, legBMm].map(leg => (leg === null ? null : requireSize(leg, 'A leg')))
  if (nominal === null) return null
  if (legs.some(leg => leg !== null && exceeds(nominal, leg))) return true
  return legs.includes(null) ? null : false
}

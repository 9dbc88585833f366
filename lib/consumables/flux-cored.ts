import type { WeldingPosition } from '../procedure/positions'
import type { Polarity } from '../procedure/process'
import type { Source } from '../source'
import type { Consumable } from './consumable'
import { takeSuffixes, unknownPart } from './designation'

/** What a usability group of AWS A5.20 says. Positions by the position digit: 0 flat and horizontal, 1 all; null: no such class. */
type Group = {
  readonly shielding: 'self' | 'gas' | null
  readonly polarity: readonly Polarity[]
  readonly passes: 'single' | 'multiple'
  readonly flat: readonly WeldingPosition[] | null
  readonly all: readonly WeldingPosition[] | null
  readonly allPolarity?: readonly Polarity[]
  readonly impact?: { readonly ftLb: number; readonly fahrenheit: number }
}

const SOURCE: Source = {
  title: 'AWS A5.20/A5.20M',
  clause: 'Table 2',
  status: 'secondary',
  note: 'Read as a welding textbook reproduces it from the 1995 edition; impact values from AWS D1.1:2020 Annex M. The edition in force decides.',
}

const FLAT = ['F', 'H'] as const
const UP = ['F', 'H', 'V-up', 'OH'] as const
const DOWN = ['F', 'H', 'V-down', 'OH'] as const
const EITHER = ['F', 'H', 'V-up', 'V-down', 'OH'] as const
const AT_0F = { ftLb: 20, fahrenheit: 0 }
const AT_MINUS_20F = { ftLb: 20, fahrenheit: -20 }
const AT_MINUS_40F = { ftLb: 20, fahrenheit: -40 }

/** The one table of flux-cored usability groups. */
const GROUPS: Readonly<Record<string, Group>> = {
  1: { shielding: 'gas', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: UP, impact: AT_0F },
  2: { shielding: 'gas', polarity: ['DCEP'], passes: 'single', flat: FLAT, all: UP },
  3: { shielding: 'self', polarity: ['DCEP'], passes: 'single', flat: FLAT, all: null },
  4: { shielding: 'self', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: null },
  5: { shielding: 'gas', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: UP, allPolarity: ['DCEP', 'DCEN'], impact: AT_MINUS_20F },
  6: { shielding: 'self', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: null, impact: AT_MINUS_20F },
  7: { shielding: 'self', polarity: ['DCEN'], passes: 'multiple', flat: FLAT, all: UP },
  8: { shielding: 'self', polarity: ['DCEN'], passes: 'multiple', flat: FLAT, all: UP, impact: AT_MINUS_20F },
  9: { shielding: 'gas', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: UP, impact: AT_MINUS_20F },
  10: { shielding: 'self', polarity: ['DCEN'], passes: 'single', flat: FLAT, all: null },
  11: { shielding: 'self', polarity: ['DCEN'], passes: 'multiple', flat: FLAT, all: DOWN },
  12: { shielding: 'gas', polarity: ['DCEP'], passes: 'multiple', flat: FLAT, all: UP, impact: AT_MINUS_20F },
  13: { shielding: 'self', polarity: ['DCEN'], passes: 'single', flat: null, all: DOWN },
  14: { shielding: 'self', polarity: ['DCEN'], passes: 'single', flat: null, all: DOWN },
  G: { shielding: null, polarity: [], passes: 'multiple', flat: FLAT, all: EITHER },
  GS: { shielding: null, polarity: [], passes: 'single', flat: FLAT, all: EITHER },
}
/** Groups that A5.20 also classifies at 60 ksi (from memory). */
const ALSO_60_KSI = ['13', 'G', 'GS']

const DESIGNATION = /^E(\d+)(\d)T(GS|G|\d+)(.*)$/

/**
 * Reads a flux-cored designation from its letters and digits alone; null when it does not have the form of one.
 * T-G and T-GS leave shielding and polarity to the maker; they count as self-shielded wire unless a gas letter follows.
 */
export function readFluxCored(compact: string, typed: string): Consumable | null {
  const [, strength = '', digit = '', usability = '', rest = ''] = DESIGNATION.exec(compact) ?? []
  if (strength === '') return null
  const group = Object.hasOwn(GROUPS, usability) ? GROUPS[usability] : undefined
  if (group === undefined) throw unknownPart(typed, `T-${usability}`, 'usability groups run from T-1 to T-14, T-G and T-GS')
  if (strength !== '7' && !(strength === '6' && ALSO_60_KSI.includes(usability))) {
    throw unknownPart(typed, `E${strength}`, `carbon-steel flux-cored wires are 70 ksi (E7…), and 60 ksi only as ${ALSO_60_KSI.map((each) => `T-${each}`).join(', ')}`)
  }
  const positions = digit === '0' ? group.flat : digit === '1' ? group.all : null
  if (positions === null) throw unknownPart(typed, `E${strength}${digit}`, `T-${usability} is classified with ${group.flat ? '0 (flat and horizontal)' : '1 (all positions)'}${group.flat && group.all ? ' or 1 (all positions)' : ''}`)

  const { found, left } = takeSuffixes(rest, { gas: new RegExp(`C/(?:${usability})?M|C|M`), impact: /J/, tests: /D|Q/, hydrogen: /H(?:16|8|4)/ })
  if (left !== '') throw unknownPart(typed, left, 'after the usability group come C or M, J, D or Q, and H4, H8 or H16')
  if (found.gas && group.shielding === 'self') throw unknownPart(typed, found.gas, `T-${usability} is self-shielded and takes no gas`)

  const isGas = group.shielding === 'gas' || found.gas !== undefined
  const gases = found.gas === undefined ? undefined : ([...(found.gas.startsWith('C') ? ['C1' as const] : []), ...(found.gas.endsWith('M') ? ['M21' as const] : [])])
  const impact = found.impact ? AT_MINUS_40F : group.impact
  const gasLetters = gases?.map((gas) => (gas === 'C1' ? 'C' : 'M')).join('/') ?? ''
  const supplement = `${found.impact ?? ''}${found.tests ?? ''}`
  return {
    standard: 'AWS A5.20',
    classification: [`E${strength}${digit}T-${usability}${gasLetters}${supplement && `-${supplement}`}`, found.hydrogen].filter(Boolean).join(' '),
    process: isGas ? 'FCAW-G' : 'FCAW-S',
    tensileKsi: Number(strength) * 10,
    polarity: digit === '1' ? (group.allPolarity ?? group.polarity) : group.polarity,
    shielding: isGas ? 'gas' : group.shielding,
    passes: group.passes,
    positions,
    source: SOURCE,
    usability,
    ...(gases ? { gases } : {}),
    ...(impact ? { impact } : {}),
    ...(found.hydrogen ? { hydrogenMlPer100g: Number(found.hydrogen.slice(1)) as 4 | 8 | 16 } : {}),
    ...(found.tests ? { heatInputTests: found.tests as 'D' | 'Q' } : {}),
  }
}

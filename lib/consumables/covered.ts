import type { WeldingPosition } from '../procedure/positions'
import type { Polarity } from '../procedure/process'
import type { Source } from '../source'
import type { Consumable } from './consumable'
import { takeSuffixes, unknownPart } from './designation'

/** What the last two digits of an AWS A5.1 electrode say. */
type Covering = {
  /** Tensile digits that A5.1 gives it; others belong to the low-alloy specification. */
  readonly ksi: readonly number[]
  readonly polarity: readonly Polarity[]
  readonly positions: readonly WeldingPosition[]
  readonly lowHydrogen: boolean
  readonly passes: 'single' | null
  readonly impact?: { readonly ftLb: number; readonly fahrenheit: number }
}

const SOURCE: Source = {
  title: 'AWS A5.1/A5.1M',
  clause: 'Table 1',
  status: 'secondary',
  note: 'Read in two makers’ guides to A5.1. The specification says vertical without its progression: low-hydrogen electrodes are taken as welded up, which is common practice.',
}

const ANY = ['F', 'H', 'V-up', 'V-down', 'OH'] as const
const UP = ['F', 'H', 'V-up', 'OH'] as const
const DOWN = ['F', 'H', 'V-down', 'OH'] as const
const FLAT = ['F', 'H'] as const
const POSITIVE = ['DCEP'] as const
const NEGATIVE_OR_AC = ['DCEN', 'AC'] as const
const POSITIVE_OR_AC = ['DCEP', 'AC'] as const
const ANY_CURRENT = ['DCEP', 'DCEN', 'AC'] as const
/** 27 J at -30 °C and at -20 °C. */
const AT_MINUS_20F = { ftLb: 20, fahrenheit: -20 }
const AT_0F = { ftLb: 20, fahrenheit: 0 }

const covering = (ksi: readonly number[], polarity: readonly Polarity[], positions: readonly WeldingPosition[], more: Partial<Covering> = {}): Covering =>
  ({ ksi, polarity, positions, lowHydrogen: false, passes: null, ...more })

/** The one table of electrode coverings. */
const COVERINGS: Readonly<Record<string, Covering>> = {
  10: covering([60], POSITIVE, ANY, { impact: AT_MINUS_20F }),
  11: covering([60], POSITIVE_OR_AC, ANY, { impact: AT_MINUS_20F }),
  12: covering([60], NEGATIVE_OR_AC, ANY),
  13: covering([60], ANY_CURRENT, ANY),
  14: covering([70], ANY_CURRENT, ANY),
  15: covering([70], POSITIVE, UP, { lowHydrogen: true, impact: AT_MINUS_20F }),
  16: covering([70], POSITIVE_OR_AC, UP, { lowHydrogen: true, impact: AT_MINUS_20F }),
  18: covering([70], POSITIVE_OR_AC, UP, { lowHydrogen: true, impact: AT_MINUS_20F }),
  19: covering([60], ANY_CURRENT, ANY, { impact: AT_0F }),
  20: covering([60], NEGATIVE_OR_AC, FLAT),
  22: covering([60], NEGATIVE_OR_AC, FLAT, { passes: 'single' }),
  24: covering([70], ANY_CURRENT, FLAT),
  27: covering([60, 70], ANY_CURRENT, FLAT, { impact: AT_MINUS_20F }),
  28: covering([70], POSITIVE_OR_AC, FLAT, { lowHydrogen: true, impact: AT_0F }),
  48: covering([70], POSITIVE_OR_AC, DOWN, { lowHydrogen: true, impact: AT_MINUS_20F }),
}
const IMPROVED = ['16', '18', '24']

/** Reads a covered-electrode designation from its letters and digits alone; null when it does not have the form of one. */
export function readCovered(compact: string, typed: string): Consumable | null {
  const [, strength = '', ending = '', rest = ''] = /^E(1[0-2]\d|\d\d)(\d\d)(.*)$/.exec(compact) ?? []
  if (strength === '') return null
  const kind = Object.hasOwn(COVERINGS, ending) ? COVERINGS[ending] : undefined
  if (kind === undefined) throw unknownPart(typed, ending, `coverings of A5.1 are ${Object.keys(COVERINGS).join(', ')}`)
  if (!kind.ksi.includes(Number(strength))) throw unknownPart(typed, `E${strength}`, `A5.1 gives covering ${ending} at ${kind.ksi.join(' or ')} ksi; other strengths are low-alloy electrodes, which these tables do not hold`)

  const { found, left } = takeSuffixes(rest, { military: /M/, improved: /1/, hydrogen: /H(?:16|8|4)/, resistant: /R/ })
  if (left !== '') throw unknownPart(typed, left, 'after the digits come M or -1, then H4, H8 or H16, then R')
  if (found.military && ending !== '18') throw unknownPart(typed, 'M', 'only E7018M has it')
  if (found.improved && !IMPROVED.includes(ending)) throw unknownPart(typed, '-1', 'only E7016, E7018 and E7024 have it')
  if ((found.hydrogen || found.resistant) && !kind.lowHydrogen) throw unknownPart(typed, `${found.hydrogen ?? ''}${found.resistant ?? ''}`, 'only low-hydrogen electrodes carry hydrogen and moisture marks')

  const impact = impactOf(kind, ending, found)
  return {
    standard: 'AWS A5.1',
    classification: [`E${strength}${ending}${found.military ?? ''}${found.improved ? '-1' : ''}`, `${found.hydrogen ?? ''}${found.resistant ?? ''}`].filter(Boolean).join(' '),
    process: 'SMAW',
    tensileKsi: Number(strength),
    polarity: found.military ? POSITIVE : kind.polarity,
    shielding: 'slag',
    passes: kind.passes,
    positions: kind.positions,
    source: SOURCE,
    usability: ending,
    lowHydrogen: kind.lowHydrogen,
    ...(impact ? { impact } : {}),
    ...(found.hydrogen ? { hydrogenMlPer100g: Number(found.hydrogen.slice(1)) as 4 | 8 | 16 } : {}),
    ...(found.resistant ? { moistureResistant: true } : {}),
  }
}

/** E7018M is 67 J (50 ft-lb) at -30 °C; the mark -1 asks for 20 ft-lb at -50 °F of E7016 and E7018, at 0 °F of E7024 (from memory). */
function impactOf(kind: Covering, ending: string, found: { readonly military?: string; readonly improved?: string }): Covering['impact'] {
  if (found.military) return { ftLb: 50, fahrenheit: -20 }
  if (found.improved) return { ftLb: 20, fahrenheit: ending === '24' ? 0 : -50 }
  return kind.impact
}

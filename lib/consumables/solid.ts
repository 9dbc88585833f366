import type { Source } from '../source'
import type { Consumable } from './consumable'
import { takeSuffixes, unknownPart } from './designation'

const SOURCE: Source = {
  title: 'AWS A5.18/A5.18M', clause: null, status: 'secondary',
  note: 'Chemistry groups read in ASME SFA-5.18; polarity and impact values from memory. The specification names no positions.',
}

const AT_0F = { ftLb: 20, fahrenheit: 0 }
const AT_MINUS_20F = { ftLb: 20, fahrenheit: -20 }
type Impact = { readonly ftLb: number; readonly fahrenheit: number } | null

/** Chemistry groups of solid wire and rod, with the impact energy asked for. */
const SOLID: Readonly<Record<string, Impact>> = { 2: AT_MINUS_20F, 3: AT_0F, 4: null, 6: AT_MINUS_20F, 7: AT_MINUS_20F, G: null }
/** Groups of metal-cored wire; G and GS are as agreed with the maker, GS for single-pass welds. */
const METAL_CORED: Readonly<Record<string, Impact>> = { 3: AT_0F, 6: AT_MINUS_20F, G: null, GS: null }

/** Reads a solid or metal-cored designation from its letters and digits alone; null when it does not have the form of one. */
export function readSolidOrMetalCored(compact: string, typed: string): Consumable | null {
  const [, strength = '', form = '', group = '', rest = ''] = /^ER?(\d+)(S|C)(GS|G|\d*)(.*)$/.exec(compact) ?? []
  if (strength === '') return null
  const isSolid = form === 'S'
  if (compact.startsWith('ER') !== isSolid) throw unknownPart(typed, compact.slice(0, 2), 'solid wire is ER…S, metal-cored wire is E…C')
  if (strength !== '70') throw unknownPart(typed, `${isSolid ? 'ER' : 'E'}${strength}`, 'carbon-steel wires of A5.18 are 70 ksi')
  const table = isSolid ? SOLID : METAL_CORED
  if (!Object.hasOwn(table, group)) throw unknownPart(typed, `${form}-${group}`, `groups are ${Object.keys(table).map((each) => `${form}-${each}`).join(', ')}`)

  const { found, left } = takeSuffixes(rest, { ...(isSolid ? {} : { gas: /C|M/ }), hydrogen: /H(?:16|8|4)/ } as Record<'gas' | 'hydrogen', RegExp>)
  if (left !== '') throw unknownPart(typed, left, isSolid ? 'after the group come H4, H8 or H16' : 'after the group come C or M, then H4, H8 or H16')
  if (!isSolid && /\d/.test(group) && !found.gas) throw unknownPart(typed, `C-${group}`, 'a metal-cored wire names its gas: C for carbon dioxide, M for argon with carbon dioxide')
  const impact = table[group]
  return {
    standard: 'AWS A5.18',
    classification: [`${isSolid ? 'ER' : 'E'}70${form}-${group}${found.gas ?? ''}`, found.hydrogen].filter(Boolean).join(' '),
    process: 'GMAW',
    tensileKsi: 70,
    polarity: ['DCEP'],
    shielding: 'gas',
    passes: group === 'GS' ? 'single' : 'multiple',
    positions: null,
    source: SOURCE,
    usability: group,
    ...(found.gas ? { gases: [found.gas === 'C' ? ('C1' as const) : ('M21' as const)] } : {}),
    ...(impact ? { impact } : {}),
    ...(found.hydrogen ? { hydrogenMlPer100g: Number(found.hydrogen.slice(1)) as 4 | 8 | 16 } : {}),
  }
}

import type { CriteriaSet, Limit, Reading } from '../criteria/types'
import { notFor } from '../scoring/applies'
import { factsOf, type Facts } from '../scoring/facts'
import { limitFor } from '../scoring/limit'
import type { Station, Weld } from '../scoring/types'

type Field = Exclude<keyof Station, 'atMm'>
type Range = { readonly minMm: number; readonly maxMm: number }

/** What the tap pad of one size shows first, and which of its keys are shaded. Millimetres. */
export type PadBand = {
  /** Sizes to have in reach without turning the page. */
  readonly expected: Range
  /** What the criteria allow at every station; null where they set no limit, or one that turns on something not yet read. */
  readonly allowed: { readonly minMm: number | null; readonly maxMm: number | null } | null
  /** Nothing at all is a reading here, as a face without convexity; a bead always has a width. */
  readonly fromZero: boolean
}
export type PadBands = Readonly<Partial<Record<Field, PadBand>>>

const READING_OF: Readonly<Partial<Record<Field, Reading>>> = {
  widthMm: 'width', legAMm: 'shortest-leg', legBMm: 'shortest-leg', throatMm: 'throat', convexityMm: 'convexity', reinforcementMm: 'reinforcement',
  penetrationMm: 'penetration', rootConcavityMm: 'root-concavity', misalignmentMm: 'misalignment', underfillMm: 'underfill',
}
/** Face width and throat of a flat fillet with equal legs, by its leg. */
const WIDTH_OF_LEG = Math.SQRT2
const THROAT_OF_LEG = Math.SQRT1_2
/** Where the criteria leave a size open, the pad opens on the size asked for and a quarter more: a place to begin, not a limit. */
const BEGIN = 1.25
/** A pad of small sizes opens on the first eighth of an inch. */
const SMALL_MM = 3.175

/**
 * The pad of each size a form asks for. Sizes with no pad, such as an angle, are left out: they are typed.
 *
 * @throws RangeError when a fact of the weld is not usable
 */
export function padBands(weld: Weld, criteria: CriteriaSet, fields: readonly Field[]): PadBands {
  const facts = factsOf(weld)
  return Object.fromEntries(fields.flatMap((field) => {
    const reading = READING_OF[field]
    const band = reading === undefined ? null : bandOf(field, reading, facts, criteria)
    return band === null ? [] : [[field, band]]
  }))
}

function bandOf(field: Field, reading: Reading, facts: Facts, criteria: CriteriaSet): PadBand | null {
  const allowed = allowedFor(reading, facts, criteria)
  const usual = usualSize(field, facts)
  if (usual === null) return { expected: { minMm: 0, maxMm: Math.max(SMALL_MM, allowed?.maxMm ?? 0) }, allowed, fromZero: true }
  if (usual.minMm <= 0) return null
  const minMm = allowed?.minMm ?? usual.minMm
  const maxMm = allowed?.maxMm ?? Math.max(minMm * BEGIN, usual.maxMm)
  return { expected: { minMm: Math.min(minMm, maxMm), maxMm }, allowed, fromZero: false }
}

/** null for the small sizes, which begin at nothing. */
function usualSize(field: Field, { nominalLegMm, thicknessMm }: Facts): Range | null {
  const from = (size: number | null): Range => ({ minMm: size ?? SMALL_MM, maxMm: (size ?? SMALL_MM) * BEGIN })
  switch (field) {
    case 'widthMm': return from(nominalLegMm === null ? thicknessMm : nominalLegMm * WIDTH_OF_LEG)
    case 'legAMm':
    case 'legBMm': return from(nominalLegMm)
    case 'throatMm': return from(nominalLegMm === null ? thicknessMm : nominalLegMm * THROAT_OF_LEG)
    default: return null
  }
}

/** The tightest of what the rules on a reading allow; null when none says, or one of them cannot be known before the width is. */
function allowedFor(reading: Reading, facts: Facts, criteria: CriteriaSet): PadBand['allowed'] {
  const ends = criteria.rules.flatMap((rule): { min: Limit | null; max: Limit | null }[] => {
    if (!('reading' in rule) || rule.reading !== reading || notFor(rule, facts) !== null) return []
    if (rule.kind === 'reading-range') return [{ min: rule.min, max: rule.max }]
    if (rule.kind === 'reading-allowance') return [rule.side === 'below' ? { min: rule.nominal, max: null } : { min: null, max: rule.nominal }]
    return []
  })
  const known = ends.map(({ min, max }) => ({ min: min && limitFor(min, facts, null), max: max && limitFor(max, facts, null), asked: { min, max } }))
  if (known.length === 0 || known.some(({ min, max, asked }) => (asked.min !== null && min === null) || (asked.max !== null && max === null))) return null
  const mins = known.flatMap(({ min }) => (min === null ? [] : [min]))
  const maxs = known.flatMap(({ max }) => (max === null ? [] : [max]))
  return { minMm: mins.length === 0 ? null : Math.max(...mins), maxMm: maxs.length === 0 ? null : Math.min(...maxs) }
}

/** Whether a key of the pad lies inside what is allowed; a limit met exactly is. */
export function isAllowed(valueMm: number, allowed: PadBand['allowed']): boolean {
  if (allowed === null || (allowed.minMm === null && allowed.maxMm === null)) return false
  return valueMm >= (allowed.minMm ?? 0) - 1e-6 && valueMm <= (allowed.maxMm ?? Infinity) + 1e-6
}

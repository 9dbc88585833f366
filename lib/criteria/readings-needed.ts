import type { CriteriaSet, Limit, Quantity, Reading, Rule } from './types'
import type { Station } from '../scoring/types'

type Field = Exclude<keyof Station, 'atMm'>

const FIELDS: Readonly<Record<Reading, readonly Field[]>> = {
  width: ['widthMm'], 'shortest-leg': ['legAMm', 'legBMm'], 'leg-difference': ['legAMm', 'legBMm'], throat: ['throatMm'],
  convexity: ['convexityMm'], reinforcement: ['reinforcementMm'], penetration: ['penetrationMm'], 'root-concavity': ['rootConcavityMm'],
  misalignment: ['misalignmentMm'], underfill: ['underfillMm'], 'shrinkage-groove': ['shrinkageGrooveMm'], 'root-shortfall': ['rootShortfallMm'],
  'root-pore': ['rootPoreMm'], 'root-gap': ['rootGapMm'], 'toe-angle': ['toeAngleDeg'],
}
const WIDTHS: Readonly<Partial<Record<Quantity, Field>>> = { width: 'widthMm', 'root-width': 'rootWidthMm' }
const ORDER: readonly Field[] = [
  'widthMm', 'legAMm', 'legBMm', 'throatMm', 'convexityMm', 'reinforcementMm', 'toeAngleDeg', 'underfillMm', 'misalignmentMm', 'rootGapMm',
  'penetrationMm', 'rootWidthMm', 'rootShortfallMm', 'rootConcavityMm', 'shrinkageGrooveMm', 'rootPoreMm',
]

type WeldType = 'fillet' | 'groove'

/**
 * What must be measured at each station for a set to judge a weld of this type, in the order a form asks for it. The width is
 * always asked for: the drawn weld is made of it.
 */
export function readingsNeeded(criteria: CriteriaSet, weldType: WeldType): readonly Field[] {
  const needed = new Set<Field>(['widthMm', ...fieldsOf(criteria, weldType, (rule) => !isOptional(rule))])
  return ORDER.filter((field) => needed.has(field))
}

/**
 * What else the set judges at a station, but only where someone took it: for a form to offer, not to ask for. Once taken at one
 * station, a reading is missed at every other. Empty for a set without such rules.
 */
export function readingsWhereRecorded(criteria: CriteriaSet, weldType: WeldType): readonly Field[] {
  const needed = readingsNeeded(criteria, weldType)
  const offered = new Set(fieldsOf(criteria, weldType, isOptional))
  return ORDER.filter((field) => offered.has(field) && !needed.includes(field))
}

function fieldsOf(criteria: CriteriaSet, weldType: WeldType, wanted: (rule: Rule) => boolean): readonly Field[] {
  return criteria.rules.filter((rule) => isFor(rule, weldType) && wanted(rule))
    .flatMap((rule) => ('reading' in rule ? [...FIELDS[rule.reading], ...widthsIn(rule)] : []))
}

const isFor = (rule: Rule, weldType: WeldType): boolean => (rule.when?.weld ?? weldType) === weldType && rule.unless?.weld !== weldType

/** A rule on a reading that is only judged where someone took it. */
const isOptional = (rule: Rule): boolean => 'optional' in rule && rule.optional === true

/** The widths that a rule's limits are worked out from. */
function widthsIn(rule: Rule): readonly Field[] {
  return rule.kind === 'reading-range' ? [rule.min, rule.max].flatMap(quantitiesIn).flatMap((quantity) => WIDTHS[quantity] ?? []) : []
}

function quantitiesIn(limit: Limit | null): readonly Quantity[] {
  switch (limit?.form) {
    case 'linear': return limit.plus === undefined ? [limit.of] : [limit.of, limit.plus]
    case 'table': return [limit.by]
    default: return []
  }
}

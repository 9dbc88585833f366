import type { CriteriaSet, Reading, Rule } from './types'
import type { Station } from '../scoring/types'

type Field = Exclude<keyof Station, 'atMm'>

const FIELDS: Readonly<Record<Reading, readonly Field[]>> = {
  width: ['widthMm'], 'shortest-leg': ['legAMm', 'legBMm'], 'leg-difference': ['legAMm', 'legBMm'], throat: ['throatMm'],
  convexity: ['convexityMm'], reinforcement: ['reinforcementMm'], penetration: ['penetrationMm'], 'root-concavity': ['rootConcavityMm'],
  misalignment: ['misalignmentMm'], underfill: ['underfillMm'],
}
const ORDER: readonly Field[] = [
  'widthMm', 'legAMm', 'legBMm', 'throatMm', 'convexityMm', 'reinforcementMm', 'penetrationMm', 'rootConcavityMm', 'misalignmentMm', 'underfillMm',
]

/**
 * What must be measured at each station for a set to judge a weld of this type, in the order a form asks for it. The width is
 * always asked for: the drawn weld is made of it.
 */
export function readingsNeeded(criteria: CriteriaSet, weldType: 'fillet' | 'groove'): readonly Field[] {
  const needed = new Set<Field>(['widthMm'])
  for (const rule of criteria.rules) {
    if (rule.when?.weld && rule.when.weld !== weldType) continue
    if (rule.unless?.weld === weldType || isOptional(rule)) continue
    if ('reading' in rule) FIELDS[rule.reading].forEach((field) => needed.add(field))
  }
  return ORDER.filter((field) => needed.has(field))
}

/** A rule on a reading that is only judged where someone took it. */
const isOptional = (rule: Rule): boolean => 'optional' in rule && rule.optional === true


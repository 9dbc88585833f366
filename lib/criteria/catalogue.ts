import { freezeDeep } from './freeze'
import { iso5817B, iso5817C, iso5817D } from './sets/iso5817'
import { iso9606Set } from './sets/iso9606'
import { qualificationVisualSi, qualificationVisualUs } from './sets/qualification-visual'
import { shopBead } from './sets/shop-bead'
import { structuralCyclicSi, structuralCyclicUs } from './sets/structural-cyclic'
import { structuralStaticSi, structuralStaticUs } from './sets/structural-static'
import type { CriteriaSet } from './types'

const SETS: readonly CriteriaSet[] = freezeDeep([
  shopBead,
  structuralStaticUs, structuralStaticSi,
  structuralCyclicUs, structuralCyclicSi,
  qualificationVisualUs, qualificationVisualSi,
  iso5817B, iso5817C, iso5817D,
  iso9606Set(),
])

const byId: ReadonlyMap<string, CriteriaSet> = new Map(SETS.map((set) => [set.id, set]))

/** Every built-in set of criteria. A program adds its own beside them. */
export function allCriteria(): readonly CriteriaSet[] {
  return SETS
}

/**
 * A built-in set of criteria, frozen.
 *
 * @throws RangeError listing the ids there are
 */
export function criteriaById(id: string): CriteriaSet {
  const set = byId.get(id)
  if (set === undefined) throw new RangeError(`There are no criteria with the id "${id}". The built-in sets are ${[...byId.keys()].join(', ')}.`)
  return set
}

import { allCriteria } from '../criteria/catalogue'
import type { CriteriaSet, Rule } from '../criteria/types'
import { notFor } from '../scoring/applies'
import { rulesOf } from '../scoring/compile'
import { factsOf } from '../scoring/facts'
import type { Finding, Weld } from '../scoring/types'

/**
 * The rule behind a finding, as its set holds it: the one of its id that is for this weld, or the first of its id when the weld is
 * not known or none is for it. Null for a set that has no such rule.
 */
export function ruleBehind(finding: Finding, criteria: CriteriaSet, weld: Weld | undefined): Rule | null {
  const rules = criteria.rules.filter(rule => rule.id === finding.rule)
  const facts = weld === undefined ? null : factsOf(weld)
  return rules.find(rule => facts !== null && notFor(rule, facts) === null) ?? rules[0] ?? null
}

/**
 * A built-in rule of the finding's id that measures in the same unit: enough to know what was measured when the set itself is not
 * at hand, but not what else the set allows, which differs between sets.
 */
export function ruleLike(finding: Finding): Rule | null {
  const known = allCriteria().flatMap(set => rulesOf(set).flat()).filter(({ rule, unit }) => rule.id === finding.rule && unit === finding.unit)
  return (known.find(({ rule }) => saysSource(rule, finding)) ?? known[0])?.rule ?? null
}

const saysSource = (rule: Rule, finding: Finding): boolean => rule.source.title === finding.source.title && rule.source.clause === finding.source.clause

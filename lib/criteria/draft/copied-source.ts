import type { CriteriaSet, Rule } from '../types'
import type { DraftCriteria, DraftRule } from './draft'
import type { BoxProblems } from './from-draft'

/**
 * A changed limit may not go on citing what it was copied with. Of every rule that judges otherwise than the one it was copied from:
 * a citation left as it was, unless it cites common practice, and a note left as it was.
 *
 * @param set the draft read as a set, its rules in the draft's order
 * @param base what the draft was copied from
 */
export function copiedSourceProblems(draft: DraftCriteria, set: CriteriaSet, base: CriteriaSet): BoxProblems {
  const problems: Record<string, string> = {}
  set.rules.forEach((rule, index) => {
    const typed = draft.rules[index]
    const origin = typed && originOf(typed, rule, base)
    if (!origin || judgement(origin) === judgement(rule)) return
    const { title, clause, status, note } = origin.source
    const same = rule.source.title === title && rule.source.clause === clause && rule.source.status === status
    if (same && status !== 'common-practice') problems[`rules.${index}.source.title`] = `“${title}” gives another limit. Say where this one comes from.`
    if (note !== undefined && rule.source.note === note) problems[`rules.${index}.source.note`] = 'This note was written for the limit before. Say what holds now, or empty it.'
  })
  return problems
}

/** The rule it was copied from: the place it had in the base, which its key keeps, or else its id where that is alone. */
function originOf(typed: DraftRule, rule: Rule, base: CriteriaSet): Rule | null {
  const placed = base.rules[Number(typed.key) - 1]
  if (placed?.kind === rule.kind && placed.id === rule.id) return placed
  const named = base.rules.filter((each) => each.id === rule.id && each.kind === rule.kind)
  return named.length === 1 ? (named[0] ?? null) : null
}

/** What a rule asks for and of which welds, without what it says of itself. */
function judgement({ id: _id, source: _source, weight: _weight, readiness: _readiness, ...asked }: Rule): string {
  return JSON.stringify(sorted(asked))
}

function sorted(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(sorted)
  if (typeof data !== 'object' || data === null) return data
  return Object.fromEntries(Object.entries(data).sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, value]) => [name, sorted(value)]))
}

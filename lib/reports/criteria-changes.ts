import { criteriaInWords, type RuleInWords } from './criteria-words'
import type { CriteriaSet } from '../criteria/types'

/** A rule that two versions of a set do not have alike. */
export type RuleChange = {
  readonly name: string
  readonly change: 'added' | 'removed' | 'changed'
  /** 'Undercut: depth at most 1/32 in.'; null for an added rule. */
  readonly before: string | null
  readonly after: string | null
}

/** What differs between two versions: rules in the later one's order, removed ones last, then the least mark. */
export function criteriaChanges(before: CriteriaSet, after: CriteriaSet): readonly RuleChange[] {
  const [old, now] = [placed(before), placed(after)]
  const changed = [...now].flatMap(([place, rule]): RuleChange[] => {
    const was = old.get(place)
    if (!was) return [{ name: rule.name, change: 'added', before: null, after: text(rule) }]
    return whole(was) === whole(rule) ? [] : [{ name: rule.name, change: 'changed', ...told(was, rule) }]
  })
  const removed = [...old].flatMap(([place, rule]): RuleChange[] => (now.has(place) ? [] : [{ name: rule.name, change: 'removed', before: text(rule), after: null }]))
  const mark: RuleChange[] = before.passMark === after.passMark ? []
    : [{ name: 'Least mark', change: 'changed', before: `${before.passMark} of 100`, after: `${after.passMark} of 100` }]
  return [...changed, ...removed, ...mark]
}

/** Rules by id, and by their order among those that share it. */
function placed(set: CriteriaSet): ReadonlyMap<string, RuleInWords> {
  const seen = new Map<string, number>()
  return new Map(criteriaInWords(set).rules.map((rule) => {
    const number = (seen.get(rule.id) ?? 0) + 1
    seen.set(rule.id, number)
    return [`${rule.id} ${number}`, rule]
  }))
}

const text = ({ allows, welds }: RuleInWords): string => [allows, welds].filter(Boolean).join(' ')
/** A weight is told of the whole, and would seem to change with any other rule's: only its own part is compared. */
const weightOf = ({ weight }: RuleInWords): string => weight.split(' of ')[0] ?? weight
const rest = (rule: RuleInWords): string => `Weight ${weightOf(rule)}. ${rule.readiness} ${rule.source}, ${rule.statusWord}.${rule.note ? ` ${rule.note}` : ''}`
const whole = (rule: RuleInWords): string => `${text(rule)} ${rest(rule)}`

/** What it allows, where that differs; else what it says of itself. */
function told(was: RuleInWords, now: RuleInWords): { readonly before: string; readonly after: string } {
  return text(was) === text(now) ? { before: rest(was), after: rest(now) } : { before: text(was), after: text(now) }
}

import type * as z from 'zod'
import { freezeDeep } from './freeze'
import { meaningProblems, type CriteriaProblem } from './schema-meaning'
import { criteriaShape } from './schema-shapes'
import type { CriteriaSet } from './types'

export type { CriteriaProblem } from './schema-meaning'
export type ParsedCriteria =
  | { readonly ok: true; readonly value: CriteriaSet }
  | { readonly ok: false; readonly problems: readonly CriteriaProblem[] }

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? String(part) : `${text}.${String(part)}`), '')

/** The rule's own id where it has one, else its number in the list. */
function ruleName(data: unknown, index: number): string {
  const rules: unknown = typeof data === 'object' && data !== null && 'rules' in data ? data.rules : null
  const rule: unknown = Array.isArray(rules) ? rules[index] : null
  const id: unknown = typeof rule === 'object' && rule !== null && 'id' in rule ? rule.id : null
  return typeof id === 'string' && id !== '' ? id : `rule ${index + 1}`
}

function messageOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'unrecognized_keys') return `has ${issue.keys.map((key) => `"${key}"`).join(', ')}, which does not belong here`
  // Objects and lists have no message of ours.
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid')) return `must be ${issue.expected === 'array' ? 'a list' : 'an object'}`
  return issue.message
}

function problemOf(issue: z.core.$ZodIssue, data: unknown): CriteriaProblem {
  const [head, index, ...rest] = issue.path
  if (head === 'rules' && typeof index === 'number') return { rule: ruleName(data, index), field: pathText(rest), message: messageOf(issue) }
  return { rule: null, field: pathText(issue.path), message: messageOf(issue) }
}

/**
 * Reads a set of criteria from data of unknown origin, such as a program's own set. The value is frozen: a set is immutable.
 * Problems name the rule (null: the set itself) and the field; an empty field is the whole of it.
 */
export function parseCriteriaSet(data: unknown): ParsedCriteria {
  const parsed = criteriaShape.safeParse(data)
  if (!parsed.success) return { ok: false, problems: parsed.error.issues.map((issue) => problemOf(issue, data)) }
  const problems = meaningProblems(parsed.data)
  return problems.length === 0 ? { ok: true, value: freezeDeep(parsed.data) } : { ok: false, problems }
}

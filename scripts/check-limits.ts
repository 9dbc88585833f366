// npx tsx scripts/check-limits.ts
// Do the hand-written limit cases notice a wrong limit? Each number in each built-in set is moved by one gauge step, up and down, one
// at a time, and some case must then come out differently. So must each choice: a kind dropped, a table row's end moved into the
// other row, a condition taken away.
import { allCriteria } from '../lib/criteria/catalogue'
import type { CriteriaSet } from '../lib/criteria/types'
import { scoreInspection } from '../lib/scoring/score-inspection'
import { limitCases } from '../tests/golden/limits'
import type { LimitCase } from '../tests/golden/limits-case'

type Path = readonly (string | number)[]
type Change = { readonly path: Path; readonly from: unknown; readonly to: unknown; readonly sort: 'limit' | 'choice' }

/** Not judged by: what they weigh, where they come from. */
const NOT_LIMITS = new Set(['source', 'weight', 'readiness', 'id', 'kind', 'of', 'ifSeen'])
const SHARES = new Set(['k', 'share', 'shareIfShorter'])

const gaugeStep = (system: 'us' | 'si'): number => (system === 'us' ? 25.4 / 64 : 0.1)

function stepOf(key: string | number | undefined, ruleKind: unknown, system: 'us' | 'si'): number {
  if (typeof key === 'string' && SHARES.has(key)) return 0.01
  if (key === 'degrees') return 1
  if (key === 'max') return ruleKind === 'window-count' ? 1 : 0.01
  return gaugeStep(system)
}

function* changesOf(value: unknown, path: Path, ruleKind: unknown, system: 'us' | 'si'): Generator<Change> {
  const key = path.at(-1)
  if (typeof value === 'number') {
    const step = stepOf(key, ruleKind, system)
    for (const to of [value + step, value - step]) yield { path, from: value, to, sort: 'limit' }
  } else if (typeof value === 'boolean') {
    yield { path, from: value, to: !value, sort: 'choice' }
  } else if (typeof value === 'object' && value !== null) {
    if ('mm' in value && 'upTo' in value) yield { path, from: value, to: { mm: value.mm, below: value.upTo }, sort: 'choice' }
    if ('mm' in value && 'below' in value) yield { path, from: value, to: { mm: value.mm, upTo: value.below }, sort: 'choice' }
    for (const [name, part] of Object.entries(value)) {
      if (!NOT_LIMITS.has(name)) yield* changesOf(part, [...path, Array.isArray(value) ? Number(name) : name], ruleKind, system)
    }
  }
}

function* choicesOf(rule: CriteriaSet['rules'][number], path: Path): Generator<Change> {
  const lists = [['of', 'of' in rule ? rule.of : []], ['ifSeen', 'ifSeen' in rule ? (rule.ifSeen ?? []) : []]] as const
  for (const [field, kinds] of lists) {
    for (const kind of kinds) yield { path: [...path, field], from: kind, to: kinds.filter((other) => other !== kind), sort: 'choice' }
  }
  for (const field of ['when', 'unless'] as const) {
    if (rule[field] !== undefined) yield { path: [...path, field], from: rule[field], to: undefined, sort: 'choice' }
  }
}

function changed(set: CriteriaSet, { path, to }: Change): CriteriaSet {
  const copy = structuredClone(set)
  let holder = copy as unknown as Record<string | number, unknown>
  for (const step of path.slice(0, -1)) holder = holder[step] as Record<string | number, unknown>
  const last = path.at(-1) ?? ''
  if (to === undefined) delete holder[last]
  else holder[last] = to
  return copy
}

function comesOutAsWritten(one: LimitCase, set: CriteriaSet): boolean {
  try {
    const finding = scoreInspection(one.weld, one.inspection, set).findings.find(({ rule }) => rule === one.rule)
    return finding?.verdict === one.verdict && (one.reason === null || finding.reason === one.reason)
  } catch {
    return false
  }
}

const tally = { limit: { caught: 0, all: 0 }, choice: { caught: 0, all: 0 } }
const missed: string[] = []

for (const set of allCriteria()) {
  const cases = limitCases.filter((one) => one.set === set.id)
  for (const [index, rule] of set.rules.entries()) {
    const path = ['rules', index]
    for (const change of [...changesOf(rule, path, rule.kind, set.system), ...choicesOf(rule, path)]) {
      const wrong = changed(set, change)
      const caught = cases.some((one) => one.rule === rule.id && !comesOutAsWritten(one, wrong))
      tally[change.sort].all += 1
      if (caught) tally[change.sort].caught += 1
      else missed.push(`${set.id} ${rule.id} ${change.path.slice(2).join('.')}: ${JSON.stringify(change.from)} to ${JSON.stringify(change.to) ?? 'nothing'}`)
    }
  }
}

for (const line of missed) console.log(`missed  ${line}`)
for (const [sort, { caught, all }] of Object.entries(tally)) {
  console.log(`${sort}s-caught: ${(caught / all).toFixed(4)} share (${caught} of ${all}, by ${limitCases.length} cases)`)
}
process.exitCode = missed.length === 0 ? 0 : 1

import { COUNTED_KINDS, type Allowance, type Condition, type CriteriaSet, type Limit, type Rule } from './types'

/** What is wrong with a set, said at the rule and the field. `rule` is null for the set itself. */
export type CriteriaProblem = { readonly rule: string | null; readonly field: string; readonly message: string }

type Say = (field: string, message: string) => void

function checkLimit(limit: Limit | null, field: string, say: Say): void {
  if (limit === null || limit.form === 'fixed' || limit.form === 'angle') return
  if (limit.form === 'linear') {
    if (limit.cap === null && limit.k === 0) say(`${field}.k`, 'does nothing at 0: use a fixed limit')
    return
  }
  limit.steps.forEach((step, index) => {
    const last = index === limit.steps.length - 1
    const end = step.upTo ?? step.below
    const before = limit.steps[index - 1]?.upTo ?? limit.steps[index - 1]?.below ?? 0
    const at = `${field}.steps[${index}]`
    if (step.upTo !== undefined && step.below !== undefined) say(at, 'has two ends: keep upTo or below')
    else if (last && end !== undefined) say(at, 'is the last row and must have no end, so that every size has a row')
    else if (!last && end === undefined) say(at, 'needs an end, upTo or below: only the last row has none')
    else if (end !== undefined && end <= before) say(at, 'must end further than the row before it')
  })
}

const uses = (limit: Limit | null, quantity: string): boolean =>
  limit !== null && ((limit.form === 'linear' && (limit.of === quantity || limit.plus === quantity)) || (limit.form === 'table' && limit.by === quantity))

function checkNoWidth(limit: Limit, field: string, say: Say): void {
  if (uses(limit, 'width') || uses(limit, 'root-width')) say(field, 'cannot depend on the width here: it has no single place')
}

function checkAllowance(over: Allowance, field: string, say: Say): void {
  if (over.per === 'window' && over.lengthMm > over.windowMm) say(`${field}.lengthMm`, 'must not be more than its window')
}

function checkCondition(condition: Condition | undefined, field: string, say: Say): void {
  if (condition?.thickness === undefined) return
  const { from, above, upTo, below } = condition.thickness
  if (from !== undefined && above !== undefined) say(`${field}.thickness`, 'has two lower ends: keep from or above')
  if (upTo !== undefined && below !== undefined) say(`${field}.thickness`, 'has two upper ends: keep upTo or below')
  const low = from ?? above ?? 0
  const high = upTo ?? below ?? Infinity
  if (low > high) say(`${field}.thickness`, 'ends before it begins')
}

/** The toe angle is in degrees and everything else in millimetres: neither can be held against the other's limits. */
function checkUnit(rule: Rule, say: Say): void {
  const angle = 'reading' in rule && rule.reading === 'toe-angle'
  if (angle && rule.kind !== 'reading-range') return say('kind', 'cannot judge the toe angle: only a range does')
  for (const [field, limit] of limitsOf(rule)) {
    if (limit === null || (limit.form === 'angle') === angle) continue
    say(field, angle ? 'must be an angle: the toe angle is read in degrees' : 'is an angle, which only the toe angle is held against')
  }
}

function limitsOf(rule: Rule): readonly (readonly [field: string, limit: Limit | null])[] {
  switch (rule.kind) {
    case 'largest-size':
    case 'window-sum':
    case 'reading-spread': return [['max', rule.max]]
    case 'size-allowance': return [['max', rule.max], ['allowed.max', rule.allowed.max]]
    case 'reading-range': return [['min', rule.min], ['max', rule.max]]
    case 'reading-allowance': return [['nominal', rule.nominal], ['beyond', rule.beyond]]
    default: return []
  }
}

function fixedValue(limit: Limit | null): number | null {
  if (limit?.form === 'angle') return limit.degrees
  return limit?.form === 'fixed' ? limit.mm : null
}

function checkPair(low: Limit | null, high: Limit | null, field: string, message: string, say: Say): void {
  const [a, b] = [fixedValue(low), fixedValue(high)]
  if (a !== null && b !== null && a > b) say(field, message)
}

function checkRule(rule: Rule, say: Say): void {
  checkCondition(rule.when, 'when', say)
  checkCondition(rule.unless, 'unless', say)
  if (COUNTED_KINDS.has(rule.kind) && rule.readiness.as === 'margin') say('readiness', 'must be an attribute: this kind of rule counts, it has no margin')
  checkUnit(rule, say)
  switch (rule.kind) {
    case 'largest-size':
    case 'window-sum':
      return checkLimit(rule.max, 'max', say)
    case 'size-allowance':
      checkLimit(rule.max, 'max', say)
      checkLimit(rule.allowed.max, 'allowed.max', say)
      checkAllowance(rule.allowed.over, 'allowed.over', say)
      return checkPair(rule.max, rule.allowed.max, 'allowed.max', 'must not be less than the limit for any length', say)
    case 'reading-range':
      if (rule.min === null && rule.max === null) say('max', 'is missing: a range needs a min, a max or both')
      checkLimit(rule.min, 'min', say)
      checkLimit(rule.max, 'max', say)
      return checkPair(rule.min, rule.max, 'max', 'must not be less than min', say)
    case 'reading-spread':
      checkLimit(rule.max, 'max', say)
      return checkNoWidth(rule.max, 'max', say)
    case 'reading-allowance':
      checkLimit(rule.nominal, 'nominal', say)
      checkLimit(rule.beyond, 'beyond', say)
      checkNoWidth(rule.nominal, 'nominal', say)
      checkNoWidth(rule.beyond, 'beyond', say)
      return checkAllowance(rule.over, 'over', say)
    default:
  }
}

/** What the parts of a well-formed set contradict in each other. */
export function meaningProblems(set: CriteriaSet): readonly CriteriaProblem[] {
  const problems: CriteriaProblem[] = []
  set.rules.forEach((rule, index) => {
    const say: Say = (field, message) => problems.push({ rule: rule.id, field, message })
    checkRule(rule, say)
    const before = set.rules.slice(0, index).filter((other) => other.id === rule.id)
    if (before.some((other) => other.when === undefined && other.unless === undefined)) {
      say('id', 'is used before by a rule for every weld: of rules that share an id, all but the last must say which welds they are for')
    }
  })
  if (set.rules.every((rule) => rule.weight === 0)) problems.push({ rule: null, field: 'rules', message: 'need at least one weight above 0' })
  return problems
}

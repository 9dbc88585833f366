import { COUNTED_KINDS, type CriteriaSet, type Rule } from '../criteria/types'
import type { Finding } from './types'
import { absent, attribute } from './rules/absent'
import type { Judge } from './rules/judge'
import { largestSize } from './rules/largest-size'
import { notJudged } from './rules/not-judged'
import { unitOfReading } from './rules/reading'
import { readingAllowance } from './rules/reading-allowance'
import { readingRange } from './rules/reading-range'
import { readingSpread } from './rules/reading-spread'
import { sizeAllowance } from './rules/size-allowance'
import { lengthShare, windowCount, windowSum } from './rules/window'

/** A rule and its judge. */
export type ReadyRule = { readonly rule: Rule; readonly judge: Judge; readonly unit: Finding['unit'] }

/** The rules of one id: usually one, more when it reads differently for other plates or other service. */
export type RuleGroup = readonly [ReadyRule, ...ReadyRule[]]

function judgeOf(rule: Rule): Judge {
  switch (rule.kind) {
    case 'absent': return absent(rule)
    case 'attribute': return attribute(rule)
    case 'largest-size': return largestSize(rule)
    case 'size-allowance': return sizeAllowance(rule)
    case 'reading-range': return readingRange(rule)
    case 'reading-spread': return readingSpread(rule)
    case 'reading-allowance': return readingAllowance(rule)
    case 'window-sum': return windowSum(rule)
    case 'window-count': return windowCount(rule)
    case 'length-share': return lengthShare(rule)
    case 'not-judged': return notJudged(rule)
  }
}

/** The unit of a rule's findings. */
function unitOf(rule: Rule): Finding['unit'] {
  if (rule.kind === 'length-share') return 'ratio'
  if (rule.kind === 'reading-range') return unitOfReading(rule.reading)
  return COUNTED_KINDS.has(rule.kind) ? 'count' : 'mm'
}

function compile(criteria: CriteriaSet): readonly RuleGroup[] {
  const groups = new Map<string, [ReadyRule, ...ReadyRule[]]>()
  for (const rule of criteria.rules) {
    const ready: ReadyRule = { rule, judge: judgeOf(rule), unit: unitOf(rule) }
    const group = groups.get(rule.id)
    if (group === undefined) groups.set(rule.id, [ready])
    else group.push(ready)
  }
  return [...groups.values()]
}

/** Criteria are immutable, so a set is made ready once. */
const ready = new WeakMap<CriteriaSet, readonly RuleGroup[]>()

/** A set's rules made ready for judging, grouped by id in the order of the set. */
export function rulesOf(criteria: CriteriaSet): readonly RuleGroup[] {
  let groups = ready.get(criteria)
  if (groups === undefined) {
    groups = compile(criteria)
    ready.set(criteria, groups)
  }
  return groups
}

import type { CriteriaSet, Rule } from '../criteria/types'
import type { Finding, Verdict } from './types'

/** How the mark is made, for the page that prints it. */
export const MARK_FORMULA = [
  'Each rule that applies to the weld has a weight; the weights of a set are its own.',
  'A rule that is met earns from the pass mark, when the reading is on the limit, up to all of its weight, when the reading is half a scale or more inside the limit',
  '(in a band, no further in than half-way from its edge to its middle), or when nothing was seen. Yes/no rules that are met earn all of their weight.',
  'A rule that is not met, or was not measured, earns nothing.',
  'The mark is the weight earned out of the weight that applies, times 100, rounded to a whole number.',
  'A rejected weld is held below the pass mark, however much it earned. An incomplete inspection has no mark.',
].join(' ')

/** How far inside the limit a reading must be to earn all of a rule's weight. */
function fullMargin(scale: number, { min, max }: Finding['limit']): number {
  const half = scale / 2
  return min !== null && max !== null ? Math.min(half, (max - min) / 4) : half
}

/** The share of its weight a finding earns, 0 to 1. It never rises when a reading gets worse. */
function earned(finding: Finding, rule: Rule, passShare: number): number {
  if (finding.verdict !== 'accept') return 0
  if (rule.readiness.as === 'attribute' || finding.margin === null || finding.where === null) return 1
  const full = fullMargin(rule.readiness.scale, finding.limit)
  return full <= 0 ? 1 : passShare + (1 - passShare) * Math.min(1, finding.margin / full)
}

/**
 * The mark of a scorecard, 0 to 100; null when the verdict is incomplete. MARK_FORMULA says it in words.
 *
 * @param rules the rule behind each finding, in the same order
 */
export function markOf(criteria: CriteriaSet, findings: readonly Finding[], rules: readonly Rule[], verdict: Verdict): number | null {
  if (verdict === 'incomplete') return null
  let weight = 0
  let sum = 0
  for (const [index, finding] of findings.entries()) {
    const rule = rules[index]
    if (rule === undefined || finding.verdict === 'not-applicable') continue
    weight += rule.weight
    sum += rule.weight * earned(finding, rule, criteria.passMark / 100)
  }
  const mark = weight === 0 ? 100 : Math.round((100 * sum) / weight)
  return verdict === 'reject' ? Math.min(mark, criteria.passMark - 1) : mark
}

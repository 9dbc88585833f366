import type { CriteriaSet, Rule } from '../criteria/types'
import { notFor } from './applies'
import { rulesOf, type ReadyRule, type RuleGroup } from './compile'
import { evidenceOf, type Evidence } from './evidence'
import { notApplicable, notMeasured } from './finding'
import { markOf } from './mark'
import type { Finding, Inspection, Scorecard, Verdict, Weld } from './types'
import { SCORING_VERSION } from './version'

type Answer = { readonly finding: Finding; readonly rule: Rule }

const isReject = (answer: Answer): boolean => answer.finding.verdict === 'reject'

/**
 * The answer when only the plate's thickness, which is not known, could tell which of several rules holds: they cover every plate
 * between them, so a weld that all of them reject is rejected, by the mildest.
 */
function undecided(candidates: readonly ReadyRule[], evidence: Evidence, fallback: ReadyRule): Answer {
  const answers = candidates.map(({ rule, judge }): Answer => ({ rule, finding: judge(evidence) }))
  if (answers.length > 1 && answers.every(isReject)) {
    return answers.reduce((mildest, answer) => ((answer.finding.margin ?? 0) > (mildest.finding.margin ?? 0) ? answer : mildest))
  }
  return { rule: fallback.rule, finding: notMeasured(fallback.rule, fallback.unit, 'no-thickness') }
}

function answerOf(group: RuleGroup, evidence: Evidence): Answer {
  const [first] = group
  let candidates: ReadyRule[] | null = null
  for (const ready of group) {
    const reason = notFor(ready.rule, evidence.weld)
    if (reason === null && candidates === null) return { rule: ready.rule, finding: ready.judge(evidence) }
    if (reason === null || reason === 'unknown') (candidates ??= []).push(ready)
    if (reason === null) break
  }
  if (candidates !== null) return undecided(candidates, evidence, candidates[0] ?? first)
  const reason = notFor(first.rule, evidence.weld)
  return { rule: first.rule, finding: notApplicable(first.rule, first.unit, reason === null || reason === 'unknown' ? 'other-service' : reason) }
}

function verdictOf(findings: readonly Finding[]): Verdict {
  let verdict: Verdict = 'accept'
  for (const finding of findings) {
    if (finding.verdict === 'reject') return 'reject'
    if (finding.verdict === 'not-measured') verdict = 'incomplete'
  }
  return verdict
}

/**
 * Judges a weld: one finding per rule of the criteria, a verdict and a mark.
 *
 * - Any reject rejects; else anything not measured leaves the verdict incomplete; else the weld is accepted.
 * - What was seen can reject even where the rest was not measured: a seen reject is a reject.
 * - Limits are inclusive, windows slide continuously along the weld, lengths past the weld's end are clipped to it.
 * - The order of stations and indications never matters, and making any reading worse never improves a verdict, margin or mark.
 *
 * Lengths in millimetres. Work grows as n log n with the number of readings.
 *
 * @throws RangeError with a sentence naming the station or indication that lies outside the weld, is negative, is not a number,
 *   or has an unknown kind
 */
export function scoreInspection(weld: Weld, inspection: Inspection, criteria: CriteriaSet): Scorecard {
  const evidence = evidenceOf(weld, inspection)
  const findings: Finding[] = []
  const rules: Rule[] = []
  for (const group of rulesOf(criteria)) {
    const { finding, rule } = answerOf(group, evidence)
    findings.push(finding)
    rules.push(rule)
  }
  const verdict = verdictOf(findings)
  return { criteriaId: criteria.id, scoringVersion: SCORING_VERSION, verdict, mark: markOf(criteria, findings, rules, verdict), findings }
}

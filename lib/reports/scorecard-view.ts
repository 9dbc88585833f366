import type { CriteriaSet } from '../criteria/types'
import { gradingWords } from '../language/grading'
import { scorecardWords } from '../language/scorecard'
import { say, type Locale } from '../language/say'
import { standingVerdict, type DecidedVerdict } from '../scoring/override'
import type { Finding, FindingVerdict, Inspection, Scorecard, Verdict, Weld } from '../scoring/types'
import type { SourceStatus } from '../source'
import { formatBesideLimit } from '../units/display'
import type { LengthUnit } from '../units/length'
import { citation } from './citation'
import { explainFinding } from './explain-finding'
import { sizeText } from './finding-limit'
import { ruleBehind } from './finding-subject'
import { ruleName } from './rule-names'

export type ScorecardReader = {
  readonly locale: Locale
  readonly units: LengthUnit
  readonly weld: Weld
  readonly inspection: Inspection
  readonly criteria: CriteriaSet
  readonly override?: { readonly verdict: DecidedVerdict; readonly reason: string; readonly by: string; readonly at: Date } | null
}

/** One rule as a row: what it is, what was read, what is allowed, how far inside, in a sentence, and by whose word. */
export type ScorecardLine = {
  readonly rule: string
  readonly name: string
  readonly verdict: FindingVerdict
  readonly verdictWord: string
  readonly reading: string
  readonly limit: string
  readonly margin: string | null
  readonly sentence: string
  readonly closeCall: string | null
  readonly source: string
  readonly sourceStatus: SourceStatus
  readonly sourceStatusWord: string
}

/** An instructor's own verdict over the computed one, in the reader's words. */
export type DecisionView = {
  /** 'By the instructor’s decision' */
  readonly title: string
  /** 'The readings by themselves: Reject.' */
  readonly computed: string
  /** 'Accept, by the instructor’s decision; the readings by themselves: Reject', where there is one line for it. */
  readonly line: string
  readonly reason: string
  readonly by: string
  readonly at: Date
}

export type ScorecardView = {
  /** The verdict that stands: the instructor's decision where there is one. */
  readonly verdict: Verdict
  readonly verdictWord: string
  /** What the criteria make of the readings; the mark and the lines are of it. */
  readonly computed: Verdict
  readonly decision: DecisionView | null
  readonly mark: number | null
  readonly criteriaTitle: string
  readonly lines: readonly ScorecardLine[]
  /** Whether any rule shown rests on a limit recalled from memory: the page says so. */
  readonly fromMemory: boolean
}

/** A scorecard in the reader's words and units, rejected rules first, then what was not measured, then the rest in the set's order. */
export function scorecardView(scorecard: Scorecard, reader: ScorecardReader): ScorecardView {
  const rank: Readonly<Record<FindingVerdict, number>> = { reject: 0, 'not-measured': 1, accept: 2, 'not-applicable': 3 }
  const lines = scorecard.findings.map((finding) => line(finding, reader)).sort((a, b) => rank[a.verdict] - rank[b.verdict])
  return {
    verdict: standingVerdict(scorecard.verdict, reader.override ?? null),
    verdictWord: say(scorecardWords, reader.locale, standingVerdict(scorecard.verdict, reader.override ?? null)),
    computed: scorecard.verdict,
    decision: decisionView(scorecard.verdict, reader),
    mark: scorecard.mark,
    criteriaTitle: reader.criteria.title,
    lines,
    fromMemory: lines.some((each) => each.sourceStatus === 'memory' && each.verdict !== 'not-applicable'),
  }
}

function decisionView(computed: Verdict, { override, locale }: ScorecardReader): DecisionView | null {
  if (!override) return null
  const word = say(scorecardWords, locale, computed)
  return {
    title: say(gradingWords, locale, 'byDecision'), computed: say(gradingWords, locale, 'computedWas', { verdict: word }),
    line: say(gradingWords, locale, 'decidedOver', { verdict: say(scorecardWords, locale, override.verdict), computed: word }),
    reason: override.reason, by: override.by, at: override.at,
  }
}

function line(finding: Finding, reader: ScorecardReader): ScorecardLine {
  const { locale } = reader
  const { source } = finding
  return {
    rule: finding.rule,
    name: ruleName(finding.rule, locale, reader.criteria),
    verdict: finding.verdict,
    verdictWord: say(scorecardWords, locale, finding.verdict),
    reading: readingText(finding, reader),
    limit: limitText(finding, reader),
    margin: marginText(finding, reader),
    sentence: explainFinding(finding, reader),
    closeCall: finding.closeCall ? say(scorecardWords, locale, 'closeCall') : null,
    source: citation(source, locale),
    sourceStatus: source.status,
    sourceStatusWord: say(scorecardWords, locale, source.status),
  }
}

const size = (value: number, finding: Finding, units: LengthUnit): string => sizeText(value, finding.unit, units)

/** A yes/no rule has no limit to read against. */
const yesOrNo = ({ limit }: Finding): boolean => limit.min === null && limit.max === null

/** What stands for the limit of a rule that did not apply, or whose limit hangs on something nobody measured. */
export const NO_LIMIT = '–'

/** What a rule asks, where it asks a question: it is answered, not measured. */
function questionOf(finding: Finding, { criteria, weld }: ScorecardReader): 'cratersFilled' | 'fusionComplete' | null {
  const rule = ruleBehind(finding, criteria, weld)
  return rule?.kind === 'attribute' ? rule.answer : null
}

function readingText(finding: Finding, reader: ScorecardReader): string {
  const { locale, units } = reader
  const { measured, verdict, unit, limit } = finding
  if (verdict === 'not-measured') return say(scorecardWords, locale, 'notMeasured')
  if (verdict === 'not-applicable') return say(scorecardWords, locale, 'not-applicable')
  const question = questionOf(finding, reader)
  if (question !== null) return say(scorecardWords, locale, `${question}-${verdict === 'accept' ? 'yes' : 'no'}`)
  if (measured === null) return say(scorecardWords, locale, verdict === 'accept' ? 'yes' : 'no')
  if (measured === 0 && limit.min === null) return say(scorecardWords, locale, 'noneSeen')
  const beside = limit.min !== null && measured < limit.min ? limit.min : limit.max
  return unit === 'mm' && beside !== null ? formatBesideLimit(measured, beside, units) : size(measured, finding, units)
}

function limitText(finding: Finding, reader: ScorecardReader): string {
  const { locale, units } = reader
  const { min, max } = finding.limit
  const question = questionOf(finding, reader)
  if (question !== null) return say(scorecardWords, locale, `${question}-must`)
  if (yesOrNo(finding)) return finding.measured === null && (finding.verdict === 'accept' || finding.verdict === 'reject') ? say(scorecardWords, locale, 'mustBe') : NO_LIMIT
  if (min !== null && max !== null) return say(scorecardWords, locale, 'between', { min: size(min, finding, units), max: size(max, finding, units) })
  if (max === 0) return say(scorecardWords, locale, 'none')
  if (max !== null) return say(scorecardWords, locale, 'atMost', { max: size(max, finding, units) })
  return say(scorecardWords, locale, 'atLeast', { min: size(min ?? 0, finding, units) })
}

/** How far inside or outside its limit a finding is; null where it has no margin to tell. */
export function marginText(finding: Finding, { locale, units }: Pick<ScorecardReader, 'locale' | 'units'>): string | null {
  const { margin } = finding
  if (margin === null || yesOrNo(finding) || finding.limit.max === 0) return null
  if (Math.abs(margin) < 1e-6) return say(scorecardWords, locale, 'onLimit')
  return say(scorecardWords, locale, margin > 0 ? 'inside' : 'outside', { margin: size(Math.abs(margin), finding, units) })
}

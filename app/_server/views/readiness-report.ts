import 'server-only'
import { gradingWords } from '@/lib/language/grading'
import { print } from '@/lib/language/print'
import { say } from '@/lib/language/say'
import { isOverridden } from '@/lib/readiness/coupons-from-records'
import { boothCardView, type CardRow } from '@/lib/reports/booth-card-view'
import { dateText } from '@/lib/reports/dates'
import { evidenceRows, leftOutCounts, notMeasuredRules, type EvidenceRow } from '@/lib/reports/readiness-report'
import { chanceText } from '@/lib/reports/readiness-track'
import { ruleName } from '@/lib/reports/rule-names'
import { SCORING_VERSION } from '@/lib/scoring/version'
import type { Viewer } from '../auth/viewer'
import { criteriaSet } from '../data/criteria'
import { findExercise } from '../data/exercises'
import { findReadiness } from '../data/skills'
import { footOf } from './print-foot'
import { readinessView, type ReadinessView } from './readiness-view'
import { studentRecord } from './student-record'

export type Fact = { readonly term: string; readonly value: string }

export type ReadinessReport = {
  readonly name: string
  readonly programName: string
  readonly title: string
  /** What is welded. */
  readonly facts: readonly CardRow[]
  readonly readiness: ReadinessView
  /** How the estimate was made: counts, limits, model. */
  readonly numbers: readonly Fact[]
  readonly evidence: readonly EvidenceRow[]
  readonly notMeasured: readonly string[]
  readonly tests: readonly { readonly id: string; readonly on: string; readonly passed: boolean }[]
  readonly foot: readonly string[]
}

/** Readiness of one student for a test of one exercise, with all it rests on; null when they are not the viewer's, or never practised it. */
export async function readinessReport(viewer: Viewer, key: { studentId: string; exerciseId: string }, asOf: Date): Promise<ReadinessReport | null> {
  const [record, exercise] = await Promise.all([studentRecord(viewer, key.studentId), findExercise(viewer, key.exerciseId)])
  const skill = record?.skills.find((each) => each.exercise.id === key.exerciseId)?.skill
  if (!record || !exercise || !skill) return null
  const [readiness, found, criteria] = await Promise.all([
    readinessView(viewer, key, asOf), findReadiness(viewer, key, asOf), criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version),
  ])
  if (!readiness || !found) return null
  const { locale } = viewer
  const { evidence, assessment, rule } = found
  const { judged } = evidence
  const inRecords = judged.length + evidence.leftOut.length
  const left = leftOutCounts(evidence.leftOut)
  const estimate = assessment.kind === 'estimate' ? assessment : null
  const fact = (key: 'threshold' | 'minimum' | 'couponsUsed' | 'left' | 'model' | 'correction', value: string): Fact => ({ term: say(print, locale, key), value })
  const decided = judged.filter(({ lead }) => isOverridden(lead)).length
  const verdictsOnly = judged.filter(({ verdictOnly, lead }) => verdictOnly && !isOverridden(lead)).length
  const unread = notMeasuredRules(judged)
  return {
    name: record.name,
    programName: record.program.name,
    title: exercise.title,
    facts: boothCardView(exercise, viewer).facts,
    readiness,
    numbers: [
      fact('couponsUsed', String(readiness.couponsUsed)),
      fact('left', `${evidence.leftOut.length}${evidence.leftOut.length > 0 ? `: ${say(print, locale, 'leftWhy', { notInspected: left['not-inspected'], incomplete: left.incomplete, self: left['self-only'] })}` : ''}`),
      ...(estimate ? [{ term: say(print, locale, 'interval', { level: Math.round(estimate.level * 100) }), value: say(print, locale, 'fromTo', { from: chanceText(estimate.low), to: chanceText(estimate.high) }) }] : []),
      fact('threshold', chanceText(rule.threshold)),
      fact('minimum', String(rule.minimumCoupons)),
      ...(estimate
        ? [
            fact('correction', estimate.resultsUsed === 0 ? say(print, locale, 'correctionNone') : say(print, locale, 'correctionUsed', { n: estimate.resultsUsed, chance: chanceText(estimate.uncalibrated) })),
            fact('model', estimate.modelVersion),
          ]
        : []),
    ],
    evidence: evidenceRows(judged, skill.couponCount - inRecords + 1, viewer),
    notMeasured: [
      ...(decided > 0 ? [say(gradingWords, locale, 'decidedCount', { n: decided, of: judged.length })] : []),
      ...(verdictsOnly > 0 ? [say(print, locale, 'verdictOnly', { n: verdictsOnly, of: judged.length })] : []),
      ...unread.map((each) => say(print, locale, 'ruleNotMeasured', { rule: ruleName(each.rule, locale, criteria), n: each.coupons, of: judged.length })),
      ...(unread.length === 0 && judged.length > 0 ? [say(print, locale, 'allMeasured')] : []),
    ],
    tests: record.attempts.filter(({ exerciseId }) => exerciseId === key.exerciseId),
    foot: footOf({ criteria: [criteria], judged: { scoring: SCORING_VERSION, model: estimate?.modelVersion ?? null }, printedOn: dateText(asOf, locale, record.program.timeZone) }, locale),
  }
}

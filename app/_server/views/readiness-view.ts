import 'server-only'
import { absorbCoupon, readinessOf, startState } from '@/lib/readiness/incremental'
import { explainReadiness } from '@/lib/readiness/explain'
import { SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import { explainAdvice, explainAssessment, explainExplanation, explainReason, explainSelfTrust } from '@/lib/reports/explain-readiness'
import type { ReadinessTrackInput, TrackPoint, TrackTest } from '@/lib/reports/readiness-track'
import { ruleName } from '@/lib/reports/rule-names'
import { dayOfDate } from '@/lib/reports/calendar'
import type { Viewer } from '../auth/viewer'
import { findReadiness, type ReadinessRecord } from '../data/skills'
import { listAttempts } from '../data/test-attempts'

export type ReadinessView = {
  /** 'estimate' or 'insufficient'. */
  readonly kind: ReadinessRecord['assessment']['kind']
  readonly probability: number | null
  readonly low: number | null
  readonly high: number | null
  readonly level: number | null
  readonly couponsUsed: number
  /** The model in use; null while there is no estimate. */
  readonly modelVersion: string | null
  /** The answer first, in a sentence. */
  readonly answer: string
  readonly advice: string | null
  readonly reasons: readonly string[]
  readonly holdsBack: string | null
  readonly afterMore: readonly string[]
  readonly whyWide: readonly string[]
  readonly selfTrust: string
  readonly leftOut: number
  readonly track: ReadinessTrackInput
}

/** Readiness of one student in one exercise, explained; null when the student is not the viewer's to see. */
export async function readinessView(viewer: Viewer, key: { studentId: string; exerciseId: string }, asOf: Date): Promise<ReadinessView | null> {
  const found = await findReadiness(viewer, key, asOf)
  if (!found) return null
  const { assessment, evidence, rule, asOfDay } = found
  const { locale } = viewer
  const estimate = assessment.kind === 'estimate' ? assessment : null
  const explanation = explainReadiness(evidence.judged, asOfDay, rule)
  const told = explanation && explainExplanation(explanation, (id) => ruleName(id, locale), locale)
  const attempts = (await listAttempts(viewer, key.studentId)).filter((attempt) => attempt.exerciseId === key.exerciseId)
  return {
    kind: assessment.kind,
    probability: estimate?.probability ?? null,
    low: estimate?.low ?? null,
    high: estimate?.high ?? null,
    level: estimate?.level ?? null,
    couponsUsed: estimate ? estimate.couponsUsed : assessment.kind === 'insufficient' ? assessment.have : 0,
    modelVersion: estimate?.modelVersion ?? null,
    answer: explainAssessment(assessment, locale),
    advice: estimate ? explainAdvice(estimate.advice, locale) : null,
    reasons: estimate ? estimate.reasons.map((code) => explainReason(code, rule.threshold, locale)) : [],
    holdsBack: told?.holdsBack ?? null,
    afterMore: told?.afterMore ?? [],
    whyWide: told?.whyWide ?? [],
    selfTrust: explainSelfTrust(evidence.trust, locale, key.studentId === viewer.personId ? 'student' : 'other'),
    leftOut: evidence.leftOut.length,
    track: trackOf(found, attempts),
  }
}

/** What the model said after each coupon, on the day it was welded; tests are placed after the coupons they followed. */
function trackOf({ evidence, rule, assessment }: ReadinessRecord, attempts: readonly { testedOn: Date; passed: boolean }[]): ReadinessTrackInput {
  const level = assessment.kind === 'estimate' ? assessment.level : 0.95
  const parameters = rule.model?.parameters ?? SHIPPED_PARAMETERS
  const options = { level, parameters, ...(assessment.kind === 'estimate' && assessment.resultsUsed > 0 && { calibration: assessment.calibration }) }
  let state = startState(parameters)
  let told = 0
  const points: TrackPoint[] = evidence.judged.map(({ coupon }, index) => {
    state = absorbCoupon(state, coupon, parameters)
    told += coupon.weight === 0 ? 0 : 1
    const estimate = told < rule.minimumCoupons ? null : readinessOf(state, coupon.day, options)
    return { coupon: index + 1, estimate }
  })
  const tests: TrackTest[] = attempts.map((attempt) => ({
    afterCoupon: evidence.judged.filter(({ coupon }) => coupon.day <= dayOfDate(attempt.testedOn)).length, passed: attempt.passed,
  }))
  return { points, tests, threshold: rule.threshold }
}

import type { AcceptedNeeded } from '../readiness/accepted-needed'
import type { Assessment } from '../readiness/assess'

/** What is known of one student in one exercise when a goal is set. */
export type GoalFacts = {
  readonly assessment: Assessment
  /** Coupons logged, judged or not. */
  readonly coupons: number
  /** Coupons that wait for an instructor. */
  readonly waiting: number
  /** null before the first judged coupon. */
  readonly needed: AcceptedNeeded | null
  /** The rule that holds the chance back most, with the chance had it always passed. */
  readonly holdsBack: { readonly rule: string; readonly probability: number } | null
  readonly lastTestPassed: boolean | null
}

/** One goal; put into words by `explainGoal`. */
export type Goal =
  | { readonly code: 'first-coupon' }
  | { readonly code: 'look-waiting'; readonly count: number }
  | { readonly code: 'more-for-estimate'; readonly count: number }
  | { readonly code: 'weld-again' }
  | { readonly code: 'talk-about-test' }
  | { readonly code: 'keep-it-alive' }
  | { readonly code: 'inside-band'; readonly count: number; readonly probability: number }
  | { readonly code: 'not-within'; readonly count: number; readonly probability: number }
  | { readonly code: 'mend-blocking' }
  | { readonly code: 'after-failed-test' }
  | { readonly code: 'mend-rule'; readonly rule: string; readonly probability: number }

/**
 * What to aim for next, the first thing first. Every goal follows from the record and the program's own rule: nothing is promised, no
 * coupon earns points, and nobody is compared with anyone.
 */
export function goalsOf(facts: GoalFacts): readonly Goal[] {
  const { assessment, coupons, waiting, needed, holdsBack, lastTestPassed } = facts
  const look: Goal[] = waiting > 0 ? [{ code: 'look-waiting', count: waiting }] : []
  if (lastTestPassed === true) return [{ code: 'keep-it-alive' }, ...look]
  if (coupons === 0) return [{ code: 'first-coupon' }]
  if (assessment.kind === 'insufficient') return [{ code: 'more-for-estimate', count: assessment.need - assessment.have }, ...look]
  if (assessment.advice === 'test') return [{ code: 'talk-about-test' }, ...look]
  const goals: Goal[] = []
  if (assessment.advice === 'stale') goals.push({ code: 'weld-again' })
  if (assessment.reasons.includes('blocking-open')) goals.push({ code: 'mend-blocking' })
  if (assessment.reasons.includes('failed-test-needs-coupons')) goals.push({ code: 'after-failed-test' })
  if (needed?.kind === 'after') goals.push({ code: 'inside-band', count: needed.count, probability: needed.probability })
  if (needed?.kind === 'not-within' && needed.probability !== null) goals.push({ code: 'not-within', count: needed.most, probability: needed.probability })
  if (holdsBack) goals.push({ code: 'mend-rule', ...holdsBack })
  return [...goals, ...look]
}

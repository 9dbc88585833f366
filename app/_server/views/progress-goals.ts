import 'server-only'
import { acceptedNeeded } from '@/lib/readiness/accepted-needed'
import { explainReadiness } from '@/lib/readiness/explain'
import { explainGoal } from '@/lib/reports/explain-goal'
import { goalsOf } from '@/lib/reports/goals'
import { ruleName } from '@/lib/reports/rule-names'
import type { Viewer } from '../auth/viewer'
import { findReadiness, type SkillRecord } from '../data/skills'
import type { TestAttemptRecord } from '../data/test-attempts'

/** What the viewer may aim for in one exercise, the first thing first, in their words. Empty when it is not theirs to see. */
export async function progressGoals(viewer: Viewer, exerciseId: string, skill: SkillRecord | undefined, attempts: readonly TestAttemptRecord[], asOf: Date): Promise<readonly string[]> {
  const found = await findReadiness(viewer, { studentId: viewer.personId, exerciseId }, asOf)
  if (!found) return []
  const { assessment, evidence, rule, asOfDay } = found
  const coupons = evidence.judged.map(({ coupon }) => coupon)
  const goals = goalsOf({
    assessment,
    coupons: skill?.couponCount ?? 0,
    waiting: skill?.waitingCount ?? 0,
    needed: coupons.length === 0 ? null : acceptedNeeded(coupons, asOfDay, rule),
    holdsBack: explainReadiness(evidence.judged, asOfDay, rule)?.holdsBack ?? null,
    lastTestPassed: attempts.findLast((attempt) => attempt.exerciseId === exerciseId)?.passed ?? null,
  })
  return goals.map((goal) => explainGoal(goal, (id) => ruleName(id, viewer.locale), viewer.locale))
}

import 'server-only'
import type { SubmittedInspection } from '@/lib/schemas/inspection'
import type { Verdict } from '@/lib/scoring/types'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { writeComment } from './comments'
import { criteriaSet } from './criteria'
import { toExercise, type ExerciseRecord } from './exercises'
import { judge, writeInspection } from './scorecards'
import { holdSkill, refreshSkill } from './skills'
import { gradableCouponScope } from './scope'

/** The exercise of a coupon the viewer may inspect, or a refusal. */
export async function exerciseOfGradable(viewer: Viewer, couponId: string): Promise<ExerciseRecord> {
  const row = await db().coupon.findFirst({ where: { AND: [{ id: couponId }, gradableCouponScope(viewer)] }, select: { exercise: true } })
  if (!row) throw notFound()
  return toExercise(row.exercise)
}

/** What a look submitted just now came to. */
export type SubmittedVerdict = { readonly couponId: string; readonly verdict: Verdict; readonly mark: number | null }

/**
 * An instructor's inspection of a coupon: the first look, or a correction that supersedes the standing one.
 * Judged, stored, and carried to the coupon and the student's skill in one transaction.
 *
 * @throws Refusal CONFLICT when another inspection was submitted while this form was open
 */
export async function submitInspection(viewer: Viewer, input: SubmittedInspection): Promise<SubmittedVerdict> {
  const { programId, personId } = viewer
  const coupon = await db().coupon.findFirst({
    where: { AND: [{ id: input.couponId }, gradableCouponScope(viewer)] },
    select: { studentId: true, exerciseId: true, exercise: true, verdict: true, mark: true },
  })
  if (!coupon) throw notFound()
  const exercise = toExercise(coupon.exercise)
  const criteria = await criteriaSet(programId, exercise.criteria.id, exercise.criteria.version)
  const judged = judge(exercise, input.readings.inspection, criteria)
  const skill = { programId, studentId: coupon.studentId, exerciseId: coupon.exerciseId }
  try {
    await db().$transaction(async (tx) => {
      await holdSkill(tx, skill)
      const standing = await tx.inspection.findMany({
        where: { programId, couponId: input.couponId, kind: 'instructor' }, orderBy: { revision: 'desc' }, take: 1, select: { id: true, revision: true },
      })
      if ((standing[0]?.revision ?? 0) !== input.revision - 1) throw taken()
      await writeInspection(tx, {
        programId, couponId: input.couponId, inspectorId: personId, kind: 'instructor', revision: input.revision,
        readings: input.readings, judged, criteria: exercise.criteria,
      })
      if (standing[0]) {
        await tx.inspection.update({ where: { programId_id: { programId, id: standing[0].id } }, data: { supersededAt: new Date() } })
      }
      await tx.coupon.update({
        where: { programId_id: { programId, id: input.couponId } },
        data: { verdict: judged.scorecard.verdict, mark: judged.scorecard.mark, waitingSince: null, takenById: null, takenAt: null },
      })
      if (input.comment !== null) await writeComment(tx, viewer, input.couponId, input.comment)
      await refreshSkill(tx, skill)
      await recordAudit(tx, viewer, {
        action: input.revision === 1 ? 'inspection.submit' : 'inspection.correct',
        subject: { type: 'coupon', id: input.couponId },
        before: { verdict: coupon.verdict, mark: coupon.mark },
        after: { verdict: judged.scorecard.verdict, mark: judged.scorecard.mark, revision: input.revision },
      })
    })
  } catch (error) {
    if (isTaken(error)) throw taken()
    throw error
  }
  return { couponId: input.couponId, verdict: judged.scorecard.verdict, mark: judged.scorecard.mark }
}

const taken = (): Refusal =>
  new Refusal('CONFLICT', 'Someone submitted an inspection of this coupon while you had it open. Yours is not saved; what you typed is still here.')

import 'server-only'
import { shortTitle } from '@/lib/procedure/exercise'
import type { SubmittedInspection } from '@/lib/schemas/inspection'
import type { Verdict } from '@/lib/scoring/types'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { writeComment } from './comments'
import { criteriaSet } from './criteria'
import { toExercise, type ExerciseRecord } from './exercises'
import { judge, writeInspection, type Judged } from './scorecards'
import { gradableCouponScope, secondLookScope } from './scope'
import { elsewhereScope, wantsSecondReader } from './second-offers'
import { holdSkill, refreshSkill } from './skills'
import { keepStaffNote } from './staff-notes'

/** Coupons the viewer may look at: those they may grade, and those of other classes that wait for a second reader. */
async function lookableScope(viewer: Viewer): Promise<Prisma.CouponWhereInput> {
  return { OR: [gradableCouponScope(viewer), await elsewhereScope(viewer)] }
}

/** The exercise of a coupon the viewer may inspect, or a refusal. */
export async function exerciseOfGradable(viewer: Viewer, couponId: string): Promise<ExerciseRecord> {
  const row = await db().coupon.findFirst({ where: { AND: [{ id: couponId }, await lookableScope(viewer)] }, select: { exercise: true } })
  if (!row) throw notFound()
  return toExercise(row.exercise)
}

/** What a look submitted just now came to. */
export type SubmittedVerdict = { readonly couponId: string; readonly verdict: Verdict; readonly mark: number | null }

/**
 * An instructor's inspection of a coupon: the first look, a correction that supersedes the standing one, or a second reading of one that
 * waits for it. Judged and stored in one transaction; the first look and its corrections are carried to the coupon and the student's skill.
 *
 * @throws Refusal CONFLICT when another inspection was submitted while this form was open
 */
export async function submitInspection(viewer: Viewer, input: SubmittedInspection): Promise<SubmittedVerdict> {
  const { programId } = viewer
  const lookable = { AND: [{ id: input.couponId }, await lookableScope(viewer)] }
  const coupon = await db().coupon.findFirst({
    where: lookable, select: { id: true, classId: true, studentId: true, exerciseId: true, number: true, exercise: true, verdict: true, mark: true },
  })
  if (!coupon) throw notFound()
  const exercise = toExercise(coupon.exercise)
  const criteria = await criteriaSet(programId, exercise.criteria.id, exercise.criteria.version)
  const submitted: Submitted = { ...coupon, exercise, input, judged: judge(exercise, input.readings.inspection, criteria) }
  try {
    await db().$transaction(async (tx) => {
      await holdSkill(tx, { programId, studentId: coupon.studentId, exerciseId: coupon.exerciseId })
      // Asked again now that others wait: a second reading may have come in meanwhile, or a first one that makes this the second.
      if (!(await tx.coupon.findFirst({ where: lookable, select: { id: true } }))) throw taken()
      const isSecond = await tx.coupon.findFirst({ where: { AND: [lookable, secondLookScope(viewer)] }, select: { id: true } })
      await (isSecond ? writeSecond(tx, viewer, submitted) : writeFirst(tx, viewer, submitted))
    })
  } catch (error) {
    if (isTaken(error)) throw taken()
    throw error
  }
  const { verdict, mark } = submitted.judged.scorecard
  return { couponId: input.couponId, verdict, mark }
}

/** A look about to be written, with what the coupon was. */
type Submitted = {
  readonly classId: string
  readonly studentId: string
  readonly exerciseId: string
  readonly number: number
  readonly verdict: Verdict | null
  readonly mark: number | null
  readonly exercise: ExerciseRecord
  readonly input: SubmittedInspection
  readonly judged: Judged
}

/** The first look at a coupon, or a correction of it. */
async function writeFirst(tx: Transaction, viewer: Viewer, { input, judged, exercise, ...coupon }: Submitted): Promise<void> {
  const { programId, personId } = viewer
  const { couponId, revision } = input
  const skill = { programId, studentId: coupon.studentId, exerciseId: coupon.exerciseId }
  const standing = await tx.inspection.findMany({
    where: { programId, couponId, kind: 'instructor' }, orderBy: { revision: 'desc' }, take: 1, select: { id: true, revision: true },
  })
  if ((standing[0]?.revision ?? 0) !== revision - 1) throw taken()
  await writeInspection(tx, { programId, couponId, inspectorId: personId, kind: 'instructor', revision, readings: input.readings, judged, criteria: exercise.criteria })
  if (standing[0]) {
    await tx.inspection.update({ where: { programId_id: { programId, id: standing[0].id } }, data: { supersededAt: new Date() } })
  }
  const { verdict, mark } = judged.scorecard
  await tx.coupon.update({
    where: { programId_id: { programId, id: couponId } },
    data: {
      verdict, mark,
      // A correction leaves a second reader in peace who has the coupon open.
      ...(revision === 1 && {
        waitingSince: null, takenById: null, takenAt: null,
        secondWaitingSince: (await wantsSecondReader(tx, { programId, couponId, classId: coupon.classId, studentId: coupon.studentId, inspectorId: personId })) ? new Date() : null,
      }),
    },
  })
  if (input.comment !== null) await writeComment(tx, viewer, couponId, input.comment)
  await refreshSkill(tx, skill)
  await recordAudit(tx, viewer, {
    action: revision === 1 ? 'inspection.submit' : 'inspection.correct',
    subject: { type: 'coupon', id: couponId },
    before: { verdict: coupon.verdict, mark: coupon.mark },
    after: { verdict, mark, revision },
  })
}

/**
 * A second reading. It is kept beside the first look and changes nothing that the student sees; what its reader remarked goes to the staff,
 * for the student would learn from it that there was one.
 */
async function writeSecond(tx: Transaction, viewer: Viewer, { input, judged, exercise, studentId, number }: Submitted): Promise<void> {
  const { programId, personId } = viewer
  const { couponId, revision } = input
  if (revision !== 1) throw taken()
  await writeInspection(tx, { programId, couponId, inspectorId: personId, kind: 'second', revision, readings: input.readings, judged, criteria: exercise.criteria })
  await tx.coupon.update({ where: { programId_id: { programId, id: couponId } }, data: { secondWaitingSince: null, takenById: null, takenAt: null } })
  if (input.comment !== null) await keepStaffNote(tx, viewer, { studentId, body: `Second reading of ${shortTitle(exercise)}, no. ${number}: ${input.comment}` })
  const { verdict, mark } = judged.scorecard
  await recordAudit(tx, viewer, { action: 'inspection.second', subject: { type: 'coupon', id: couponId }, after: { verdict, mark } })
}

const taken = (): Refusal =>
  new Refusal('CONFLICT', 'Someone submitted an inspection of this coupon while you had it open. Yours is not saved; what you typed is still here.')

import 'server-only'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'
import { refusals } from '@/lib/language/refusals'
import { say } from '@/lib/language/say'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import type { LoggedCoupon } from '@/lib/schemas/coupon'
import type { ReadingsFrame } from '@/lib/schemas/readings'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { criteriaSet } from './criteria'
import { toExercise, type ExerciseRecord } from './exercises'
import { judge, writeInspection } from './scorecards'
import { holdSkill, refreshSkill } from './skills'

type Place = { readonly exercise: ExerciseRecord; readonly termId: string; readonly booth: number | null }

/** Where a coupon is logged; `exerciseVersion` is the version its form was opened with, absent for the current one. */
type CouponPlace = { readonly classId: string; readonly exerciseId: string; readonly exerciseVersion?: number | undefined }

/**
 * The exercise as an active student of the class practises it; null for anyone else, and for a version there never was. A version that
 * was current when the form was opened is taken as it was then: the student welded to that booth card.
 */
async function placeOf(viewer: Viewer, { classId, exerciseId, exerciseVersion }: CouponPlace): Promise<Place | null> {
  const { programId, personId } = viewer
  const row = await db().classExercise.findFirst({
    where: {
      programId, classId, exerciseId, exercise: { archivedAt: null },
      class: { archivedAt: null, enrolments: { some: { programId, personId, withdrawnAt: null } } },
    },
    select: {
      class: { select: { termId: true, enrolments: { where: { programId, personId }, select: { booth: true } } } },
      exercise: { select: { currentVersion: true } },
    },
  })
  if (!row || !hasRole(viewer, 'student')) return null
  const asked = exerciseVersion ?? row.exercise.currentVersion
  if (asked > row.exercise.currentVersion) return null
  const version = await db().exerciseVersion.findUnique({ where: { programId_exerciseId_version: { programId, exerciseId, version: asked } } })
  return version && { exercise: toExercise(version), termId: row.class.termId, booth: row.class.enrolments[0]?.booth ?? null }
}

/**
 * Why a coupon cannot be logged there. An active student of the class is told that it was archived, or that an exercise they confirmed the
 * cautions of was taken off its list: their form was open when that happened. Anyone else gets what a missing class gets.
 */
async function whyNot(viewer: Viewer, { classId, exerciseId }: CouponPlace): Promise<Refusal> {
  const { programId, personId, locale } = viewer
  const own = await db().class.findFirst({
    where: { programId, id: classId, enrolments: { some: { programId, personId, withdrawnAt: null } } },
    select: { archivedAt: true, termId: true, exercises: { where: { programId, exerciseId }, select: { exerciseId: true } } },
  })
  if (!own || !hasRole(viewer, 'student')) return notFound()
  if (own.archivedAt) return new Refusal('CONFLICT', say(refusals, locale, 'classArchived'))
  if (own.exercises.length > 0) return notFound()
  const confirmed = await db().safetyAcknowledgement.findUnique({
    where: { programId_studentId_exerciseId_termId: { programId, studentId: personId, exerciseId, termId: own.termId } }, select: { termId: true },
  })
  return confirmed ? new Refusal('CONFLICT', say(refusals, locale, 'offList')) : notFound()
}

/** How the readings of a coupon about to be logged are read: the exercise's length and gauge, the student's language and units. */
export async function couponFrame(viewer: Viewer, key: CouponPlace): Promise<ReadingsFrame> {
  const place = await placeOf(viewer, key)
  if (!place) throw await whyNot(viewer, key)
  return frameOf(viewer, place.exercise)
}

/** The same for a coupon that exists. */
export const frameOf = (viewer: Viewer, exercise: ExerciseRecord): ReadingsFrame => ({
  locale: viewer.locale, units: viewer.units, lengthMm: exercise.lengthMm, gaugeResolutionMm: gaugeResolutionMm(exercise.gauge),
})

/** A coupon of the viewer's own that arrived before: the answer to its first sending was lost on the way. Null when there is none. */
export async function findArrived(viewer: Viewer, id: string): Promise<{ id: string; number: number } | null> {
  const { programId, personId } = viewer
  return db().coupon.findFirst({ where: { programId, id, studentId: personId }, select: { id: true, number: true } })
}

/**
 * Logs a student's own coupon with its self-inspection, judged at once. The id is the client's, so sending it again makes nothing new.
 *
 * @throws Refusal NOT_FOUND for a class one is not in, CONFLICT when it was archived or the exercise taken off its list, SAFETY when this term's cautions are not confirmed
 */
export async function logCoupon(viewer: Viewer, input: LoggedCoupon): Promise<{ id: string; number: number; created: boolean }> {
  const { programId, personId } = viewer
  const place = await placeOf(viewer, input)
  if (!place) throw await whyNot(viewer, input)
  const { exercise } = place
  const criteria = await criteriaSet(programId, exercise.criteria.id, exercise.criteria.version)
  const judged = judge(exercise, input.readings.inspection, criteria)
  const skill = { programId, studentId: personId, exerciseId: exercise.id }
  try {
    return await db().$transaction(async (tx) => {
      // The skill's row is locked first: it numbers the coupons, and two sendings of one coupon wait for each other here.
      await holdSkill(tx, skill)
      const standing = await tx.coupon.findUnique({ where: { programId_id: { programId, id: input.id } }, select: { studentId: true, number: true } })
      if (standing) {
        if (standing.studentId !== personId) throw notFound()
        return { id: input.id, number: standing.number, created: false }
      }
      const acknowledged = await tx.safetyAcknowledgement.findUnique({
        where: { programId_studentId_exerciseId_termId: { ...skill, termId: place.termId } }, select: { cautionsVersion: true },
      })
      // A changed text is confirmed anew, as the exercise's page asks.
      if (acknowledged?.cautionsVersion !== CAUTIONS_VERSION) throw new Refusal('SAFETY', say(refusals, viewer.locale, 'cautionsFirst'))
      const last = await tx.coupon.findFirst({ where: skill, orderBy: { number: 'desc' }, select: { number: true } })
      const number = (last?.number ?? 0) + 1
      await tx.coupon.create({
        data: {
          programId, id: input.id, classId: input.classId, studentId: personId, exerciseId: exercise.id, exerciseVersion: exercise.version,
          number, booth: input.booth ?? place.booth, weldedAt: input.weldedAt, note: input.note, waitingSince: new Date(),
          selfVerdict: judged.scorecard.verdict, selfMark: judged.scorecard.mark,
        },
      })
      await tx.pass.createMany({ data: input.passes.map((pass, index) => ({ programId, couponId: input.id, sequence: index + 1, ...pass })) })
      await writeInspection(tx, {
        programId, couponId: input.id, inspectorId: personId, kind: 'self', revision: 1,
        readings: input.readings, judged, criteria: exercise.criteria,
      })
      await refreshSkill(tx, skill)
      await recordAudit(tx, viewer, {
        action: 'coupon.log', subject: { type: 'coupon', id: input.id },
        after: {
          exerciseId: exercise.id, version: exercise.version, number, verdict: judged.scorecard.verdict,
          ...(input.weldedAtAsSent && { deviceSaidWeldedAt: input.weldedAtAsSent.toISOString() }),
        },
      })
      return { id: input.id, number, created: true }
    })
  } catch (error) {
    // The id belongs to a coupon elsewhere in the program, logged in the same instant: nothing of it is told.
    if (isTaken(error)) throw notFound()
    throw error
  }
}

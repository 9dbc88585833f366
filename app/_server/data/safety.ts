import 'server-only'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'

/** When the viewer confirmed the cautions of an exercise in a term, or null. A new text asks again. */
export async function findAcknowledgement(viewer: Viewer, exerciseId: string, termId: string, cautionsVersion: string): Promise<Date | null> {
  const row = await db().safetyAcknowledgement.findFirst({
    where: { programId: viewer.programId, studentId: viewer.personId, exerciseId, termId, cautionsVersion },
    select: { acknowledgedAt: true },
  })
  return row?.acknowledgedAt ?? null
}

/** Records that the viewer read and confirmed the cautions of an exercise of one of their classes. Saying it twice changes nothing. */
export async function acknowledgeCautions(viewer: Viewer, input: { classId: string; exerciseId: string; cautionsVersion: string }): Promise<void> {
  const { programId, personId } = viewer
  const place = await db().classExercise.findFirst({
    where: {
      programId, classId: input.classId, exerciseId: input.exerciseId,
      class: { enrolments: { some: { programId, personId, withdrawnAt: null } } },
    },
    select: { class: { select: { termId: true } } },
  })
  if (!place || !hasRole(viewer, 'student')) throw notFound()
  const key = { programId, studentId: personId, exerciseId: input.exerciseId, termId: place.class.termId }
  await db().$transaction(async (tx) => {
    const standing = await tx.safetyAcknowledgement.findUnique({ where: { programId_studentId_exerciseId_termId: key } })
    if (standing?.cautionsVersion === input.cautionsVersion) return
    await tx.safetyAcknowledgement.upsert({
      where: { programId_studentId_exerciseId_termId: key },
      create: { ...key, cautionsVersion: input.cautionsVersion },
      update: { cautionsVersion: input.cautionsVersion, acknowledgedAt: new Date() },
    })
    await recordAudit(tx, viewer, {
      action: 'safety.acknowledge',
      subject: { type: 'exercise', id: input.exerciseId },
      after: { termId: place.class.termId, cautionsVersion: input.cautionsVersion },
    })
  })
}

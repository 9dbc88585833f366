import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { staffClassScope } from './scope'

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

export type UnsignedCautions = {
  readonly exerciseId: string
  readonly title: string
  /** Active students of the class who have not confirmed the cautions this term, by booth, then name. */
  readonly students: readonly { readonly id: string; readonly name: string; readonly booth: number | null }[]
}

/** For each exercise of a class the viewer keeps, in its order: who has not confirmed its cautions in the class's term. */
export async function listUnsignedCautions(viewer: Viewer, classId: string, cautionsVersion: string): Promise<UnsignedCautions[]> {
  const { programId } = viewer
  const taught = await db().class.findFirst({
    where: { AND: [{ id: classId }, staffClassScope(viewer)] },
    select: {
      termId: true,
      exercises: {
        where: { exercise: { archivedAt: null } }, orderBy: { sequence: 'asc' },
        select: { exerciseId: true, exercise: { select: { currentVersion: true, versions: { select: { version: true, title: true } } } } },
      },
      enrolments: {
        where: { withdrawnAt: null }, orderBy: [{ booth: { sort: 'asc', nulls: 'last' } }, { person: { familyName: 'asc' } }],
        select: { booth: true, person: { select: { id: true, givenName: true, familyName: true } } },
      },
    },
  })
  if (!taught) return []
  const signed = await db().safetyAcknowledgement.findMany({
    where: {
      programId, termId: taught.termId, cautionsVersion,
      exerciseId: { in: taught.exercises.map(({ exerciseId }) => exerciseId) }, studentId: { in: taught.enrolments.map(({ person }) => person.id) },
    },
    select: { exerciseId: true, studentId: true },
  })
  const has = new Set(signed.map(({ exerciseId, studentId }) => `${exerciseId} ${studentId}`))
  return taught.exercises.map(({ exerciseId, exercise }) => ({
    exerciseId,
    title: exercise.versions.find(({ version }) => version === exercise.currentVersion)?.title ?? '',
    students: taught.enrolments.filter(({ person }) => !has.has(`${exerciseId} ${person.id}`))
      .map(({ booth, person }) => ({ id: person.id, name: fullName(person), booth })),
  }))
}

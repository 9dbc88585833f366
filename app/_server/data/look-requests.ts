import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { taughtClassScope } from './scope'

/** A student's own request that still waits. */
export type OwnLook = { readonly id: string; readonly askedAt: Date; readonly note: string | null }

/** A request as the instructor of the class sees it. */
export type WaitingLook = {
  readonly id: string
  readonly student: { readonly id: string; readonly name: string }
  readonly booth: number | null
  readonly exercise: { readonly id: string; readonly title: string } | null
  readonly note: string | null
  readonly askedAt: Date
}

const own = { id: true, askedAt: true, note: true } as const

/** The booth of the viewer's active place in a class that is going on; null when they have none there. */
async function placeIn(viewer: Viewer, classId: string): Promise<{ booth: number | null } | null> {
  if (!hasRole(viewer, 'student')) return null
  return db().enrolment.findFirst({
    where: { programId: viewer.programId, classId, personId: viewer.personId, withdrawnAt: null, class: { archivedAt: null } },
    select: { booth: true },
  })
}

/** The viewer's request that waits in a class, or null. */
export async function findOwnLook(viewer: Viewer, classId: string): Promise<OwnLook | null> {
  return db().lookRequest.findFirst({
    where: { programId: viewer.programId, classId, studentId: viewer.personId, answeredAt: null }, select: own,
  })
}

/**
 * A student asks the instructor of a class to come and look. Asked again while one waits it is the same request, with its first words
 * and its place in the line.
 *
 * @throws Refusal NOT_FOUND for a class one is not in, or an exercise that is not of it
 */
export async function askForLook(viewer: Viewer, input: { classId: string; exerciseId: string | null; note: string | null }): Promise<OwnLook> {
  const { programId, personId } = viewer
  const { classId, exerciseId, note } = input
  const place = await placeIn(viewer, classId)
  if (!place) throw notFound()
  if (exerciseId !== null && !(await db().classExercise.findFirst({ where: { programId, classId, exerciseId }, select: { exerciseId: true } }))) throw notFound()
  const standing = await findOwnLook(viewer, classId)
  if (standing) return standing
  try {
    return await db().$transaction(async (tx) => {
      const made = await tx.lookRequest.create({ data: { programId, classId, studentId: personId, exerciseId, booth: place.booth, note }, select: own })
      await recordAudit(tx, viewer, { action: 'look.ask', subject: { type: 'look', id: made.id }, after: { classId, exerciseId, booth: place.booth } })
      return made
    })
  } catch (error) {
    // Pressed twice at the same moment: the index let one through, and that one is meant.
    if (!isTaken(error)) throw error
    const first = await findOwnLook(viewer, classId)
    if (!first) throw notFound()
    return first
  }
}

/** The viewer needs no look any more. Where none of theirs waits it changes nothing: the instructor may have come meanwhile. @throws Refusal NOT_FOUND for a class one is not in */
export async function takeBackLook(viewer: Viewer, input: { classId: string }): Promise<void> {
  const { programId, personId } = viewer
  if (!(await placeIn(viewer, input.classId))) throw notFound()
  await db().$transaction(async (tx) => {
    const waiting = await tx.lookRequest.findFirst({ where: { programId, classId: input.classId, studentId: personId, answeredAt: null }, select: { id: true } })
    if (!waiting) return
    const { count } = await tx.lookRequest.updateMany({
      where: { programId, id: waiting.id, answeredAt: null }, data: { answeredAt: new Date(), answeredById: personId },
    })
    if (count > 0) await recordAudit(tx, viewer, { action: 'look.take-back', subject: { type: 'look', id: waiting.id } })
  })
}

/** Requests that wait in a class the viewer teaches, the longest waiting first. Those who have left the class wait no longer. */
export async function listWaitingLooks(viewer: Viewer, classId: string): Promise<WaitingLook[]> {
  const { programId } = viewer
  const rows = await db().lookRequest.findMany({
    where: {
      programId, classId, answeredAt: null, class: taughtClassScope(viewer),
      student: { enrolments: { some: { programId, classId, withdrawnAt: null } } },
    },
    orderBy: [{ askedAt: 'asc' }, { id: 'asc' }],
    take: 200,
    select: {
      id: true, booth: true, note: true, askedAt: true, exerciseId: true,
      student: { select: { id: true, givenName: true, familyName: true } },
      exercise: { select: { currentVersion: true, versions: { select: { version: true, title: true } } } },
    },
  })
  return rows.map(({ student, exercise, exerciseId, ...row }) => {
    const title = exercise?.versions.find(({ version }) => version === exercise.currentVersion)?.title
    return {
      ...row, student: { id: student.id, name: fullName(student) },
      exercise: exerciseId !== null && title !== undefined ? { id: exerciseId, title } : null,
    }
  })
}

/** An instructor of the class has been there. Said of one that was answered meanwhile it changes nothing. @throws Refusal NOT_FOUND */
export async function answerLook(viewer: Viewer, input: { lookId: string }): Promise<void> {
  const { programId, personId } = viewer
  await db().$transaction(async (tx) => {
    const look = await tx.lookRequest.findFirst({ where: { programId, id: input.lookId, class: taughtClassScope(viewer) }, select: { id: true } })
    if (!look) throw notFound()
    const { count } = await tx.lookRequest.updateMany({
      where: { programId, id: look.id, answeredAt: null }, data: { answeredAt: new Date(), answeredById: personId },
    })
    if (count > 0) await recordAudit(tx, viewer, { action: 'look.answer', subject: { type: 'look', id: look.id } })
  })
}

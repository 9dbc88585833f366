import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { staffClassScope } from './scope'

type Place = { readonly classId: string; readonly studentId: string }

/** Takes a student out of a class; their record stays. Doing it twice changes nothing. @throws Refusal NOT_FOUND */
export const withdrawStudent = (viewer: Viewer, place: Place): Promise<void> => setWithdrawn(viewer, place, true)

/** Takes a withdrawn student back. Doing it twice changes nothing. @throws Refusal NOT_FOUND */
export const readmitStudent = (viewer: Viewer, place: Place): Promise<void> => setWithdrawn(viewer, place, false)

async function setWithdrawn(viewer: Viewer, { classId, studentId }: Place, withdrawn: boolean): Promise<void> {
  const where = { programId: viewer.programId, classId, personId: studentId, class: staffClassScope(viewer) }
  await db().$transaction(async (tx) => {
    const { count } = await tx.enrolment.updateMany({
      where: { ...where, withdrawnAt: withdrawn ? null : { not: null } }, data: { withdrawnAt: withdrawn ? new Date() : null },
    })
    if (count === 0) {
      if (await tx.enrolment.findFirst({ where, select: { personId: true } })) return
      throw notFound()
    }
    await recordAudit(tx, viewer, { action: withdrawn ? 'enrolment.withdraw' : 'enrolment.readmit', subject: { type: 'person', id: studentId }, after: { classId } })
  })
}

/** Moves an active student to another class whose roster the viewer may change; the record of the first stays. @throws Refusal NOT_FOUND, CONFLICT */
export async function moveStudent(viewer: Viewer, { classId, studentId, toClassId }: Place & { readonly toClassId: string }): Promise<void> {
  const { programId } = viewer
  if (classId === toClassId) throw new Refusal('INVALID', 'The student is in this class already.', { toClassId: 'Choose another class.' })
  await db().$transaction(async (tx) => {
    const target = await tx.class.findFirst({ where: { AND: [{ id: toClassId, archivedAt: null }, staffClassScope(viewer)] }, select: { id: true } })
    if (!target) throw notFound()
    const { count } = await tx.enrolment.updateMany({
      where: { programId, classId, personId: studentId, withdrawnAt: null, class: staffClassScope(viewer) }, data: { withdrawnAt: new Date() },
    })
    if (count === 0) throw notFound()
    // Booths are numbered class by class: the new class gives its own.
    await tx.enrolment.upsert({
      where: { programId_classId_personId: { programId, classId: target.id, personId: studentId } },
      create: { programId, classId: target.id, personId: studentId },
      update: { withdrawnAt: null, booth: null },
    })
    await recordAudit(tx, viewer, { action: 'enrolment.move', subject: { type: 'person', id: studentId }, before: { classId }, after: { classId: target.id } })
  })
}

import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { taughtClassScope } from './scope'

export type StaffNoteRecord = { readonly id: string; readonly body: string; readonly author: string; readonly writtenAt: Date }

/** Students a viewer may keep notes on: of classes they teach, all for a coordinator, and never themselves. */
function notedStudents(viewer: Viewer): Prisma.PersonWhereInput {
  const { programId, personId } = viewer
  const enrolled: Prisma.PersonWhereInput = hasRole(viewer, 'coordinator') ? {} : { enrolments: { some: { programId, class: taughtClassScope(viewer) } } }
  return { AND: [{ programId, NOT: { id: personId }, memberships: { some: { programId, role: 'student' } } }, enrolled] }
}

/** The notes that stand on a student, the newest first. Staff of the student only; empty for anyone else, the student too. */
export async function listStaffNotes(viewer: Viewer, studentId: string): Promise<StaffNoteRecord[]> {
  const rows = await db().staffNote.findMany({
    where: { programId: viewer.programId, studentId, withdrawnAt: null, student: notedStudents(viewer) },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: 100,
    select: { id: true, body: true, createdAt: true, author: { select: { givenName: true, familyName: true } } },
  })
  return rows.map(({ id, body, createdAt, author }) => ({ id, body, writtenAt: createdAt, author: fullName(author) }))
}

/**
 * Writes a note on a student that only staff see.
 *
 * @throws Refusal NOT_FOUND for a student who is not the viewer's to keep notes on
 */
export async function writeStaffNote(viewer: Viewer, input: { studentId: string; body: string }): Promise<{ id: string }> {
  const { studentId, body } = input
  return db().$transaction(async (tx) => {
    const student = await tx.person.findFirst({ where: { AND: [{ id: studentId }, notedStudents(viewer)] }, select: { id: true } })
    if (!student) throw notFound()
    return keepStaffNote(tx, viewer, { studentId, body })
  })
}

/** Writes a note inside the transaction of the change it belongs to. The caller has checked whose student it is. */
export async function keepStaffNote(tx: Transaction, viewer: Viewer, { studentId, body }: { studentId: string; body: string }): Promise<{ id: string }> {
  const made = await tx.staffNote.create({ data: { programId: viewer.programId, studentId, authorId: viewer.personId, body }, select: { id: true } })
  await recordAudit(tx, viewer, { action: 'staff-note.write', subject: { type: 'person', id: studentId }, after: { noteId: made.id, body } })
  return made
}

/** Takes a note on a student down; the row is kept. */
export async function takeDownStaffNote(viewer: Viewer, input: { noteId: string }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const note = await tx.staffNote.findFirst({ where: { programId, id: input.noteId, student: notedStudents(viewer) }, select: { id: true, studentId: true } })
    if (!note) throw notFound()
    const { count } = await tx.staffNote.updateMany({ where: { programId, id: note.id, withdrawnAt: null }, data: { withdrawnAt: new Date() } })
    if (count > 0) await recordAudit(tx, viewer, { action: 'staff-note.take-down', subject: { type: 'person', id: note.studentId }, after: { noteId: note.id } })
  })
}

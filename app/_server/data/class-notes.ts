import 'server-only'
import { localDate } from '@/lib/reports/calendar'
import { fullName } from '@/lib/reports/full-name'
import { firstMessageDay } from '@/lib/reports/note-days'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { classScope, taughtClassScope } from './scope'

export type NoteKind = 'demo' | 'message'

export type ClassNoteRecord = {
  readonly id: string
  readonly kind: NoteKind
  /** The class day of a demo, or the day of a message: YYYY-MM-DD at the program's place. */
  readonly onDate: string
  readonly exercise: { readonly id: string; readonly title: string } | null
  readonly body: string
  readonly author: string
  readonly writtenAt: Date
}

/** A class whose words the viewer may read: staff as they see the class, students while they are in it. */
function readableClass(viewer: Viewer): Prisma.ClassWhereInput {
  const { programId, personId } = viewer
  if (hasRole(viewer, 'coordinator')) return classScope(viewer)
  const own: Prisma.ClassWhereInput = hasRole(viewer, 'student') ? { enrolments: { some: { programId, personId, withdrawnAt: null } } } : { id: { in: [] } }
  return { programId, OR: [taughtClassScope(viewer), own] }
}

/** The date at the program's place, as a date column holds it. */
async function todayOf(viewer: Viewer, asOf: Date): Promise<Date> {
  const { timeZone } = await db().program.findUniqueOrThrow({ where: { id: viewer.programId }, select: { timeZone: true } })
  return new Date(localDate(asOf, timeZone))
}

const select = {
  id: true, kind: true, onDate: true, body: true, createdAt: true, exerciseId: true,
  author: { select: { givenName: true, familyName: true } },
  exercise: { select: { currentVersion: true, versions: { select: { version: true, title: true } } } },
} as const
type Row = Prisma.ClassNoteGetPayload<{ select: typeof select }>

function toNote({ id, kind, onDate, body, createdAt, exerciseId, author, exercise }: Row): ClassNoteRecord {
  const title = exercise?.versions.find(({ version }) => version === exercise.currentVersion)?.title
  return {
    id, kind, body, onDate: onDate.toISOString().slice(0, 10), writtenAt: createdAt, author: fullName(author),
    exercise: exerciseId !== null && title !== undefined ? { id: exerciseId, title } : null,
  }
}

const newestFirst = [{ onDate: 'desc' }, { createdAt: 'desc' }, { id: 'desc' }] as const satisfies Prisma.ClassNoteOrderByWithRelationInput[]

/** What a class should read now: today's demo notes and the messages of the last days, the newest first. */
export async function listCurrentNotes(viewer: Viewer, classId: string, asOf: Date): Promise<ClassNoteRecord[]> {
  const today = await todayOf(viewer, asOf)
  const rows = await db().classNote.findMany({
    where: {
      programId: viewer.programId, classId, withdrawnAt: null, class: readableClass(viewer),
      OR: [{ kind: 'demo', onDate: today }, { kind: 'message', onDate: { gte: firstMessageDay(today), lte: today } }],
    },
    orderBy: [...newestFirst],
    take: 20,
    select,
  })
  return rows.map(toNote)
}

/** The notes of a class, the newest first: `most` of them after the one named. Students meet a demo note on its day, not before. */
export async function listNotes(viewer: Viewer, classId: string, asOf: Date, page: { most: number; after: string | null }): Promise<ClassNoteRecord[]> {
  const { programId } = viewer
  const staff = hasRole(viewer, 'instructor') || hasRole(viewer, 'coordinator')
  const rows = await db().classNote.findMany({
    where: {
      programId, classId, withdrawnAt: null, class: readableClass(viewer),
      ...(!staff && { onDate: { lte: await todayOf(viewer, asOf) } }),
    },
    orderBy: [...newestFirst],
    take: page.most,
    ...(page.after !== null && { cursor: { programId_id: { programId, id: page.after } }, skip: 1 }),
    select,
  })
  return rows.map(toNote)
}

export type NewNote = {
  readonly classId: string
  readonly kind: NoteKind
  /** The class day of a demo; null is today. A message is always of today, or of the day of the one it replaces. */
  readonly onDate: string | null
  readonly exerciseId: string | null
  readonly body: string
  /** The note these words replace; it is kept, taken down. */
  readonly replaces: string | null
}

/**
 * Writes a note to a class the viewer teaches. Nothing is written over: words that replace others are a new note.
 *
 * @throws Refusal NOT_FOUND for a class one does not teach, an exercise not of it, or a note that no longer stands
 */
export async function writeClassNote(viewer: Viewer, input: NewNote, asOf: Date): Promise<{ id: string }> {
  const { programId, personId } = viewer
  const { classId, kind, exerciseId, body } = input
  const today = await todayOf(viewer, asOf)
  return db().$transaction(async (tx) => {
    const taught = await tx.class.findFirst({
      where: {
        AND: [{ id: classId, archivedAt: null }, taughtClassScope(viewer)],
        ...(exerciseId !== null && { exercises: { some: { programId, exerciseId } } }),
      },
      select: { id: true },
    })
    if (!taught) throw notFound()
    const old = input.replaces === null ? null : await tx.classNote.findFirst({
      where: { programId, classId, id: input.replaces, withdrawnAt: null }, select: { id: true, kind: true, onDate: true, body: true },
    })
    if (input.replaces !== null) {
      const { count } = await tx.classNote.updateMany({ where: { programId, classId, id: input.replaces, withdrawnAt: null }, data: { withdrawnAt: new Date() } })
      if (!old || count === 0) throw notFound()
    }
    const onDate = kind === 'demo' && input.onDate !== null ? new Date(input.onDate) : (old?.onDate ?? today)
    const made = await tx.classNote.create({ data: { programId, classId, authorId: personId, kind, onDate, exerciseId, body }, select: { id: true } })
    await recordAudit(tx, viewer, {
      action: 'class-note.write', subject: { type: 'class', id: classId },
      ...(old && { before: { noteId: old.id, kind: old.kind, body: old.body } }),
      after: { noteId: made.id, kind, onDate: onDate.toISOString().slice(0, 10), body },
    })
    return made
  })
}

/** Takes a note of a class the viewer teaches down; the row is kept. */
export async function takeDownClassNote(viewer: Viewer, input: { noteId: string }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const note = await tx.classNote.findFirst({ where: { programId, id: input.noteId, class: taughtClassScope(viewer) }, select: { id: true, classId: true } })
    if (!note) throw notFound()
    const { count } = await tx.classNote.updateMany({ where: { programId, id: note.id, withdrawnAt: null }, data: { withdrawnAt: new Date() } })
    if (count > 0) await recordAudit(tx, viewer, { action: 'class-note.take-down', subject: { type: 'class', id: note.classId }, after: { noteId: note.id } })
  })
}

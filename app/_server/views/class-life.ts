import 'server-only'
import { classLife } from '@/lib/language/class-life'
import { say } from '@/lib/language/say'
import { dateText, momentText } from '@/lib/reports/dates'
import { localDate } from '@/lib/reports/calendar'
import type { Viewer } from '../auth/viewer'
import { listCurrentNotes, listNotes, type ClassNoteRecord } from '../data/class-notes'
import { findOwnLook } from '../data/look-requests'
import { findProgram } from '../data/program'

/** A note as it stands on a student's screen. */
export type NoteView = { readonly id: string; readonly head: string; readonly about: string | null; readonly body: string; readonly by: string }
/** A student's request for a look; `asked` null: none waits. */
export type LookPanelView = { readonly asked: { readonly text: string; readonly note: string | null } | null }
export type ClassLife = { readonly notes: readonly NoteView[]; readonly look: LookPanelView }

/** A date column at the program's place: read in UTC, where it is midnight, so that no time zone moves it. */
const dayText = (onDate: string, viewer: Viewer): string => dateText(new Date(onDate), viewer.locale, 'UTC')

function noteView(note: ClassNoteRecord, viewer: Viewer, today: string, timeZone: string): NoteView {
  const { locale } = viewer
  const date = dayText(note.onDate, viewer)
  const head = note.kind === 'message' ? say(classLife, locale, 'messageOn', { date }) : note.onDate === today ? say(classLife, locale, 'demoWord') : say(classLife, locale, 'demoOn', { date })
  return {
    id: note.id, head, body: note.body,
    about: note.exercise && say(classLife, locale, 'aboutExercise', { title: note.exercise.title }),
    by: say(classLife, locale, 'by', { author: note.author, when: momentText(note.writtenAt, locale, timeZone) }),
  }
}

/** What waits for a student in one of their classes now: notes to read, and whether they asked for a look. */
export async function classLifeOf(viewer: Viewer, classId: string, asOf: Date): Promise<ClassLife> {
  const [notes, look, { timeZone }] = await Promise.all([listCurrentNotes(viewer, classId, asOf), lookPanel(viewer, classId), findProgram(viewer)])
  const today = localDate(asOf, timeZone)
  return { notes: notes.map((note) => noteView(note, viewer, today, timeZone)), look }
}

/** The student's own request in a class, in words. */
export async function lookPanel(viewer: Viewer, classId: string): Promise<LookPanelView> {
  const [look, { timeZone }] = await Promise.all([findOwnLook(viewer, classId), findProgram(viewer)])
  if (!look) return { asked: null }
  const when = new Intl.DateTimeFormat(viewer.locale === 'es' ? 'es-US' : 'en-US', { timeZone, hour: 'numeric', minute: '2-digit' }).format(look.askedAt)
  return {
    asked: { text: say(classLife, viewer.locale, 'askedText', { when }), note: look.note === null ? null : say(classLife, viewer.locale, 'askedNote', { note: look.note }) },
  }
}

const NOTES_A_PAGE = 20

/** One page of a class's notes for a student, the newest first, and the note the next page begins after. */
export async function notesPage(viewer: Viewer, classId: string, asOf: Date, after: string | null): Promise<{ notes: readonly NoteView[]; next: string | null }> {
  const [rows, { timeZone }] = await Promise.all([listNotes(viewer, classId, asOf, { most: NOTES_A_PAGE + 1, after }), findProgram(viewer)])
  const today = localDate(asOf, timeZone)
  const shown = rows.slice(0, NOTES_A_PAGE)
  return { notes: shown.map((note) => noteView(note, viewer, today, timeZone)), next: rows.length > NOTES_A_PAGE ? (shown.at(-1)?.id ?? null) : null }
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listNotes } from '@/app/_server/data/class-notes'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listClassExercises } from '@/app/_server/data/exercises'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { localDate } from '@/lib/reports/calendar'
import { dateText, momentText } from '@/lib/reports/dates'
import { uuid } from '@/lib/schemas/field'
import { NoteForm } from './note-form'
import { NoteLine } from './note-line'

export const metadata: Metadata = { title: 'Demo notes and messages' }

const NOTES_A_PAGE = 20

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** What the class is told: a form, and all that stands, the newest first. */
export default async function NotesPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor')
  const classRecord = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const after = uuid.nullable().catch(null).parse((await searchParams)['after'] ?? null)
  const now = new Date()
  const [rows, exercises, { timeZone }] = await Promise.all([
    listNotes(viewer, classRecord.id, now, { most: NOTES_A_PAGE + 1, after }), listClassExercises(viewer, classRecord.id), findProgram(viewer),
  ])
  const notes = rows.slice(0, NOTES_A_PAGE)
  const last = notes.at(-1)
  const here = `/teach/classes/${classRecord.id}/notes`
  const choices = exercises.map(({ exercise }) => ({ value: exercise.id, label: exercise.title }))
  const today = localDate(now, timeZone)
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={classRecord.name} title="Demo notes and messages"
        lead="Students see today’s demo notes, and messages for a week, on their first screen; older ones on a page of their own."
        aside={<LinkButton href={`/teach/classes/${classRecord.id}`}>Back to the class</LinkButton>}
      />
      {!after && <NoteForm classId={classRecord.id} exercises={choices} today={today} />}
      <section className="grid gap-3">
        <h2 className="text-2xl">Written to the class</h2>
        {notes.length === 0 ? <EmptyState title="Nothing written yet"><p>What you write above appears here and on your students’ screens.</p></EmptyState> : (
          <ul className="divide-y divide-line border-y border-line">
            {notes.map((note) => (
              <NoteLine
                key={note.id} classId={classRecord.id} exercises={choices} today={today}
                note={{ id: note.id, kind: note.kind, onDate: note.onDate, exerciseId: note.exercise?.id ?? null, body: note.body }}
                head={`${note.kind === 'demo' ? 'Demo' : 'Message'}, ${dateText(new Date(note.onDate), 'en', 'UTC')}`}
                about={note.exercise?.title ?? null} by={`${note.author}, ${momentText(note.writtenAt, 'en', timeZone)}`}
              />
            ))}
          </ul>
        )}
        <div className="flex flex-wrap gap-2">
          {rows.length > NOTES_A_PAGE && last && <LinkButton href={`${here}?after=${last.id}`}>Older notes</LinkButton>}
          {after && <LinkButton href={here}>Back to the newest</LinkButton>}
        </div>
      </section>
    </div>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { classLife } from '@/lib/language/class-life'
import { say } from '@/lib/language/say'
import { uuid } from '@/lib/schemas/field'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listOwnClasses } from '@/app/_server/data/classes'
import { pageId } from '@/app/_server/page-id'
import { notesPage } from '@/app/_server/views/class-life'
import { NoteList } from '../../_parts/note-list'

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

export async function generateMetadata(): Promise<Metadata> {
  const viewer = await requireRole('student')
  return { title: say(classLife, viewer.locale, 'allNotesTitle') }
}

/** Everything written to a class, the newest first, some at a time. */
export default async function ClassNotesPage({ params, searchParams }: Props) {
  const viewer = await requireRole('student')
  const classId = pageId((await params).classId)
  const own = (await listOwnClasses(viewer)).find(({ id }) => id === classId) ?? notFound()
  const after = uuid.nullable().catch(null).parse((await searchParams)['after'] ?? null)
  const { notes, next } = await notesPage(viewer, classId, new Date(), after)
  const { locale } = viewer
  return (
    <div className="grid gap-6">
      <PageHead eyebrow={own.name} title={say(classLife, locale, 'allNotesTitle')} />
      {notes.length === 0
        ? <EmptyState title={say(classLife, locale, 'noNotesTitle')}><p>{say(classLife, locale, 'noNotesText')}</p></EmptyState>
        : <NoteList notes={notes} />}
      <div className="flex flex-wrap gap-2">
        {next && <LinkButton href={`/learn/notes/${classId}?after=${next}`}>{say(classLife, locale, 'olderNotes')}</LinkButton>}
        {after && <LinkButton href={`/learn/notes/${classId}`}>{say(classLife, locale, 'newestNotes')}</LinkButton>}
      </div>
    </div>
  )
}

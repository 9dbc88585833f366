import Link from 'next/link'
import { classLife } from '@/lib/language/class-life'
import { say } from '@/lib/language/say'
import type { Viewer } from '@/app/_server/auth/viewer'
import { classLifeOf, lookPanel } from '@/app/_server/views/class-life'
import { LookButton } from './look-button'
import { NoteList } from './note-list'

/** For the student's home: what the class should read now, and the way to ask for a look. */
export async function ClassLifePanel({ viewer, classId }: { readonly viewer: Viewer; readonly classId: string }) {
  const { locale } = viewer
  const life = await classLifeOf(viewer, classId, new Date())
  return (
    <>
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(classLife, locale, 'fromClass')}</h2>
        {life.notes.length === 0 ? <p className="text-ink-2">{say(classLife, locale, 'nothingToday')}</p> : <NoteList notes={life.notes} />}
        <p><Link href={`/learn/notes/${classId}`} className="inline-flex min-h-12 items-center">{say(classLife, locale, 'allNotes')}</Link></p>
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(classLife, locale, 'askTitle')}</h2>
        <LookButton locale={locale} classId={classId} exerciseId={null} asked={life.look.asked} />
      </section>
    </>
  )
}

/** For an exercise's page: the way to ask for a look at it, folded away until it is needed or while one waits. */
export async function LookPanel({ viewer, classId, exerciseId }: { readonly viewer: Viewer; readonly classId: string; readonly exerciseId: string }) {
  const { locale } = viewer
  const { asked } = await lookPanel(viewer, classId)
  return (
    <section className="grid gap-3">
      <h2 className="text-2xl">{say(classLife, locale, 'askTitle')}</h2>
      <LookButton locale={locale} classId={classId} exerciseId={exerciseId} asked={asked} />
    </section>
  )
}

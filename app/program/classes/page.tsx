import type { Metadata } from 'next'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listAllClasses, listInstructors } from '@/app/_server/data/class-admin'
import { listClassesToCopy } from '@/app/_server/data/course'
import { listTerms } from '@/app/_server/data/terms'
import { dateText } from '@/lib/reports/dates'
import { ClassLine, NewClassForm, TermForm } from './class-forms'

export const metadata: Metadata = { title: 'Terms and classes' }

/** Terms and classes of the program: made, renamed and archived here. */
export default async function ClassesPage() {
  const viewer = await requireRole('coordinator')
  const [terms, classes, instructors, toCopy] = await Promise.all([listTerms(viewer), listAllClasses(viewer), listInstructors(viewer), listClassesToCopy(viewer)])
  const day = (date: Date): string => dateText(date, 'en', 'UTC')
  return (
    <div className="grid gap-10">
      <PageHead title="Terms and classes" lead="An archived class keeps its whole record; nothing new is logged in it." />
      <section aria-labelledby="new-class" className="grid gap-4">
        <h2 id="new-class" className="text-2xl">A new class</h2>
        {terms.length === 0 ? <p>Make a term first.</p> : (
          <NewClassForm
            terms={terms.map(({ id, name }) => ({ value: id, label: name }))} instructors={instructors.map(({ id, name }) => ({ value: id, label: name }))}
            classes={toCopy.map(({ id, name, term }) => ({ value: id, label: `${name}, ${term}` }))}
          />
        )}
      </section>
      <section aria-labelledby="classes" className="grid gap-3">
        <h2 id="classes" className="text-2xl">Classes</h2>
        {classes.length === 0 ? <EmptyState title="No classes yet"><p>Make one above.</p></EmptyState> : (
          <ul className="divide-y divide-line border-y border-line">
            {classes.map((each) => (
              <li key={each.id} className="grid gap-2 py-4">
                <h3 className="font-head text-xl leading-tight font-semibold">{each.name}{each.archived && ' (archived)'}</h3>
                <p className="text-base text-ink-2">
                  {[each.term, each.room, each.meets, each.instructors.join(', ') || 'no instructor', `${each.students} ${each.students === 1 ? 'student' : 'students'}`].filter(Boolean).join(' · ')}
                </p>
                <ClassLine classId={each.id} name={each.name} room={each.room ?? ''} meets={each.meets ?? ''} archived={each.archived} />
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-labelledby="terms" className="grid gap-4">
        <h2 id="terms" className="text-2xl">Terms</h2>
        <ul className="list-disc pl-5">{terms.map(({ id, name, startsOn, endsOn }) => <li key={id}>{name}: {day(startsOn)} to {day(endsOn)}</li>)}</ul>
        <TermForm />
      </section>
    </div>
  )
}

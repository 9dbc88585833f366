import type { Metadata } from 'next'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listAllClasses, listInstructors } from '@/app/_server/data/class-admin'
import { listClassesToCopy } from '@/app/_server/data/course'
import { listTerms, type TermRecord } from '@/app/_server/data/terms'
import { dateText } from '@/lib/reports/dates'
import { overlapping } from '@/lib/reports/term-overlaps'
import { ClassLine, NewClassForm } from './class-forms'
import { TermForm, TermLine } from './term-forms'

export const metadata: Metadata = { title: 'Terms and classes' }

/** Terms and classes of the program: made, renamed and archived here. */
export default async function ClassesPage() {
  const viewer = await requireRole('coordinator')
  const [terms, classes, instructors, toCopy] = await Promise.all([listTerms(viewer), listAllClasses(viewer), listInstructors(viewer), listClassesToCopy(viewer)])
  const open = terms.filter(({ archived }) => !archived)
  return (
    <div className="grid gap-10">
      <PageHead title="Terms and classes" lead="An archived class keeps its whole record; nothing new is logged in it." />
      <section aria-labelledby="new-class" className="grid gap-4">
        <h2 id="new-class" className="text-2xl">A new class</h2>
        {open.length === 0 ? <p>Make a term first.</p> : (
          <NewClassForm
            terms={open.map(({ id, name }) => ({ value: id, label: name }))} instructors={instructors.map(({ id, name }) => ({ value: id, label: name }))}
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
                <p className="flex flex-wrap gap-2">
                  <LinkButton href={`/program/classes/${each.id}/exercises`} aria-label={`Exercises of ${each.name}, ${each.term}`}>Exercises</LinkButton>
                  <LinkButton href={`/program/classes/${each.id}/paper`} aria-label={`Paper for ${each.name}, ${each.term}`}>Paper</LinkButton>
                  {!each.archived && <LinkButton href={`/program/people/${each.id}`} aria-label={`People of ${each.name}, ${each.term}`}>People</LinkButton>}
                </p>
                <ClassLine classId={each.id} name={each.name} room={each.room ?? ''} meets={each.meets ?? ''} archived={each.archived} />
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-labelledby="terms" className="grid gap-4">
        <h2 id="terms" className="text-2xl">Terms</h2>
        <p className="max-w-prose">A term that has classes is archived with them, never deleted. Taking it back opens again the classes that were archived together last.</p>
        {terms.length === 0 ? <EmptyState title="No terms yet"><p>Make one below.</p></EmptyState> : (
          <ul className="divide-y divide-line border-y border-line">{terms.map((term) => <TermItem key={term.id} term={term} terms={terms} />)}</ul>
        )}
        <h3 className="font-head text-xl leading-tight font-semibold">A new term</h3>
        <TermForm />
      </section>
    </div>
  )
}

function TermItem({ term, terms }: { readonly term: TermRecord; readonly terms: readonly TermRecord[] }) {
  const { id, name, startsOn, endsOn, classes, archived } = term
  const shares = overlapping(term, terms.filter((other) => other.id !== id)).map((other) => other.name)
  const day = (date: Date): string => dateText(date, 'en', 'UTC')
  const iso = (date: Date): string => date.toISOString().slice(0, 10)
  return (
    <li className="grid gap-2 py-4">
      <h3 className="font-head text-xl leading-tight font-semibold">{name}{archived && ' (archived)'}</h3>
      <p className="text-base text-ink-2">{[`${day(startsOn)} to ${day(endsOn)}`, `${classes} ${classes === 1 ? 'class' : 'classes'}`].join(' · ')}</p>
      {shares.length > 0 && <p>Shares days with {shares.join(' and ')}.</p>}
      <TermLine termId={id} name={name} startsOn={iso(startsOn)} endsOn={iso(endsOn)} classes={classes} archived={archived} />
    </li>
  )
}

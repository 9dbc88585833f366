import type { Metadata } from 'next'
import Link from 'next/link'
import { dateText } from '@/lib/reports/dates'
import { narrows, peopleAddress, readPeopleOptions, type PeopleOptions } from '@/lib/reports/people-options'
import { countText } from '@/lib/reports/share-text'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { Table } from '@/app/_components/ui/table'
import { requireRole } from '@/app/_server/auth/require-role'
import { listClasses, type ClassRecord } from '@/app/_server/data/classes'
import { listPeople, type PeoplePage } from '@/app/_server/data/people-list'
import { findProgram } from '@/app/_server/data/program'
import { PeopleSearch } from './people-search'
import { rolesText, STATE_WORDS } from './role-words'

export const metadata: Metadata = { title: 'People' }

const PATH = '/program/people'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Everyone of the program, to be found by name, role, class and state; and the classes, each with its way to its people. */
export default async function PeoplePage({ searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const options = readPeopleOptions(await searchParams)
  const [classes, page, { timeZone }] = await Promise.all([listClasses(viewer), listPeople(viewer, options), findProgram(viewer)])
  return (
    <div className="grid gap-10">
      <PageHead
        title="People" lead="Find a person to see their account, or choose a class to bring in its roster and set who teaches it."
        aside={<><LinkButton kind="primary" href={`${PATH}/new`}>New instructor</LinkButton><LinkButton href="#classes">Class by class</LinkButton></>}
      />
      <section aria-labelledby="everyone" className="grid gap-4">
        <h2 id="everyone" className="text-2xl">Everyone</h2>
        <PeopleSearch path={PATH} options={options} classes={classes.map(({ id, name, term }) => ({ value: id, label: `${name}, ${term.name}` }))} />
        {page && <Found page={page} options={options} timeZone={timeZone} />}
      </section>
      <section aria-labelledby="classes" className="grid gap-4">
        <h2 id="classes" className="text-2xl">Class by class</h2>
        <ClassTable classes={classes} />
      </section>
    </div>
  )
}

function Found({ page: { people, total, before, after }, options, timeZone }: { readonly page: PeoplePage; readonly options: PeopleOptions; readonly timeZone: string }) {
  if (total === 0) {
    return narrows(options)
      ? <EmptyState title="Nobody like that" action={<LinkButton href={PATH}>Show everyone</LinkButton>}><p>No name or sign-in name here has all of these words, or nobody has this role, class and state.</p></EmptyState>
      : <EmptyState title="Nobody yet"><p>People appear here as they are added.</p></EmptyState>
  }
  const to = (change: Partial<PeopleOptions>): string => peopleAddress(PATH, options, { after: null, before: null, ...change })
  return (
    <>
      <p role="status">{total === 1 ? '1 person' : `${countText(total, 'en')} people`}{people.length < total && `, ${people.length} on this page`}.{narrows(options) && <> <Link href={PATH} className="underline">Show everyone</Link></>}</p>
      <Table
        caption="People" captionHidden
        columns={[{ key: 'name', head: 'Name' }, { key: 'signIn', head: 'Sign-in name' }, { key: 'roles', head: 'Role' }, { key: 'classes', head: 'Open classes' }, { key: 'state', head: 'State' }, { key: 'last', head: 'Last sign-in' }]}
        rows={people.map((person) => ({
          key: person.id,
          cells: [
            <Link key="name" href={`${PATH}/person/${person.id}`} className="inline-flex min-h-12 items-center underline">{person.name}</Link>,
            person.signInName, rolesText(person.roles), <span key="classes" className="block min-w-44">{person.classes.join(', ') || 'none'}</span>, STATE_WORDS[person.state],
            person.lastSignIn ? dateText(person.lastSignIn, 'en', timeZone) : 'never',
          ],
        }))}
      />
      {(before ?? after) !== null && (
        <nav aria-label="Pages of people" className="flex flex-wrap gap-2">
          {before !== null && <><LinkButton href={to({})}>First page</LinkButton><LinkButton href={to({ before })}>Page before</LinkButton></>}
          {after !== null && <LinkButton href={to({ after })}>Next page</LinkButton>}
        </nav>
      )}
    </>
  )
}

function ClassTable({ classes }: { readonly classes: readonly ClassRecord[] }) {
  if (classes.length === 0) return <EmptyState title="No classes yet"><p>Make one under Classes.</p></EmptyState>
  return (
    <Table
      caption="Classes" captionHidden
      columns={[{ key: 'class', head: 'Class' }, { key: 'term', head: 'Term' }, { key: 'instructors', head: 'Instructors' }]}
      rows={classes.map(({ id, name, term, instructors }) => ({
        key: id,
        cells: [
          <Link key="name" href={`${PATH}/${id}`} className="inline-flex min-h-12 items-center underline">{name}</Link>,
          term.name, instructors.map((each) => each.name).join(', ') || 'none',
        ],
      }))}
    />
  )
}

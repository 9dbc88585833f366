import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { browserName } from '@/lib/reports/browser-name'
import { dateText, momentText } from '@/lib/reports/dates'
import { DefinitionList, DefinitionRow } from '@/app/_components/ui/definition-list'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listClasses } from '@/app/_server/data/classes'
import { findPerson, listAccountHistory, type AccountEvent, type PersonDetail, type PlaceInClass } from '@/app/_server/data/people-list'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { rolesText, STATE_WORDS } from '../../role-words'
import { AccountPanel } from './account-panel'
import { NamesForm } from './names-form'
import { RolesPanel } from './roles-panel'
import { TeachingPanel } from './teaching-panel'

type Props = { params: Promise<{ personId: string }> }

/** Read once for the page and its title. */
const load = cache(async (personId: string) => {
  const viewer = await requireRole('coordinator')
  const person = await findPerson(viewer, pageId(personId))
  return person ? { viewer, person } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await load((await params).personId)).person.name }
}

/** One person: roles, classes, where they are signed in, and what can be done to their account. */
export default async function PersonPage({ params }: Props) {
  const { viewer, person } = await load((await params).personId)
  const [classes, { timeZone }, history] = await Promise.all([listClasses(viewer), findProgram(viewer), listAccountHistory(viewer, person.id)])
  const others = classes.filter(({ id }) => !person.teaches.some(({ classId }) => classId === id)).map((each) => ({ value: each.id, label: `${each.name}, ${each.term.name}` }))
  return (
    <div className="grid gap-10">
      <PageHead eyebrow={rolesText(person.roles)} title={person.name} lead={`Signs in as ${person.signInName}.`} aside={<>{person.roles.includes('student') && <LinkButton href={`/program/students/${person.id}`}>Practice and tests</LinkButton>}<LinkButton href="/program/people">All people</LinkButton></>} />
      <div className="grid items-start gap-10 lg:grid-cols-2">
        <div className="grid gap-10">
          <section aria-labelledby="standing" className="grid gap-3">
            <h2 id="standing" className="text-2xl">Standing</h2>
            <DefinitionList>
              <DefinitionRow term="State" value={STATE_WORDS[person.state]} />
              <DefinitionRow term="Last sign-in" value={person.lastSignIn ? momentText(person.lastSignIn, 'en', timeZone) : 'never'} />
              <DefinitionRow term="Here since" value={dateText(person.since, 'en', timeZone)} />
              {person.mustChangePassword && <DefinitionRow term="Password" value="a first one, to be replaced" />}
              {person.roles.includes('student') && <DefinitionRow term="Tablet PIN" value={person.hasPin ? 'set' : 'none yet'} />}
            </DefinitionList>
            <NamesForm personId={person.id} givenName={person.givenName} familyName={person.familyName} signInName={person.signInName} />
          </section>
          <Sessions person={person} timeZone={timeZone} />
          <History events={history} timeZone={timeZone} />
        </div>
        <div className="grid gap-10">
          {person.roles.includes('instructor') && (
            <TeachingPanel
              instructorId={person.id} name={person.name} others={others} disabled={person.state === 'disabled'}
              teaches={person.teaches.map(({ classId, name, term, archived }) => ({ classId, label: `${name}, ${term}`, archived }))}
            />
          )}
          {person.attends.length > 0 && <Attends places={person.attends} />}
          {person.self ? <Notice kind="info" word="This is you">Your password and your sessions are on <Link href="/account">your account page</Link>.</Notice> : (
            <AccountPanel
              personId={person.id} name={person.name} disabled={person.state === 'disabled'} hasPassword={person.state !== 'no-password'}
              pin={person.roles.includes('student') ? (person.hasPin ? 'set' : 'none') : null} instructor={person.roles.includes('instructor')}
            />
          )}
          <RolesPanel personId={person.id} name={person.name} instructor={person.roles.includes('instructor')} coordinator={person.roles.includes('coordinator')} self={person.self} />
        </div>
      </div>
    </div>
  )
}

function Attends({ places }: { readonly places: readonly PlaceInClass[] }) {
  return (
    <section aria-labelledby="attends" className="grid gap-3">
      <h2 id="attends" className="text-2xl">In class</h2>
      <ul className="divide-y divide-line border-y border-line">
        {places.map(({ classId, name, term, archived, withdrawn }) => (
          <li key={classId}>
            <Link href={`/program/people/${classId}`} className="flex min-h-12 items-center py-2 underline">
              {`${name}, ${term}${archived ? ' (archived)' : ''}${withdrawn ? ' (withdrawn)' : ''}`}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Sessions({ person: { sessions }, timeZone }: { readonly person: PersonDetail; readonly timeZone: string }) {
  return (
    <section aria-labelledby="sessions" className="grid gap-3">
      <h2 id="sessions" className="text-2xl">Signed in now</h2>
      {sessions.length === 0 ? <p>Nowhere.</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {sessions.map(({ id, device, tablet, since, lastSeen }) => (
            <li key={id} className="py-3">
              <strong>{tablet ?? browserName(device) ?? 'An unknown device'}</strong>
              <span className="block text-base text-ink-2">{`since ${momentText(since, 'en', timeZone)}, last used ${momentText(lastSeen, 'en', timeZone)}`}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

function History({ events, timeZone }: { readonly events: readonly AccountEvent[]; readonly timeZone: string }) {
  return (
    <section aria-labelledby="history" className="grid gap-3">
      <h2 id="history" className="text-2xl">What was done to the account</h2>
      {events.length === 0 ? <p>Nothing yet.</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {events.map(({ id, at, by, text }) => (
            <li key={id} className="py-3"><strong>{text}</strong><span className="block text-base text-ink-2">{`${momentText(at, 'en', timeZone)}, ${by ?? 'the server'}`}</span></li>
          ))}
        </ul>
      )}
    </section>
  )
}

import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { RosterFound, RosterPages } from '@/app/_components/roster-pages'
import { RosterSearch } from '@/app/_components/roster-search'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { Table } from '@/app/_components/ui/table'
import { requireRole } from '@/app/_server/auth/require-role'
import { listInstructors } from '@/app/_server/data/class-instructors'
import { listRoster } from '@/app/_server/data/class-roster'
import { findClass, listClasses } from '@/app/_server/data/classes'
import { rosterOf } from '@/app/_server/data/roster-export'
import { pageId } from '@/app/_server/page-id'
import { readPeopleOptions } from '@/lib/reports/people-options'
import { RosterImport } from './roster-import'
import { StudentButtons } from './student-buttons'
import { TeacherPanel } from './teacher-panel'

export const metadata: Metadata = { title: 'People of a class' }

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Who teaches a class, who is in it, and a roster to fill it with. */
export default async function ClassPeoplePage({ params, searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const found = (await findClass(viewer, pageId((await params).classId))) ?? notFound()
  const asked = readPeopleOptions(await searchParams)
  const [roster, staff, classes, file] = await Promise.all([listRoster(viewer, found.id, asked), listInstructors(viewer), listClasses(viewer), rosterOf(viewer, found.id)])
  const others = classes.filter(({ id }) => id !== found.id).map(({ id, name, term }) => ({ value: id, label: `${name}, ${term.name}` }))
  if (!roster) notFound()
  const { students, active, withdrawn } = roster
  const path = `/program/people/${found.id}`
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={found.term.name} title={`People of ${found.name}`}
        lead={`${active} active ${active === 1 ? 'student' : 'students'}, ${withdrawn} withdrawn.`}
        aside={<LinkButton href="/program/people">All classes</LinkButton>}
      />
      <TeacherPanel classId={found.id} teachers={found.instructors} others={staff.filter(({ id }) => !found.instructors.some((each) => each.id === id))} />
      <RosterImport classId={found.id} />
      <section className="grid gap-3">
        <div className="flex flex-wrap items-end justify-between gap-3">
          <h2 className="text-2xl">Students</h2>
          {active > 0 && <DownloadLink href={`/api/exports/roster?class=${found.id}`}>Download the roster</DownloadLink>}
        </div>
        {file !== null && file.leftOut > 0 && <p>{`The file leaves out ${file.leftOut} whom a roster cannot bring: their account is disabled, or they are staff as well.`}</p>}
        {active + withdrawn > students.length && <RosterSearch path={path} search={asked.search} />}
        {active + withdrawn > students.length && <RosterFound path={path} search={asked.search} found={roster.found} shown={students.length} />}
        {active + withdrawn === 0 ? <EmptyState title="Nobody yet"><p>Bring in a roster above, or let students join with the class code.</p></EmptyState> : students.length === 0 ? <p>No name or sign-in name of this class has all of these words.</p> : (
          <Table
            caption="Students of the class" captionHidden
            columns={[{ key: 'name', head: 'Student' }, { key: 'signIn', head: 'Sign-in name' }, { key: 'booth', head: 'Booth', numeric: true }, { key: 'state', head: 'State' }, { key: 'do', head: 'Change' }]}
            rows={students.map(({ id, name, signInName, booth, withdrawnAt, disabled }) => ({
              key: id,
              cells: [<Link key="name" href={`/program/people/person/${id}`} className="inline-flex min-h-12 items-center underline">{name}</Link>, signInName, booth ?? 'none', [withdrawnAt ? 'withdrawn' : 'active', disabled && 'account disabled'].filter(Boolean).join(', '),
                <StudentButtons key="do" classId={found.id} studentId={id} name={name} withdrawn={withdrawnAt !== null} others={others} />],
            }))}
          />
        )}
        <RosterPages path={path} search={asked.search} before={roster.before} after={roster.after} />
      </section>
    </div>
  )
}

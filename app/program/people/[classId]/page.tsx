import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { Table } from '@/app/_components/ui/table'
import { requireRole } from '@/app/_server/auth/require-role'
import { listInstructors } from '@/app/_server/data/class-instructors'
import { findClass, listClasses } from '@/app/_server/data/classes'
import { listRoster } from '@/app/_server/data/enrolments'
import { rosterOf } from '@/app/_server/data/roster-export'
import { pageId } from '@/app/_server/page-id'
import { RosterImport } from './roster-import'
import { StudentButtons } from './student-buttons'
import { TeacherPanel } from './teacher-panel'

export const metadata: Metadata = { title: 'People of a class' }

type Props = { params: Promise<{ classId: string }> }

/** Who teaches a class, who is in it, and a roster to fill it with. */
export default async function ClassPeoplePage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const found = (await findClass(viewer, pageId((await params).classId))) ?? notFound()
  const [roster, staff, classes, file] = await Promise.all([listRoster(viewer, found.id), listInstructors(viewer), listClasses(viewer), rosterOf(viewer, found.id)])
  const others = classes.filter(({ id }) => id !== found.id).map(({ id, name, term }) => ({ value: id, label: `${name}, ${term.name}` }))
  const active = roster.filter(({ withdrawnAt }) => withdrawnAt === null).length
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={found.term.name} title={`People of ${found.name}`}
        lead={`${active} active ${active === 1 ? 'student' : 'students'}, ${roster.length - active} withdrawn.`}
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
        {roster.length === 0 ? <EmptyState title="Nobody yet"><p>Bring in a roster above, or let students join with the class code.</p></EmptyState> : (
          <Table
            caption="Students of the class" captionHidden
            columns={[{ key: 'name', head: 'Student' }, { key: 'signIn', head: 'Sign-in name' }, { key: 'booth', head: 'Booth', numeric: true }, { key: 'state', head: 'State' }, { key: 'do', head: 'Change' }]}
            rows={roster.map(({ id, name, signInName, booth, withdrawnAt, disabled }) => ({
              key: id,
              cells: [<Link key="name" href={`/program/people/person/${id}`} className="inline-flex min-h-12 items-center underline">{name}</Link>, signInName, booth ?? 'none', [withdrawnAt ? 'withdrawn' : 'active', disabled && 'account disabled'].filter(Boolean).join(', '),
                <StudentButtons key="do" classId={found.id} studentId={id} name={name} withdrawn={withdrawnAt !== null} others={others} />],
            }))}
          />
        )}
      </section>
    </div>
  )
}

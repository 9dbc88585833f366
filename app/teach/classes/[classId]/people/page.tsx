import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { RosterFound, RosterPages } from '@/app/_components/roster-pages'
import { RosterSearch } from '@/app/_components/roster-search'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listRoster, type RosterEntry } from '@/app/_server/data/class-roster'
import { findTaughtClass } from '@/app/_server/data/classes'
import { pageId } from '@/app/_server/page-id'
import { readPeopleOptions } from '@/lib/reports/people-options'
import { StudentAccount } from './student-account'

export const metadata: Metadata = { title: 'People of the class' }

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Who is in a class, and the ways to let a student in who cannot get in. */
export default async function ClassPeoplePage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor')
  const { id, name, instructors } = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const { search, ...page } = readPeopleOptions(await searchParams)
  const { students, found, active, withdrawn, withoutPassword: waiting, before, after } = (await listRoster(viewer, id, { search, ...page })) ?? notFound()
  const path = `/teach/classes/${id}/people`
  const paged = active + withdrawn > students.length
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={name} title="People of the class" lead={`Taught by ${instructors.map((each) => each.name).join(' and ')}.${waiting > 0 ? ` ${waiting} ${waiting === 1 ? 'student has' : 'students have'} no password yet.` : ''}`}
        aside={(
          <>
            {active > 0 && <DownloadLink href={`/api/exports/roster?class=${id}`}>Download the roster</DownloadLink>}
            <LinkButton href={`/teach/classes/${id}`}>Back to the class</LinkButton>
          </>
        )}
      />
      {paged && <RosterSearch path={path} search={search} />}
      {paged && <RosterFound path={path} search={search} found={found} shown={students.length} />}
      {active + withdrawn === 0 ? <EmptyState title="No students yet"><p>Give the class code to your students, or ask the coordinator to bring in a roster.</p></EmptyState> : students.length === 0 ? <p>No name or sign-in name of this class has all of these words.</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {students.map((each) => (
            <StudentAccount
              key={each.id} studentId={each.id} name={each.name} hasPassword={each.hasPassword} hasPin={each.hasPin} open={each.withdrawnAt === null && !each.disabled}
              staff={each.staff} facts={factsOf(each)}
            />
          ))}
        </ul>
      )}
      <RosterPages path={path} search={search} before={before} after={after} />
    </div>
  )
}

function factsOf({ signInName, booth, withdrawnAt, disabled, staff, hasPassword, hasPin }: RosterEntry): string {
  return [
    signInName, booth === null ? 'no booth' : `booth ${booth}`, withdrawnAt && 'withdrawn', disabled && 'account disabled', staff && 'staff as well',
    !hasPassword && 'no password yet', hasPin ? 'has a PIN' : 'no PIN yet',
  ].filter(Boolean).join(', ')
}

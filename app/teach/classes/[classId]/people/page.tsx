import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listRoster } from '@/app/_server/data/enrolments'
import { pageId } from '@/app/_server/page-id'
import { StudentAccount } from './student-account'

export const metadata: Metadata = { title: 'People of the class' }

type Props = { params: Promise<{ classId: string }> }

/** Who is in a class, and the ways to let a student in who cannot get in. */
export default async function ClassPeoplePage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { id, name, instructors } = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const roster = await listRoster(viewer, id)
  const active = roster.filter(({ withdrawnAt }) => withdrawnAt === null)
  const waiting = active.filter(({ hasPassword, disabled, staff }) => !hasPassword && !disabled && !staff).length
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={name} title="People of the class" lead={`Taught by ${instructors.map((each) => each.name).join(' and ')}.${waiting > 0 ? ` ${waiting} ${waiting === 1 ? 'student has' : 'students have'} no password yet.` : ''}`}
        aside={(
          <>
            {active.length > 0 && <DownloadLink href={`/api/exports/roster?class=${id}`}>Download the roster</DownloadLink>}
            <LinkButton href={`/teach/classes/${id}`}>Back to the class</LinkButton>
          </>
        )}
      />
      {roster.length === 0 ? <EmptyState title="No students yet"><p>Give the class code to your students, or ask the coordinator to bring in a roster.</p></EmptyState> : (
        <ul className="divide-y divide-line border-y border-line">
          {roster.map((each) => (
            <StudentAccount
              key={each.id} studentId={each.id} name={each.name} hasPassword={each.hasPassword} hasPin={each.hasPin} open={each.withdrawnAt === null && !each.disabled}
              staff={each.staff} facts={factsOf(each)}
            />
          ))}
        </ul>
      )}
    </div>
  )
}

function factsOf({ signInName, booth, withdrawnAt, disabled, staff, hasPassword, hasPin }: Awaited<ReturnType<typeof listRoster>>[number]): string {
  return [
    signInName, booth === null ? 'no booth' : `booth ${booth}`, withdrawnAt && 'withdrawn', disabled && 'account disabled', staff && 'staff as well',
    !hasPassword && 'no password yet', hasPin ? 'has a PIN' : 'no PIN yet',
  ].filter(Boolean).join(', ')
}

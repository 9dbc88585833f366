import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { agreementAnswer } from '@/lib/reports/agreement-words'
import { AgreementNotes, WIDTH_NOTE } from '@/app/_components/agreement/agreement-notes'
import { OwnEyesReport } from '@/app/_components/agreement/own-eyes-report'
import { StudentEyes } from '@/app/_components/agreement/student-eyes'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { pageId } from '@/app/_server/page-id'
import { MOST_COMPARED } from '@/app/_server/views/agreement'
import { classEyes } from '@/app/_server/views/own-eyes'

type Props = { params: Promise<{ classId: string }> }

/** Read once for the page and its title. */
const find = cache(async (classId: string) => (await findTaughtClass(await requireRole('instructor'), pageId(classId))) ?? notFound())

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `How students see their own welds, ${(await find((await params).classId)).name}` }
}

/** The students of a class against their instructors, together and one by one. */
export default async function ClassEyesPage({ params }: Props) {
  const { id, name } = await find((await params).classId)
  const viewer = await requireRole('instructor')
  const view = await classEyes(viewer, id)
  const none = view.compared.coupons === 0
  const [answer, ...more] = none ? [] : agreementAnswer(view.compared, 'Student and instructor')
  return (
    <div className="grid gap-10">
      <PageHead eyebrow={<Link href={`/teach/classes/${id}`} className="underline underline-offset-4">{name}</Link>} title="How students see their own welds" lead={answer} />
      {none ? <EmptyState title="Nothing to compare yet"><p>Coupons of this class that both the student and an instructor looked at are compared here.</p></EmptyState> : (
        <>
          {more.length > 0 && <div className="-mt-6 grid max-w-prose gap-2">{more.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>}
          <OwnEyesReport compared={view.compared} leanings={view.leanings} units={viewer.units} />
          <StudentEyes students={view.students} units={viewer.units} />
          <AgreementNotes capped={view.capped ? MOST_COMPARED : null} more={[WIDTH_NOTE]} />
        </>
      )}
    </div>
  )
}

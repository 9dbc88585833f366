import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { StudentScreen } from '@/app/_components/student/student-screen'
import { LinkButton } from '@/app/_components/ui/link-button'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { EYE_FRAME } from '@/app/_server/views/eye-view'
import { oneStudent } from '@/app/_server/views/one-student'
import { studentName } from '@/app/_server/views/student-record'
import { readStudentAsked } from '@/lib/schemas/student-asked'
import { removeStaffNote, saveStaffNote } from '@/app/teach/students/[studentId]/actions'

type Props = { params: Promise<{ studentId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const viewer = await requireRole('coordinator')
  return { title: (await studentName(viewer, pageId((await params).studentId))) ?? notFound() }
}

/** One student as the coordinator sees them: the instructor's page without what only an instructor does. */
export default async function StudentPage({ params, searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const asked = readStudentAsked(await searchParams)
  const known = (await oneStudent(viewer, pageId((await params).studentId), asked, new Date())) ?? notFound()
  return (
    <StudentScreen
      known={known} room="program" locale={viewer.locale} eyeFrame={EYE_FRAME} remarksAfter={asked.remarksAfter} notes={{ save: saveStaffNote, takeDown: removeStaffNote }}
      account={<Account personId={known.record.student.id} signInName={known.record.student.signInName} />}
    />
  )
}

function Account({ personId, signInName }: { readonly personId: string; readonly signInName: string }) {
  return (
    <section aria-labelledby="account" className="grid content-start gap-3">
      <h2 id="account" className="text-2xl">Account</h2>
      <p>Signs in as <strong>{signInName}</strong>.</p>
      <div><LinkButton href={`/program/people/person/${personId}`}>Open the account</LinkButton></div>
    </section>
  )
}

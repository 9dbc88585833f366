import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { StudentScreen } from '@/app/_components/student/student-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { EYE_FRAME } from '@/app/_server/views/eye-view'
import { oneStudent } from '@/app/_server/views/one-student'
import { studentName } from '@/app/_server/views/student-record'
import { readStudentAsked } from '@/lib/schemas/student-asked'
import { removeStaffNote, saveStaffNote } from './actions'
import { ResetPasswordPanel } from './reset-password-panel'

type Props = { params: Promise<{ studentId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const viewer = await requireRole('instructor')
  return { title: (await studentName(viewer, pageId((await params).studentId))) ?? notFound() }
}

/** One student as their instructor sees them. */
export default async function StudentPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor')
  const asked = readStudentAsked(await searchParams)
  const known = (await oneStudent(viewer, pageId((await params).studentId), asked, new Date())) ?? notFound()
  const { student, name } = known.record
  return (
    <StudentScreen
      known={known} room="teach" locale={viewer.locale} eyeFrame={EYE_FRAME} remarksAfter={asked.remarksAfter} notes={{ save: saveStaffNote, takeDown: removeStaffNote }}
      account={<ResetPasswordPanel studentId={student.id} name={name} signInName={student.signInName} />}
    />
  )
}

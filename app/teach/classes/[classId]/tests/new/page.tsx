import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass, listClassStudents } from '@/app/_server/data/classes'
import { listClassExercises } from '@/app/_server/data/exercises'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { readinessView } from '@/app/_server/views/readiness-view'
import { specimensNeeded } from '@/lib/qualification/thickness'
import { localDate } from '@/lib/reports/calendar'
import { TestForm } from './test-form'

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata: Metadata = { title: 'Record a test' }

export default async function NewTestPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor')
  const { student: studentId, exercise: exerciseId } = await searchParams
  const taught = await findTaughtClass(viewer, pageId((await params).classId))
  if (!taught || typeof studentId !== 'string' || typeof exerciseId !== 'string') return notFound()
  const [students, exercises, program, account] = await Promise.all([
    listClassStudents(viewer, taught.id), listClassExercises(viewer, taught.id), findProgram(viewer), ownAccount(viewer),
  ])
  const student = students.find(({ id }) => id === studentId)
  const exercise = exercises.find(({ exercise: { id } }) => id === exerciseId)?.exercise
  if (!student || !exercise || student.id === viewer.personId) return notFound()
  const readiness = await readinessView(viewer, { studentId: student.id, exerciseId: exercise.id }, new Date())
  const needed = specimensNeeded({ type: exercise.weldType, thicknessMm: exercise.plateThicknessMm, filletPlate: 't-joint' }, program.units)
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={exercise.title} title={`Record a test: ${student.givenName} ${student.familyName}`} lead={readiness?.answer} />
      <TestForm
        classId={taught.id} studentId={student.id} exerciseId={exercise.id} personId={viewer.personId} who={{ signInName: account.signInName, program: program.slug }}
        weldType={exercise.weldType} electrodeClass={exercise.electrodeClass} needed={needed} units={viewer.units} today={localDate(new Date(), program.timeZone)}
      />
    </div>
  )
}

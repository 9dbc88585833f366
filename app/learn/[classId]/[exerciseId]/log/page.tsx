import type { Metadata } from 'next'
import { notFound, redirect } from 'next/navigation'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { exercisePractice } from '@/app/_server/views/exercise-practice'
import { logView } from '@/app/_server/views/log-view'
import { LogForm } from './log-form'

export const metadata: Metadata = { title: 'Log a coupon' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

export default async function LogPage({ params }: Props) {
  const viewer = await requireRole('student')
  const { classId, exerciseId } = await params
  const practice = await exercisePractice(viewer, pageId(classId), pageId(exerciseId))
  if (!practice) notFound()
  if (!practice.confirmed) redirect(`/learn/${practice.classRecord.id}/${practice.exercise.id}`)
  const [view, account, program] = await Promise.all([logView(viewer, practice.exercise), ownAccount(viewer), findProgram(viewer)])
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={practice.exercise.title} title={say(learn, viewer.locale, 'logTitle')} />
      <LogForm
        locale={viewer.locale} units={viewer.units} personId={viewer.personId} who={{ signInName: account.signInName, program: program.slug }}
        classId={practice.classRecord.id} exerciseId={practice.exercise.id} {...view}
      />
    </div>
  )
}

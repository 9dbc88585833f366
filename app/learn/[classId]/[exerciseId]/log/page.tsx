import type { Metadata } from 'next'
import { notFound, redirect } from 'next/navigation'
import { cache } from 'react'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { exercisePractice } from '@/app/_server/views/exercise-practice'
import { logView } from '@/app/_server/views/log-view'
import { ownDoor } from '@/app/_server/views/outbox-person'
import { LogForm } from './log-form'

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** Read once for the page and its title. */
const load = cache(async (classId: string, exerciseId: string) => {
  const viewer = await requireRole('student')
  const practice = await exercisePractice(viewer, pageId(classId), pageId(exerciseId))
  return practice ? { viewer, practice } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { classId, exerciseId } = await params
  const { viewer, practice } = await load(classId, exerciseId)
  return { title: `${say(learn, viewer.locale, 'logTitle')}: ${practice.exercise.title}` }
}

export default async function LogPage({ params }: Props) {
  const { classId, exerciseId } = await params
  const { viewer, practice } = await load(classId, exerciseId)
  if (!practice.confirmed) redirect(`/learn/${practice.classRecord.id}/${practice.exercise.id}`)
  const [view, account, program] = await Promise.all([logView(viewer, practice.exercise), ownAccount(viewer), findProgram(viewer)])
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={practice.exercise.title} title={say(learn, viewer.locale, 'logTitle')} />
      <LogForm
        locale={viewer.locale} units={viewer.units} personId={viewer.personId} who={{ signInName: account.signInName, program: program.slug }} door={ownDoor(viewer)}
        classId={practice.classRecord.id} exerciseId={practice.exercise.id} exerciseVersion={practice.exercise.version} title={practice.exercise.title} {...view}
      />
    </div>
  )
}

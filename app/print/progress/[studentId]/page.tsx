import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { print } from '@/lib/language/print'
import { say } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { Sheet } from '@/app/print/_parts/sheet'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { progressSummary } from '@/app/_server/views/progress-summary'
import { SummaryBody } from './summary-body'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(print, await readerLocale(), 'summary') })

type Props = { params: Promise<{ studentId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** One student's progress on one sheet: for the student, their instructors and the coordinator. */
export default async function ProgressSummaryPage({ params, searchParams }: Props) {
  const viewer = await requireRole('student', 'instructor', 'coordinator')
  const { locale } = viewer
  const { paper, exercise } = await searchParams
  const chosen = typeof exercise === 'string' ? exercise : undefined
  const sheet = paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)
  const summary = await progressSummary(viewer, pageId((await params).studentId), { paper: sheet, exerciseId: chosen }, new Date())
  if (!summary) notFound()
  return (
    <Sheet paper={sheet} query={chosen ? { exercise: chosen } : {}} locale={locale} foot={summary.foot} whole>
      <SummaryBody summary={summary} locale={locale} />
    </Sheet>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { classPaper } from '@/lib/language/class-paper'
import { say } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { PaperPages } from '@/app/print/_parts/paper-pages'
import { SummaryBody } from '@/app/print/progress/[studentId]/summary-body'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { classProgress } from '@/app/_server/views/class-progress'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(classPaper, await readerLocale(), 'summaries') })

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Every student of a class in one document, a sheet each. */
export default async function ClassProgressPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor', 'coordinator')
  const { locale } = viewer
  const { paper } = await searchParams
  const sheet = paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)
  const progress = (await classProgress(viewer, pageId((await params).classId), sheet, new Date())) ?? notFound()
  const pages = progress.summaries.map(({ studentId, summary }) => ({ key: studentId, foot: summary.foot, body: <SummaryBody summary={summary} locale={locale} /> }))
  const empty = { key: 'empty', body: <><h1 className="text-4xl leading-none">{progress.title}</h1><p>{say(classPaper, locale, 'noStudents')}</p></> }
  return <PaperPages paper={sheet} locale={locale} printedAt={progress.printedAt} pages={pages.length > 0 ? pages : [empty]} />
}

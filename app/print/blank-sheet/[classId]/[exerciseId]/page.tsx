import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { blankSheet as words } from '@/lib/language/blank-sheet'
import { say } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { PaperPages } from '@/app/print/_parts/paper-pages'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { blankSheet } from '@/app/_server/views/blank-sheet'
import { BlankBody } from './blank-body'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(words, await readerLocale(), 'title') })

type Props = { params: Promise<{ classId: string; exerciseId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** An inspection by hand, for when the power is out: a page for each language the class reads. */
export default async function BlankSheetPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor', 'coordinator')
  const { classId, exerciseId } = await params
  const { paper, languages } = await searchParams
  const sheet = (await blankSheet(viewer, pageId(classId), pageId(exerciseId), typeof languages === 'string' ? languages : undefined, new Date())) ?? notFound()
  return (
    <PaperPages
      paper={paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)} locale={viewer.locale} printedAt={sheet.printedAt}
      pages={sheet.languages.map((language) => ({ key: language.locale, body: <BlankBody sheet={sheet} {...language} />, foot: language.foot }))}
    />
  )
}

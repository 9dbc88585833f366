import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { classPaper } from '@/lib/language/class-paper'
import { say, type Locale } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { PaperPages } from '@/app/print/_parts/paper-pages'
import { PaperTable } from '@/app/print/_parts/paper-table'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { classSheet, type ClassSheet, type ClassSheetPage, type SheetCell } from '@/app/_server/views/class-sheet'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(classPaper, await readerLocale(), 'classSheet') })

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** The class board on paper: students by exercises, for its instructors. */
export default async function ClassSheetPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor', 'coordinator')
  const { locale } = viewer
  const { paper } = await searchParams
  const sheet = (await classSheet(viewer, pageId((await params).classId), new Date())) ?? notFound()
  const empty = { key: 'empty', body: <><Head sheet={sheet} locale={locale} first /><p>{say(classPaper, locale, sheet.students === 0 ? 'noStudents' : 'noExercises')}</p></> }
  const pages = sheet.pages.map((page, i) => ({
    key: String(i),
    body: <><Head sheet={sheet} locale={locale} first={i === 0} /><Grid page={page} locale={locale} /><p className="text-sm leading-snug">{say(classPaper, locale, 'sheetNote')}</p></>,
  }))
  return <PaperPages paper={paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)} locale={locale} printedAt={sheet.printedAt} pages={pages.length === 0 ? [empty] : pages} />
}

function Head({ sheet, locale, first }: { readonly sheet: ClassSheet; readonly locale: Locale; readonly first: boolean }) {
  return (
    <header className="border-b-2 border-ink pb-2">
      <p className="eyebrow">{say(classPaper, locale, 'classSheet')}</p>
      {first ? <h1 className="text-3xl leading-none">{sheet.title}</h1> : <p className="font-head text-3xl leading-none font-semibold">{sheet.title}</p>}
      <p className="mt-1 leading-tight">{sheet.facts.join(' · ')}</p>
    </header>
  )
}

function Grid({ page, locale }: { readonly page: ClassSheetPage; readonly locale: Locale }) {
  const told = (key: keyof typeof classPaper.en): string => say(classPaper, locale, key)
  return (
    <PaperTable
      caption={told('classSheet')} captionHidden broad
      columns={[
        { key: 'student', head: told('student') }, { key: 'booth', head: told('booth'), numeric: true },
        ...page.exercises.map(({ id, title, wire }) => ({ key: id, head: <>{title}<span className="block text-sm font-normal">{wire}</span></> })),
      ]}
      rows={page.rows.map((row) => ({ key: row.key, cells: [row.name, row.booth ?? '–', ...row.cells.map((cell) => <Cell key={cell.exerciseId} cell={cell} locale={locale} />)] }))}
    />
  )
}

const BAR = 40

function Cell({ cell, locale }: { readonly cell: SheetCell; readonly locale: Locale }) {
  const { probability, text, spoken } = cell.standing
  return (
    <>
      {cell.logged > 0 && (
        <>
          <span className="flex items-center gap-1 font-bold">
            <span aria-hidden="true">{text}</span><span className="sr-only">{spoken}</span>
            {probability !== null && (
              <svg viewBox={`0 0 ${BAR} 8`} aria-hidden="true" className="h-2 w-10" fill="none" stroke="currentColor">
                <rect x={0.5} y={0.5} width={BAR - 1} height={7} />
                <rect x={0.5} y={0.5} width={(BAR - 1) * probability} height={7} fill="currentColor" />
              </svg>
            )}
          </span>
          <span className="block text-sm">{say(classPaper, locale, 'accepted', { a: cell.accepted, b: cell.inspected })}, {say(classPaper, locale, 'logged', { n: cell.logged })}</span>
        </>
      )}
      {cell.logged === 0 && <span>{say(classPaper, locale, 'notStarted')}</span>}
      {cell.unsigned && <span className="ml-1 border border-ink px-1 text-sm font-bold"><span aria-hidden="true">{say(classPaper, locale, 'unsignedMark')}</span><span className="sr-only">{say(classPaper, locale, 'unsigned')}</span></span>}
    </>
  )
}

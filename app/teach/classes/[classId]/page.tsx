import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { BoardForm } from '@/app/_components/board/board-form'
import { HeatBoard } from '@/app/_components/board/heat-board'
import { NeedsList } from '@/app/_components/board/needs-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { HeatLegend } from '@/app/_components/ui/heat-legend'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { pageId } from '@/app/_server/page-id'
import { classBoard, type ClassBoard } from '@/app/_server/views/class-board'
import { boardAddress, readBoardOptions } from '@/lib/reports/board-options'
import { ClassCodePanel } from './class-code-panel'
import { QueueSection } from './queue-section'

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Read once for the page and its title. */
const find = cache(async (classId: string) => (await findTaughtClass(await requireRole('instructor'), pageId(classId))) ?? notFound())

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await find((await params).classId)).name }
}

export default async function ClassPage({ params, searchParams }: Props) {
  const { id } = await find((await params).classId)
  const options = readBoardOptions(await searchParams)
  const board = (await classBoard(await requireRole('instructor'), id, options, new Date())) ?? notFound()
  const path = `/teach/classes/${id}`
  return (
    <div className="grid gap-8">
      <Head board={board} path={path} />
      {!options.projector && <NeedsList rows={board.needs} />}
      <div className="grid gap-8 xl:grid-cols-[20rem_1fr]">
        <QueueSection board={board} path={path} />
        <StandingSection board={board} path={path} />
      </div>
      {!options.projector && <ClassCodePanel classId={id} code={board.code} />}
      <p className="text-base text-ink-2">The chance is an estimate from practice coupons. You decide who tests. Nobody is ranked by it.</p>
    </div>
  )
}

function Head({ board: { classRecord, counts, first, options }, path }: { readonly board: ClassBoard; readonly path: string }) {
  const firstLabel = options.queue === 'booth' && first?.booth ? `Look at booth ${first.booth}` : 'Look at the oldest'
  return (
    <PageHead
      eyebrow={[classRecord.archived && 'Archived', classRecord.term.name, classRecord.meets].filter(Boolean).join(' · ')} title={classRecord.name} lead={waitingText(counts)}
      aside={options.projector ? <LinkButton href={boardAddress(path, options, { projector: false })}>Show names again</LinkButton> : (
        <>
          {first && <LinkButton kind="primary" href={first.href}>{firstLabel}</LinkButton>}
          <LinkButton href={`${path}/people`}>People</LinkButton>
          <LinkButton href={`${path}/notes`}>Notes</LinkButton>
          <LinkButton href={`${path}/cautions`}>Cautions</LinkButton>
          <LinkButton href={`/teach/course/${classRecord.id}`}>Exercises</LinkButton>
          <LinkButton href={`${path}/tests`}>Tests</LinkButton>
          {!classRecord.archived && <LinkButton href={`/teach/studies/new?class=${classRecord.id}`}>Gauge study</LinkButton>}
          <LinkButton href={`${path}/tablet`}>Shared tablet</LinkButton>
          <LinkButton href={`${path}/paper`}>Paper</LinkButton>
          <LinkButton href={boardAddress(path, options, { projector: true })}>For the projector</LinkButton>
        </>
      )}
    />
  )
}

function waitingText({ coupons, looks }: ClassBoard['counts']): string {
  const asked = looks === 0 ? '' : ` ${looks} ${looks === 1 ? 'student wants' : 'students want'} you at the booth.`
  if (coupons === 0) return asked === '' ? 'Nothing waits for you.' : asked.trim()
  return `${coupons} ${coupons === 1 ? 'coupon waits' : 'coupons wait'} for your look.${asked}`
}

const CAPTION = 'Chance of passing the next test coupon, by student and exercise'

function StandingSection({ board, path }: { readonly board: ClassBoard; readonly path: string }) {
  const { options, choices, columns, rows } = board
  const { projector } = options
  return (
    <section aria-labelledby="standing" className="grid min-w-0 content-start gap-3">
      <h2 id="standing" className="text-2xl">Where everyone stands</h2>
      {board.students === 0 ? <EmptyState title="No students yet"><p>Give the class code to your students; they appear here as they join.</p></EmptyState> : (
        <>
          <details open={isFiltered(board)}>
            <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Sort and filter</summary>
            <BoardForm path={path} options={options} processes={choices.processes} exercises={choices.exercises} />
          </details>
          {rows.length === 0 || columns.length === 0 ? <p>Nothing to show with these settings. <a href={path}>Show the whole class</a></p> : <HeatBoard caption={CAPTION} columns={columns} rows={rows} projector={projector} />}
          <HeatLegend words={{ title: 'Chance of passing the next test coupon', none: 'no estimate yet', under: 'under', andUp: 'and up', waiting: 'waiting for you' }} />
        </>
      )}
    </section>
  )
}

const isFiltered = ({ options, rows, students }: ClassBoard): boolean => options.sort !== 'booth' || options.exercise !== null || options.process !== null || rows.length < students

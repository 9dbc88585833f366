import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { HeatBoard } from '@/app/_components/board/heat-board'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { HeatLegend } from '@/app/_components/ui/heat-legend'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { classBoard } from '@/app/_server/views/class-board'
import { ClassCodePanel } from './class-code-panel'

type Props = { params: Promise<{ classId: string }> }

/** Read once for the page and its title. */
const load = cache(async (classId: string) => (await classBoard(await requireRole('instructor'), pageId(classId))) ?? notFound())

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await load((await params).classId)).classRecord.name }
}

export default async function ClassPage({ params }: Props) {
  const board = await load((await params).classId)
  const { classRecord, waiting } = board
  const first = waiting[0]
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={[classRecord.term.name, classRecord.meets].filter(Boolean).join(' · ')} title={classRecord.name}
        lead={waiting.length === 0 ? 'Nothing waits for you.' : `${waiting.length} ${waiting.length === 1 ? 'coupon waits' : 'coupons wait'} for your look.`}
        aside={first && <LinkButton kind="primary" href={`/teach/coupons/${first.id}`}>Look at the oldest</LinkButton>}
      />
      <div className="grid gap-8 xl:grid-cols-[20rem_1fr]">
        <section className="grid content-start gap-3">
          <h2 className="text-2xl">Waiting for you</h2>
          {waiting.length === 0 ? <p className="text-ink-2">When a student sends a coupon it appears here.</p> : (
            <ul className="grid gap-x-8 border-t border-line md:grid-cols-2 xl:grid-cols-1">
              {waiting.map((coupon) => (
                <li key={coupon.id} className="border-b border-line">
                  <Link href={`/teach/coupons/${coupon.id}`} className="ring-inside flex min-h-12 items-center gap-3 py-2 no-underline hover:bg-plate">
                    <span className="figures w-8 shrink-0 text-2xl leading-none"><span className="sr-only">Booth </span>{coupon.booth ?? '–'}</span>
                    <span className="min-w-0">
                      <span className="font-bold underline underline-offset-4">{coupon.student.name}</span>
                      <span className="block text-base leading-snug text-ink-2">{coupon.exerciseTitle}, {`no.\u00a0${coupon.number}`}, {coupon.sinceText}</span>
                      {coupon.takenBy && <span className="block text-base leading-snug">{coupon.takenBy.self ? 'You have it open.' : `${coupon.takenBy.name} has it open.`}</span>}
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          )}
        </section>
        <section className="grid min-w-0 content-start gap-3">
          <h2 className="text-2xl">Where everyone stands</h2>
          {board.rows.length === 0 ? <EmptyState title="No students yet"><p>Give the class code to your students; they appear here as they join.</p></EmptyState> : (
            <>
              <HeatBoard
                caption="Chance of passing the next test coupon, by student and exercise" columns={board.columns}
                rows={board.rows.map((row) => ({ key: row.student.id, booth: row.student.booth, name: row.name, lastCoupon: row.lastSeen, href: `/teach/students/${row.student.id}`, cells: row.cells }))}
              />
              <HeatLegend words={{ title: 'Chance of passing the next test coupon', none: 'no estimate yet', under: 'under', andUp: 'and up', waiting: 'waiting for you' }} />
            </>
          )}
        </section>
      </div>
      <ClassCodePanel classId={classRecord.id} code={board.code} />
      <p className="text-base text-ink-2">The chance is an estimate from practice coupons. You decide who tests. Nobody is ranked by it.</p>
    </div>
  )
}

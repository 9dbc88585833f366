import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { LiveLine } from '@/app/_components/board/live-line'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { gradingGrid } from '@/app/_server/views/grading-grid'
import { door } from '@/lib/language/door'
import { GradingGrid } from './grading-grid'
import { GridKeys } from './grid-keys'

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** Read once for the page and its title. */
const load = cache(async (classId: string, exerciseId: string) => {
  const viewer = await requireRole('instructor')
  const grid = await gradingGrid(viewer, { classId: pageId(classId), exerciseId: pageId(exerciseId) }, new Date())
  return grid ? { viewer, grid } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { classId, exerciseId } = await params
  return { title: `Grade by keyboard: ${(await load(classId, exerciseId)).grid.title}` }
}

/** All coupons of one exercise that wait, as rows to fill in by keyboard. Nothing the students read is on this page. */
export default async function GridPage({ params }: Props) {
  const { classId, exerciseId } = await params
  const { viewer, grid } = await load(classId, exerciseId)
  const [program, account] = await Promise.all([findProgram(viewer), ownAccount(viewer)])
  const first = grid.groups.flatMap(({ coupons }) => coupons).find(({ takenBy }) => takenBy === null)
  const waiting = grid.groups.reduce((sum, { coupons }) => sum + coupons.length, 0)
  return (
    <div className="grid gap-6">
      <PageHead
        eyebrow={grid.classRecord.name} title={grid.title}
        lead={waiting === 0 ? 'Nothing of this exercise waits for you.' : `${waiting} ${waiting === 1 ? 'coupon waits' : 'coupons wait'}. Type what the gauge says, row by row.`}
      />
      <LiveLine events={`/api/events/classes/${grid.classRecord.id}`} state={grid.state} asOf={grid.asOf} address={grid.address} />
      {first && (
        <div className="grid gap-2 sm:hidden">
          <p>The grid wants a keyboard and a wide screen. With thumbs it is quicker coupon by coupon.</p>
          <div><LinkButton href={`/teach/coupons/${first.id}`}>Grade coupon by coupon</LinkButton></div>
        </div>
      )}
      <GridKeys snippets={grid.snippets.slice(0, 9).map(({ body }) => body)} />
      <GradingGrid
        groups={grid.groups} snippets={grid.snippets} who={{ signInName: account.signInName, program: program.slug }}
        draftKey={`toeline.grid.${viewer.personId}.${classId}.${exerciseId}`}
      />
      {waiting === 0 && <EmptyState title="Nothing waits here"><p>When a student of the class sends a coupon of this exercise, it appears here.</p></EmptyState>}
      <div id="after-grid" tabIndex={-1}><LinkButton href={`/teach/classes/${grid.classRecord.id}`}>Back to the class</LinkButton></div>
      <p className="text-base text-ink-2">{door.en.practiceRecord}</p>
    </div>
  )
}

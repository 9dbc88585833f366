import type { Metadata } from 'next'
import { StudyList } from '@/app/_components/study/study-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { taughtStudyLists } from '@/app/_server/views/gauge-studies'

export const metadata: Metadata = { title: 'Gauge studies' }

const LEAD = 'Several people measure the same coupons more than once. It shows how much of the spread in widths comes from the measuring, and from whom.'

export default async function StudiesPage() {
  const { waiting, open, closed } = await taughtStudyLists(await requireRole('instructor'))
  return (
    <div className="grid gap-10">
      <PageHead title="Gauge studies" lead={LEAD} aside={<LinkButton kind="primary" href="/teach/studies/new">Open a study</LinkButton>} />
      {waiting.length + open.length + closed.length === 0 && (
        <EmptyState title="No studies yet"><p>Take five to ten coupons of one exercise, and two or three instructors of the class. Each reads every coupon in two rounds, in an order of their own.</p></EmptyState>
      )}
      <StudyList id="waiting" title="Waiting for your readings" rows={waiting} />
      <StudyList id="open" title="Open" rows={open} />
      <StudyList id="closed" title="Closed" rows={closed} />
    </div>
  )
}

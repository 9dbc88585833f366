import type { Metadata } from 'next'
import { StudyList } from '@/app/_components/study/study-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { programStudyLists } from '@/app/_server/views/gauge-studies'

export const metadata: Metadata = { title: 'Gauge studies' }

export default async function ProgramStudiesPage() {
  const { open, closed } = await programStudyLists(await requireRole('coordinator'))
  return (
    <div className="grid gap-10">
      <PageHead title="Gauge studies" lead="The same coupons, measured by several instructors more than once: how much of the spread in widths comes from the measuring." />
      {open.length + closed.length === 0 && (
        <EmptyState title="No studies yet"><p>An instructor opens one under “Gauge studies”. Who reads are the instructors of the class: a class needs two of them.</p></EmptyState>
      )}
      <StudyList id="open" title="Open" rows={open} />
      <StudyList id="closed" title="Closed" rows={closed} />
    </div>
  )
}

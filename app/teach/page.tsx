import type { Metadata } from 'next'
import Link from 'next/link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findProgram } from '@/app/_server/data/program'
import { listElsewhere } from '@/app/_server/data/second-readings'
import { taughtClasses } from '@/app/_server/views/class-board'
import { ElsewhereList } from './elsewhere-list'

export async function generateMetadata(): Promise<Metadata> {
  await requireRole('instructor')
  return { title: 'Classes' }
}

export default async function TeachPage() {
  const viewer = await requireRole('instructor')
  const [classes, elsewhere, { timeZone }] = await Promise.all([taughtClasses(viewer), listElsewhere(viewer), findProgram(viewer)])
  const waiting = classes.reduce((sum, each) => sum + each.waiting, 0)
  return (
    <div className="grid gap-8">
      {classes.length === 0 ? <EmptyState title="You teach no class yet"><p>The coordinator assigns instructors to classes.</p></EmptyState> : (
        <div className="grid gap-6">
          <PageHead title="Your classes" lead={waiting === 0 ? 'Nothing waits for you.' : `${waiting} ${waiting === 1 ? 'coupon waits' : 'coupons wait'} for your look.`} aside={<><LinkButton href="/teach/agreement">Your eye and the others’</LinkButton><LinkButton href="/teach/studies">Gauge studies</LinkButton></>} />
          <ul className="divide-y divide-line border-y border-line">
            {classes.map(({ record, students, waiting: here }) => (
              <li key={record.id} className="flex flex-wrap items-center justify-between gap-4 py-4">
                <div>
                  <h2 className="text-2xl"><Link href={`/teach/classes/${record.id}`} className="inline-flex min-h-12 items-center">{record.name}</Link></h2>
                  <p className="text-ink-2">{[record.archived && 'Archived', record.term.name, record.meets, record.room, `${students} students`].filter(Boolean).join(' · ')}</p>
                </div>
                <LinkButton kind={here > 0 ? 'primary' : 'secondary'} href={`/teach/classes/${record.id}`}>{here > 0 ? `${here} waiting` : 'Open the class'}</LinkButton>
              </li>
            ))}
          </ul>
        </div>
      )}
      <ElsewhereList coupons={elsewhere} timeZone={timeZone} />
    </div>
  )
}

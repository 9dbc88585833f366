import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listPinHolders } from '@/app/_server/data/pins'
import { findProgram } from '@/app/_server/data/program'
import { listTablets } from '@/app/_server/data/shared-tablets'
import { pageId } from '@/app/_server/page-id'
import { dateText, momentText } from '@/lib/reports/dates'
import { OpenTabletForm } from './open-tablet-form'
import { PinList } from './pin-list'
import { TabletList } from './tablet-list'

export const metadata: Metadata = { title: 'Shared tablets' }

type Props = { params: Promise<{ classId: string }> }

/** The tablets a class shares, and the PINs of its students. */
export default async function TabletsPage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const classRecord = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const [tablets, students, { timeZone }] = await Promise.all([listTablets(viewer, classRecord.id), listPinHolders(viewer, classRecord.id), findProgram(viewer)])
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={classRecord.name} title="Shared tablets"
        lead="On a shared tablet your students sign in by name and PIN. It signs them out after five minutes without a touch."
        aside={<LinkButton href={`/teach/classes/${classRecord.id}`}>Back to the class</LinkButton>}
      />
      <section className="grid gap-4">
        <h2 className="text-2xl">Open one on this device</h2>
        <OpenTabletForm classId={classRecord.id} />
      </section>
      <section className="grid gap-4">
        <h2 className="text-2xl">Open now</h2>
        <TabletList
          tablets={tablets.map((tablet) => ({
            id: tablet.id, name: tablet.name,
            text: [
              `opened by ${tablet.openedBy}, ${momentText(tablet.openedAt, 'en', timeZone)}`,
              tablet.lastUsedAt ? `last used ${momentText(tablet.lastUsedAt, 'en', timeZone)}` : 'not used yet',
              `closes by itself on ${dateText(tablet.expiresAt, 'en', timeZone)}`,
            ].join('; '),
          }))}
        />
      </section>
      <section className="grid gap-4">
        <h2 className="text-2xl">PINs</h2>
        <p className="max-w-prose">Students set their own PIN under Account. You can give one a new PIN here; read it out, it is shown once.</p>
        <PinList students={students} />
      </section>
    </div>
  )
}

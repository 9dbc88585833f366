import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listUnsignedCautions } from '@/app/_server/data/safety'
import { pageId } from '@/app/_server/page-id'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'

export const metadata: Metadata = { title: 'Cautions not confirmed' }

type Props = { params: Promise<{ classId: string }> }

/** Who has still to confirm the cautions of which exercise this term. Until then no coupon of it is taken. */
export default async function CautionsPage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const classRecord = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const exercises = await listUnsignedCautions(viewer, classRecord.id, CAUTIONS_VERSION)
  return (
    <div className="grid gap-6">
      <PageHead
        eyebrow={`${classRecord.name} · ${classRecord.term.name}`} title="Cautions not confirmed"
        lead="A student confirms an exercise’s cautions once a term, before its first coupon. Until then no coupon of it is taken."
        aside={<LinkButton href={`/teach/classes/${classRecord.id}`}>Back to the class</LinkButton>}
      />
      {exercises.length === 0 ? <p>This class has no exercises yet.</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {exercises.map(({ exerciseId, title, students }) => (
            <li key={exerciseId} className="grid gap-1 py-3 md:grid-cols-[22rem_1fr] md:gap-6">
              <h2 className="text-xl">{title}</h2>
              {students.length === 0 ? <p>Everyone has confirmed.</p> : (
                <p><strong>{students.length} to go:</strong> {students.map(({ name, booth }) => (booth === null ? name : `${name} (booth ${booth})`)).join(', ')}</p>
              )}
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

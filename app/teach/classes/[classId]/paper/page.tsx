import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listClassExercises } from '@/app/_server/data/exercises'
import { pageId } from '@/app/_server/page-id'

export const metadata: Metadata = { title: 'Paper for the class' }

type Props = { params: Promise<{ classId: string }> }

/** What can be printed for a class, in one place. */
export default async function PaperPage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { id, name } = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const exercises = await listClassExercises(viewer, id)
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={name} title="Paper for the class" lead="Laid out for Letter or A4, in black and white."
        aside={<LinkButton href={`/teach/classes/${id}`}>Back to the class</LinkButton>}
      />
      <div className="flex flex-wrap gap-2">
        <LinkButton href={`/print/class-sheet/${id}`}>Class sheet</LinkButton>
        <LinkButton href={`/print/code-sheet/${id}`}>Class code for the board</LinkButton>
        <LinkButton href={`/print/class/${id}`}>Progress summary of every student</LinkButton>
      </div>
      <section className="grid gap-3" aria-labelledby="by-exercise">
        <h2 id="by-exercise" className="text-2xl">By exercise</h2>
        {exercises.length === 0 ? <p>No exercises in this class yet.</p> : (
          <ul className="divide-y divide-line border-y border-line">
            {exercises.map(({ exercise }) => (
              <li key={exercise.id} className="flex flex-wrap items-center justify-between gap-2 py-2">
                <strong>{exercise.title}</strong>
                <span className="flex flex-wrap gap-2">
                  <LinkButton href={`/print/tags/${id}/${exercise.id}`} aria-label={`Coupon tags, ${exercise.title}`}>Coupon tags</LinkButton>
                  <LinkButton href={`/print/blank-sheet/${id}/${exercise.id}`} aria-label={`Blank inspection sheet, ${exercise.title}`}>Blank inspection sheet</LinkButton>
                  <LinkButton href={`/print/booth-card/${exercise.id}`} aria-label={`Booth card, ${exercise.title}`}>Booth card</LinkButton>
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </div>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass } from '@/app/_server/data/classes'
import { listClassesToCopy, listProgramExercises } from '@/app/_server/data/course'
import { listClassExercises } from '@/app/_server/data/exercises'
import { pageId } from '@/app/_server/page-id'
import { LIBRARY } from '@/lib/course/library'
import { AddForms } from './add-forms'
import { ListRow } from './list-row'

export const metadata: Metadata = { title: 'Exercises of the class' }

type Props = { params: Promise<{ classId: string }> }

/** The exercises of a class in their order, what opens what, and where more come from. */
export default async function CoursePage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { id, name } = (await findTaughtClass(viewer, pageId((await params).classId))) ?? notFound()
  const [list, program, classes] = await Promise.all([listClassExercises(viewer, id), listProgramExercises(viewer), listClassesToCopy(viewer)])
  const there = new Set(list.map(({ exercise }) => exercise.id))
  const choices = list.map(({ exercise }) => ({ value: exercise.id, label: exercise.title }))
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={name} title="Exercises of the class" lead="In the order students see them. Taking one off keeps it and every coupon of it."
        aside={<LinkButton href={`/teach/classes/${id}`}>Back to the class</LinkButton>}
      />
      <section aria-labelledby="list" className="grid gap-3">
        <h2 id="list" className="text-2xl">The list</h2>
        {list.length === 0 ? <EmptyState title="No exercises yet"><p>Add some below, or copy another class’s list.</p></EmptyState> : (
          <ol className="divide-y divide-line border-y border-line">
            {list.map(({ exercise, opensAfterId }, index) => (
              <ListRow
                key={`${exercise.id} ${opensAfterId}`} classId={id} exerciseId={exercise.id} title={exercise.title} place={index + 1} last={index === list.length - 1}
                opensAfterId={opensAfterId ?? ''} others={choices.filter(({ value }) => value !== exercise.id)}
              />
            ))}
          </ol>
        )}
      </section>
      <section aria-labelledby="more" className="grid gap-4">
        <h2 id="more" className="text-2xl">Add exercises</h2>
        <AddForms
          classId={id} program={program.filter((each) => !there.has(each.id)).map((each) => ({ value: each.id, label: `${each.process}: ${each.title}` }))}
          library={LIBRARY.map(({ key, facts }) => ({ value: key, label: `${facts.process}: ${facts.title}` }))}
          classes={classes.filter((each) => each.id !== id).map((each) => ({ value: each.id, label: `${each.name}, ${each.term}` }))}
        />
      </section>
    </div>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findEditable, listCriteriaChoices } from '@/app/_server/data/exercise-versions'
import { pageId } from '@/app/_server/page-id'
import { setupWarnings } from '@/app/_server/views/course-warnings'
import { typedExercise } from '@/lib/course/typed-exercise'
import { ExerciseForm } from './exercise-form'

export const metadata: Metadata = { title: 'Edit exercise' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** An exercise with its booth card, to be saved as its next version. */
export default async function ExercisePage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { classId, exerciseId } = await params
  const key = { classId: pageId(classId), exerciseId: pageId(exerciseId) }
  const [found, criteria] = await Promise.all([findEditable(viewer, key), listCriteriaChoices(viewer)])
  const { exercise, otherClasses } = found ?? notFound()
  const here = `/teach/course/${classId}`
  const shared = otherClasses === 0 ? '' : ` It is also on the list of ${otherClasses} other ${otherClasses === 1 ? 'class' : 'classes'}, which will see the change too.`
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={`Version ${exercise.version}`} title={exercise.title} lead={`Saving makes the next version; coupons keep the one they were welded to.${shared}`}
        aside={<><LinkButton href={`/teach/criteria/${encodeURIComponent(exercise.criteria.id)}/${exercise.criteria.version}`}>Its criteria</LinkButton><LinkButton href={`${here}/${exerciseId}/versions`}>Versions</LinkButton><LinkButton href={here}>Back to the list</LinkButton></>}
      />
      <ExerciseForm
        {...key} version={exercise.version} units={viewer.units} values={typedExercise(exercise, viewer.units)} warnings={setupWarnings(exercise, viewer)}
        criteria={criteria.map(({ id, version, title }) => ({ value: `${id}@${version}`, label: `${title} (version ${version})` }))}
      />
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ExerciseScreen } from '@/app/_components/course/exercise-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { exerciseEditor } from '@/app/_server/views/exercise-editor'
import { EXERCISE_ACTIONS } from '@/app/teach/course/course-actions'
import { readAddress } from '@/app/teach/criteria/read-address'

export const metadata: Metadata = { title: 'Edit exercise' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** An exercise of a class, edited by its instructor. */
export default async function ExercisePage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { classId, exerciseId } = await params
  const key = { classId: pageId(classId), exerciseId: pageId(exerciseId) }
  const { judgedBy, ...editor } = (await exerciseEditor(viewer, key)) ?? notFound()
  return <ExerciseScreen {...key} {...editor} list={`/teach/course/${key.classId}`} criteriaAddress={readAddress(judgedBy.id, judgedBy.version)} allCriteria="/teach/criteria" actions={EXERCISE_ACTIONS} />
}

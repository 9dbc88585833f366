import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ExerciseScreen } from '@/app/_components/course/exercise-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { exerciseEditor } from '@/app/_server/views/exercise-editor'
import { setAddress } from '@/app/program/criteria/set-address'
import { EXERCISE_ACTIONS } from '@/app/teach/course/course-actions'

export const metadata: Metadata = { title: 'Edit exercise' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** An exercise of a class, edited by the coordinator. */
export default async function ExercisePage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const { classId, exerciseId } = await params
  const key = { classId: pageId(classId), exerciseId: pageId(exerciseId) }
  const { judgedBy, ...editor } = (await exerciseEditor(viewer, key)) ?? notFound()
  return <ExerciseScreen {...key} {...editor} list={`/program/classes/${key.classId}/exercises`} criteriaAddress={setAddress(judgedBy.id, judgedBy.version)} allCriteria="/program/criteria" actions={EXERCISE_ACTIONS} />
}

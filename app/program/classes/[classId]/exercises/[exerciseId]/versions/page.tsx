import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { VersionsScreen } from '@/app/_components/course/versions-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { exerciseHistory } from '@/app/_server/views/exercise-editor'

export const metadata: Metadata = { title: 'Versions of an exercise' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** The versions of an exercise, read by the coordinator. */
export default async function VersionsPage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const { classId, exerciseId } = await params
  const history = (await exerciseHistory(viewer, { classId: pageId(classId), exerciseId: pageId(exerciseId) })) ?? notFound()
  return <VersionsScreen {...history} exercise={`/program/classes/${classId}/exercises/${exerciseId}`} />
}

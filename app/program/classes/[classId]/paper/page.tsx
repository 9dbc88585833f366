import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ClassPaperScreen } from '@/app/_components/course/class-paper-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { classPaper } from '@/app/_server/views/class-paper'

export const metadata: Metadata = { title: 'Paper for the class' }

type Props = { params: Promise<{ classId: string }> }

/** What the coordinator prints for a class. */
export default async function PaperPage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const paper = (await classPaper(viewer, pageId((await params).classId))) ?? notFound()
  return <ClassPaperScreen {...paper} back={{ href: '/program/classes', label: 'All classes' }} />
}

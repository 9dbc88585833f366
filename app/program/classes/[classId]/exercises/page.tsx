import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { CourseScreen } from '@/app/_components/course/course-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { classCourse } from '@/app/_server/views/class-course'
import { COURSE_ACTIONS } from '@/app/teach/course/course-actions'

export const metadata: Metadata = { title: 'Exercises of the class' }

type Props = { params: Promise<{ classId: string }> }

/** The exercises of a class, kept by the coordinator. */
export default async function CoursePage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const course = (await classCourse(viewer, pageId((await params).classId))) ?? notFound()
  return <CourseScreen course={course} here={`/program/classes/${course.classId}/exercises`} back={{ href: '/program/classes', label: 'All classes' }} actions={COURSE_ACTIONS} />
}

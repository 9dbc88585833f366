import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { TestRecordScreen } from '@/app/_components/result/test-record-screen'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { testRecord } from '@/app/_server/views/test-record'
import { say } from '@/lib/language/say'
import { testDay } from '@/lib/language/test-day'

type Props = { params: Promise<{ testId: string }> }

/** Read once for the page and its title. */
const load = cache(async (testId: string) => {
  const viewer = await requireRole('instructor')
  const record = await testRecord(viewer, pageId(testId))
  return record ? { viewer, ...record } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { viewer, attempt } = await load((await params).testId)
  return { title: `${say(testDay, viewer.locale, 'title')}: ${attempt.student.name}` }
}

export default async function TestPage({ params }: Props) {
  const { viewer, attempt, view } = await load((await params).testId)
  return <TestRecordScreen view={view} locale={viewer.locale} attempt={attempt} />
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { StudyStanding } from '@/app/_components/study/study-standing'
import { LinkButton } from '@/app/_components/ui/link-button'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { studyToFollow } from '@/app/_server/views/gauge-studies'
import { ClosePanel } from '@/app/teach/studies/close-panel'

type Props = { params: Promise<{ studyId: string }> }

/** Read once for the page and its title. */
const load = cache(async (studyId: string) => (await studyToFollow(await requireRole('coordinator'), pageId(studyId))) ?? notFound())

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await load((await params).studyId)).name }
}

export default async function ProgramStudyPage({ params }: Props) {
  const screen = await load((await params).studyId)
  return (
    <StudyStanding
      screen={screen} aside={<LinkButton href="/program/studies">All studies</LinkButton>}
      close={screen.stage === 'waiting' && <ClosePanel studyId={screen.id} closing={screen.closing} />}
    />
  )
}

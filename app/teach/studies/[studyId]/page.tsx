import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { BenchList } from '@/app/_components/study/bench-list'
import { StudyStanding } from '@/app/_components/study/study-standing'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { studyToRead } from '@/app/_server/views/gauge-studies'
import { ClosePanel } from '../close-panel'
import { ReadingForm } from './reading-form'

type Props = { params: Promise<{ studyId: string }> }

const BENCH = 'Lay the coupons out and number them like this. You are asked for them in an order of your own, another one in every round.'

/** Read once for the page and its title. */
const load = cache(async (studyId: string) => (await studyToRead(await requireRole('instructor'), pageId(studyId))) ?? notFound())

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await load((await params).studyId)).name }
}

export default async function StudyPage({ params }: Props) {
  const screen = await load((await params).studyId)
  const viewer = await requireRole('instructor')
  if (screen.stage !== 'reading') return <StudyStanding screen={screen} aside={<LinkButton href="/teach/studies">All studies</LinkButton>} close={screen.stage === 'waiting' && <ClosePanel studyId={screen.id} closing={screen.closing} />} />
  const [program, account] = await Promise.all([findProgram(viewer), ownAccount(viewer)])
  const { turn } = screen
  return (
    <div className="grid gap-5">
      <PageHead eyebrow={screen.className} title={screen.name} />
      <ReadingForm
        key={`${turn.couponId}/${turn.round}`} studyId={screen.id} bench={screen.bench} turn={turn} done={screen.done} all={screen.all} rounds={screen.rounds}
        units={viewer.units} who={{ signInName: account.signInName, program: program.slug }}
      />
      <div className="border-t border-line">
        <BenchList bench={screen.bench} open={screen.done === 0} note={BENCH} />
        <ClosePanel studyId={screen.id} closing={screen.closing} />
        <p className="mt-3 mb-4 text-base text-ink-2">{screen.facts}</p>
        <LinkButton href="/teach/studies">All studies</LinkButton>
      </div>
    </div>
  )
}

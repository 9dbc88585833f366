import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ChangesList } from '@/app/_components/criteria/changes-list'
import { RulesInWords } from '@/app/_components/criteria/rules-in-words'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { criteriaSetView } from '@/app/_server/views/criteria-set'

export const metadata: Metadata = { title: 'Criteria in words' }

type Props = { params: Promise<{ criteriaId: string; version: string }> }

/** One version of a set of criteria for an instructor to read. Coordinators write them. */
export default async function ReadCriteriaPage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { criteriaId, version } = await params
  if (!/^[1-9]\d{0,5}$/.test(version)) notFound()
  const { words, ...view } = (await criteriaSetView(viewer, decodeURIComponent(criteriaId), Number(version))) ?? notFound()
  const newer = view.version < view.newest ? ` Version ${view.newest} is the newest; an exercise is set to it in its own form.` : ''
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={`Version ${view.version} · ${words.edition}`} title={words.title} lead={`An accepted coupon gets a mark of ${words.passMark} or more.${newer}`} aside={<LinkButton href="/teach/criteria">All criteria</LinkButton>} />
      {view.retired && <Notice kind="info" word="Retired">This version is no longer offered to exercises. Those that use it go on with it.</Notice>}
      {view.from && <ChangesList from={view.from} changes={view.changes} />}
      <RulesInWords words={words} />
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

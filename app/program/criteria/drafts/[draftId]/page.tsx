import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { criteriaEditor } from '@/app/_server/views/criteria-editor'
import { CriteriaEditor } from './criteria-editor'

export const metadata: Metadata = { title: 'Write criteria' }

type Props = { params: Promise<{ draftId: string }> }

/** A set of criteria being written: its rules, a sample coupon judged by them, and what they would change. */
export default async function DraftPage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const view = (await criteriaEditor(viewer, pageId((await params).draftId))) ?? notFound()
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={view.eyebrow} title={view.title} lead={view.lead} aside={<LinkButton href="/program/criteria">All criteria</LinkButton>} />
      <CriteriaEditor
        draftId={view.draftId} personId={viewer.personId} seen={view.seen} document={view.document} preview={view.preview} samples={view.samples} coupons={view.coupons}
      />
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

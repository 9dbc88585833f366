import type { Metadata } from 'next'
import { notFound, redirect } from 'next/navigation'
import { RuleList } from '@/app/_components/result/rule-list'
import { VerdictHead } from '@/app/_components/result/verdict-head'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import { requireRole } from '@/app/_server/auth/require-role'
import { findBlindCoupon } from '@/app/_server/data/blind-coupons'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { couponResult } from '@/app/_server/views/coupon-result'
import { momentText } from '@/lib/reports/dates'

export const metadata: Metadata = { title: 'Coupon as judged' }

type Props = { params: Promise<{ couponId: string }> }

/** A coupon as its own criteria judged it, to hold against limits being written. */
export default async function JudgedCouponPage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const couponId = pageId((await params).couponId)
  // Whoever also teaches and has not looked at it yet does so blind, in the instructor's room.
  const blind = await findBlindCoupon(viewer, couponId)
  if (blind && !blind.standing) redirect(`/teach/coupons/${couponId}`)
  const result = (await couponResult(viewer, couponId)) ?? notFound()
  const { coupon, lead } = result
  if (!lead) notFound()
  const program = await findProgram(viewer)
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={`${coupon.className} · ${momentText(coupon.weldedAt, 'en', program.timeZone)}`} title={`${coupon.student.name}, no. ${coupon.number}`}
        lead={`${coupon.exercise.title}. ${lead.title}, ${lead.inspector}.`}
      />
      <VerdictHead card={lead.scorecard} locale={viewer.locale} />
      <BeadStrip {...lead.strip} />
      <RuleList card={lead.scorecard} locale={viewer.locale} />
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

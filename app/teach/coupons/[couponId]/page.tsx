import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findBlindCoupon } from '@/app/_server/data/blind-coupons'
import { listWaiting, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { listSnippets } from '@/app/_server/data/snippets'
import { pageId } from '@/app/_server/page-id'
import { couponResult } from '@/app/_server/views/coupon-result'
import { marksByPhoto, ownMarks } from '@/app/_server/views/photo-marks'
import { readingsSetup } from '@/app/_server/views/log-view'
import { momentText } from '@/lib/reports/dates'
import { CouponFacts } from './coupon-facts'
import { GradedCoupon } from './graded-coupon'
import { GradeForm } from './grade-form'

type Props = { params: Promise<{ couponId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Read once for the page and its title. */
const load = cache(async (couponId: string) => {
  const viewer = await requireRole('instructor')
  const coupon = await findBlindCoupon(viewer, pageId(couponId))
  return coupon ? { viewer, coupon } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { coupon } = await load((await params).couponId)
  return { title: `${coupon.student.name}, no. ${coupon.number}` }
}

/** A coupon to look at. Until the instructor's own look is submitted, nothing the student read is on this page. */
export default async function GradePage({ params, searchParams }: Props) {
  const { viewer, coupon } = await load((await params).couponId)
  const program = await findProgram(viewer)
  const correcting = (await searchParams)['correct'] === 'yes'
  const marks = await marksByPhoto(viewer, coupon.id)
  const head = (
    <PageHead
      eyebrow={`${coupon.className} · booth ${coupon.booth ?? '–'} · ${momentText(coupon.weldedAt, 'en', program.timeZone)}`}
      title={`${coupon.student.name}, no. ${coupon.number}`} lead={coupon.exercise.title}
    />
  )
  if (coupon.standing && !correcting) {
    const [result, waiting] = await Promise.all([couponResult(viewer, coupon.id), listWaiting(viewer, coupon.classId)])
    if (!result) notFound()
    return <div className="grid gap-8">{head}<GradedCoupon result={result} next={waiting[0] ?? null} timeZone={program.timeZone} marks={marks} units={viewer.units} /></div>
  }
  const holder = await takeCoupon(viewer, coupon.id)
  const [setup, account, snippets] = await Promise.all([readingsSetup(viewer, coupon.exercise), ownAccount(viewer), listSnippets(viewer)])
  const { standing } = coupon
  const start = standing
    ? { stations: standing.readings.typed.stations, indications: standing.readings.typed.indications, lookedFor: [...standing.readings.inspection.lookedFor], cratersFilled: standing.readings.inspection.cratersFilled, fusionComplete: standing.readings.inspection.fusionComplete }
    : setup.blank
  return (
    <div className="grid gap-8">
      {head}
      <div className="grid gap-8 xl:grid-cols-[20rem_minmax(0,1fr)]">
        <CouponFacts coupon={coupon} units={viewer.units} marks={marks} />
        <GradeForm
          couponId={coupon.id} classId={coupon.classId} personId={viewer.personId} who={{ signInName: account.signInName, program: program.slug }}
          revision={coupon.nextRevision} boxes={setup.boxes} vertical={setup.vertical} frame={setup.frame} start={start} correcting={standing !== null} snippets={snippets}
          photoIds={coupon.photos.map(({ id }) => id)} ownMarks={ownMarks(marks)}
          openElsewhere={holder && !holder.self ? holder.name : null}
        />
      </div>
    </div>
  )
}

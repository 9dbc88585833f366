import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import type { Viewer } from '@/app/_server/auth/viewer'
import { findBlindCoupon } from '@/app/_server/data/blind-coupons'
import type { CouponRecord, InspectionRecord } from '@/app/_server/data/coupon-record'
import { ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { findElsewhere, listElsewhere } from '@/app/_server/data/second-readings'
import { listSnippets } from '@/app/_server/data/snippets'
import { listWaiting, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { pageId } from '@/app/_server/page-id'
import { couponResult } from '@/app/_server/views/coupon-result'
import { ownReading } from '@/app/_server/views/own-reading'
import { marksByPhoto, ownMarks, type MarksByPhoto } from '@/app/_server/views/photo-marks'
import { readingsSetup } from '@/app/_server/views/log-view'
import { momentText } from '@/lib/reports/dates'
import { CouponFacts } from './coupon-facts'
import { GradedCoupon } from './graded-coupon'
import { GradeForm } from './grade-form'
import { OwnReadingPage } from './own-reading'

type Props = { params: Promise<{ couponId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Read once for the page and its title: a coupon of the viewer's classes, one of another class to read, or their own reading of such a one. */
const load = cache(async (couponId: string) => {
  const viewer = await requireRole('instructor')
  const id = pageId(couponId)
  const coupon = await findBlindCoupon(viewer, id)
  if (coupon) return { kind: 'own', viewer, coupon } as const
  const elsewhere = await findElsewhere(viewer, id)
  if (elsewhere) return { kind: 'elsewhere', viewer, coupon: elsewhere } as const
  const reading = await ownReading(viewer, id)
  return reading ? { kind: 'read', viewer, reading } as const : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await load((await params).couponId)
  switch (found.kind) {
    case 'own': return { title: `${found.coupon.student.name}, no. ${found.coupon.number}` }
    case 'elsewhere': return { title: `${found.coupon.exercise.title}, no. ${found.coupon.number}` }
    case 'read': return { title: `${found.reading.title}, no. ${found.reading.number}` }
  }
}

/** A coupon to look at. Until the instructor's own look is submitted, nothing the student read is on this page, nor anything another reader did. */
export default async function GradePage({ params, searchParams }: Props) {
  const found = await load((await params).couponId)
  const { viewer } = found
  const program = await findProgram(viewer)
  if (found.kind === 'read') return <OwnReadingPage reading={found.reading} next={(await listElsewhere(viewer))[0] ?? null} timeZone={program.timeZone} />
  const marks = await marksByPhoto(viewer, found.coupon.id)
  if (found.kind === 'elsewhere') {
    const { coupon } = found
    return (
      <div className="grid gap-8">
        <PageHead eyebrow={`${coupon.className} · booth ${coupon.booth ?? '–'} · ${momentText(coupon.weldedAt, 'en', program.timeZone)}`} title={`${coupon.exercise.title}, no. ${coupon.number}`} lead="A coupon of another class." />
        <Grading viewer={viewer} coupon={coupon} classId={null} revision={1} standing={null} program={program.slug} marks={marks} />
      </div>
    )
  }
  const { coupon } = found
  const correcting = (await searchParams)['correct'] === 'yes'
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
  return (
    <div className="grid gap-8">
      {head}
      <Grading viewer={viewer} coupon={coupon} classId={coupon.classId} revision={coupon.nextRevision} standing={coupon.standing} program={program.slug} marks={marks} />
    </div>
  )
}

type GradingProps = {
  readonly viewer: Viewer
  readonly coupon: Pick<CouponRecord, 'id' | 'number' | 'exercise' | 'photos'>
  readonly classId: string | null
  readonly revision: number
  /** The look that a correction starts from. */
  readonly standing: InspectionRecord | null
  /** The program's short name, for signing in again. */
  readonly program: string
  readonly marks: MarksByPhoto
}

/** What the coupon is, and the form for the look at it; the coupon is held for the viewer meanwhile. */
async function Grading({ viewer, coupon, classId, revision, standing, program, marks }: GradingProps) {
  const holder = await takeCoupon(viewer, coupon.id)
  const [setup, account, snippets] = await Promise.all([readingsSetup(viewer, coupon.exercise), ownAccount(viewer), listSnippets(viewer)])
  const start = standing
    ? { stations: standing.readings.typed.stations, indications: standing.readings.typed.indications, lookedFor: [...standing.readings.inspection.lookedFor], cratersFilled: standing.readings.inspection.cratersFilled, fusionComplete: standing.readings.inspection.fusionComplete }
    : setup.blank
  return (
    <div className="grid gap-8 xl:grid-cols-[20rem_minmax(0,1fr)]">
      <CouponFacts coupon={coupon} units={viewer.units} marks={marks} />
      <GradeForm
        couponId={coupon.id} classId={classId} personId={viewer.personId} who={{ signInName: account.signInName, program }}
        revision={revision} boxes={setup.boxes} vertical={setup.vertical} frame={setup.frame} start={start} correcting={standing !== null} snippets={snippets}
        photoIds={coupon.photos.map(({ id }) => id)} ownMarks={ownMarks(marks)}
        openElsewhere={holder && !holder.self ? holder.name : null}
      />
    </div>
  )
}

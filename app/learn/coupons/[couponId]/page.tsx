import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { offline } from '@/lib/language/offline'
import { say } from '@/lib/language/say'
import { secondMeasurement } from '@/lib/measure/second-measurement'
import { dateText, momentText } from '@/lib/reports/dates'
import { passesView } from '@/lib/reports/passes-view'
import { EyeFigure } from '@/app/_components/progress/eye-figure'
import { AdvicePanel } from '@/app/_components/result/advice-panel'
import { CommentList } from '@/app/_components/result/comment-list'
import { ReplacedLooks } from '@/app/_components/result/replaced-looks'
import { PassesPanel } from '@/app/_components/result/passes-panel'
import { RuleList } from '@/app/_components/result/rule-list'
import { TwoLooks } from '@/app/_components/result/two-looks'
import { VerdictHead } from '@/app/_components/result/verdict-head'
import { MarksOnPhoto } from '@/app/_components/photo-gauge/marks-on-photo'
import { MeasureKept } from '@/app/_components/photo-gauge/measure-kept'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import { FilletSection } from '@/app/_components/weld/fillet-section'
import { requireRole } from '@/app/_server/auth/require-role'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { couponResult } from '@/app/_server/views/coupon-result'
import { EYE_FRAME, ownEye } from '@/app/_server/views/eye-view'
import { marksByPhoto, ownMarks } from '@/app/_server/views/photo-marks'
import { AddPhoto } from './add-photo'
import { CommentForm } from './comment-form'

type Props = { params: Promise<{ couponId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Read once for the page and its title. */
const load = cache(async (couponId: string) => {
  const viewer = await requireRole('student')
  const result = await couponResult(viewer, pageId(couponId))
  // The student's room shows one's own coupons. Whoever also teaches looks at others' in the instructor's room, where a look is blind.
  return result?.coupon.student.id === viewer.personId ? { viewer, result } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { viewer, result: { coupon } } = await load((await params).couponId)
  return { title: `${say(learn, viewer.locale, 'number', { n: coupon.number })}, ${coupon.exercise.title}` }
}

export default async function CouponPage({ params, searchParams }: Props) {
  const { viewer, result } = await load((await params).couponId)
  const { coupon, lead, other } = result
  const [program, asked, marks] = await Promise.all([findProgram(viewer), searchParams, marksByPhoto(viewer, coupon.id)])
  if (!lead) notFound()
  const { locale } = viewer
  // Once the two looks can be compared, so can those before them.
  const eye = other && await ownEye(viewer)
  const own = lead.kind === 'self' ? lead : other
  const owned = ownMarks(marks)
  const second = own && secondMeasurement(own.strip)
  const exerciseHref = `/learn/${coupon.classId}/${coupon.exercise.id}`
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={`${say(learn, locale, 'number', { n: coupon.number })} · ${momentText(coupon.weldedAt, locale, program.timeZone)}`} title={coupon.exercise.title} />
      {asked['photo'] === 'waits' && coupon.photos.length === 0 && <Notice kind="info" word={say(learn, locale, 'photo')}>{say(offline, locale, 'photoWaits')}</Notice>}
      {asked['photo'] !== undefined && asked['photo'] !== 'waits' && coupon.photos.length === 0 && <Notice kind="problem" word={say(learn, locale, 'photo')}><a href="#photos">{say(learn, locale, 'photoNotSent')}</a></Notice>}
      <VerdictHead card={lead.scorecard} locale={locale} />
      <p>{lead.kind === 'self' ? `${say(learn, locale, 'lookSelf')} ${coupon.waiting ? say(learn, locale, 'waiting') : ''}` : `${lead.title}: ${lead.inspector}, ${dateText(lead.at, locale, program.timeZone)}`}</p>
      {result.advice && <AdvicePanel advice={result.advice} more={result.more} rejected={lead.scorecard.computed !== 'accept'} locale={locale} />}
      <BeadStrip {...lead.strip} />
      {lead.section && <FilletSection {...lead.section} />}
      {other && <TwoLooks first={{ title: lead.title, scorecard: lead.scorecard }} second={{ title: other.title, scorecard: other.scorecard }} locale={locale} />}
      {eye && <EyeFigure {...eye} frame={EYE_FRAME} locale={locale} />}
      <RuleList card={lead.scorecard} locale={locale} />
      <PassesPanel view={passesView(coupon.passes, viewer)} locale={locale} />
      <ReplacedLooks locale={locale} looks={result.superseded.map((look) => ({ ...look, key: `${look.kind}-${look.revision}`, when: momentText(look.at, locale, program.timeZone) }))} />
      <section id="photos" className="grid gap-3">
        <h2 className="text-2xl">{say(learn, locale, 'photos')}</h2>
        {coupon.photos.length > 0 && (
          <div className="grid gap-3 sm:grid-cols-2">
            {coupon.photos.map((photo, index) => (
              <div key={photo.id} className="grid content-start gap-3">
                <MarksOnPhoto locale={locale} units={viewer.units} photo={photo} alt={say(learn, locale, 'photoAlt', { n: coupon.number, k: index + 1 })} marks={marks.get(photo.id) ?? []} />
                <MeasureKept locale={locale} photoId={photo.id} n={index + 1} earlier={owned[photo.id] ?? null} second={owned[photo.id] && !coupon.waiting ? null : second} />
              </div>
            ))}
          </div>
        )}
        <AddPhoto locale={locale} couponId={coupon.id} n={coupon.photos.length + 1} second={second} />
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(learn, locale, 'comments')}</h2>
        {coupon.note && <p className="border-l-4 border-line pl-3 whitespace-pre-wrap">{coupon.note}</p>}
        <CommentList comments={result.comments.map((each) => ({ ...each, when: momentText(each.at, locale, program.timeZone) }))} locale={locale} />
        <CommentForm locale={locale} couponId={coupon.id} />
      </section>
      <div className="flex flex-wrap gap-2">
        <LinkButton kind="primary" href={`${exerciseHref}/log`}>{say(learn, locale, 'logNext')}</LinkButton>
        <LinkButton href={exerciseHref}>{say(learn, locale, 'back')}</LinkButton>
      </div>
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </div>
  )
}

import { door } from '@/lib/language/door'
import { dateText, momentText } from '@/lib/reports/dates'
import { CommentForm } from '@/app/learn/coupons/[couponId]/comment-form'
import { AdvicePanel } from '@/app/_components/result/advice-panel'
import { CommentList } from '@/app/_components/result/comment-list'
import { ReplacedLooks } from '@/app/_components/result/replaced-looks'
import { RuleList } from '@/app/_components/result/rule-list'
import { TwoLooks } from '@/app/_components/result/two-looks'
import { VerdictHead } from '@/app/_components/result/verdict-head'
import { LinkButton } from '@/app/_components/ui/link-button'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import { FilletSection } from '@/app/_components/weld/fillet-section'
import type { WaitingCoupon } from '@/app/_server/data/waiting-coupons'
import type { CouponResult } from '@/app/_server/views/coupon-result'
import type { MarksByPhoto } from '@/app/_server/views/photo-marks'
import { CouponPhotos } from './coupon-photos'
import { DecideForm } from './decide-form'
import { SecondReadingPanel } from './second-reading-panel'

type Props = { readonly result: CouponResult; readonly next: WaitingCoupon | null; readonly timeZone: string; readonly marks: MarksByPhoto; readonly units: 'in' | 'mm' }

/** A coupon after the instructor's look: the verdict, both looks, a second reading where there is one, every rule, remarks, and what to do next. */
export function GradedCoupon({ result, next, timeZone, marks, units }: Props) {
  const { coupon, lead, other, second } = result
  if (!lead) return null
  return (
    <>
      <VerdictHead card={lead.scorecard} locale="en" />
      <p>Inspected by {lead.inspector}, {dateText(lead.at, 'en', timeZone)}{lead.revision > 1 && `, correction ${lead.revision - 1}`}.</p>
      <div className="flex flex-wrap gap-2">
        {next && <LinkButton kind="primary" href={`/teach/coupons/${next.id}`}>{`Next: ${next.booth === null ? '' : `booth ${next.booth}, `}${next.student.name}`}</LinkButton>}
        <LinkButton kind={next ? 'secondary' : 'primary'} href={`/teach/classes/${coupon.classId}`}>Back to the class</LinkButton>
      </div>
      {result.advice && <AdvicePanel advice={result.advice} more={result.more} rejected={lead.scorecard.computed !== 'accept'} locale="en" />}
      <BeadStrip {...lead.strip} />
      {lead.section && <FilletSection {...lead.section} />}
      {other && <TwoLooks first={{ title: lead.title, scorecard: lead.scorecard }} second={{ title: other.title, scorecard: other.scorecard }} locale="en" />}
      {second && <SecondReadingPanel first={lead} second={second} timeZone={timeZone} />}
      <RuleList card={lead.scorecard} locale="en" />
      <CouponPhotos number={coupon.number} photos={coupon.photos} marks={marks} units={units} />
      <ReplacedLooks locale="en" looks={result.superseded.map((look) => ({ ...look, key: `${look.kind}-${look.revision}`, when: momentText(look.at, 'en', timeZone) }))} />
      <section className="grid gap-3">
        <h2 className="text-2xl">Remarks</h2>
        {coupon.note && <p className="border-l-4 border-line pl-3 whitespace-pre-wrap">{coupon.note}</p>}
        <CommentList comments={result.comments.map((each) => ({ ...each, when: momentText(each.at, 'en', timeZone) }))} locale="en" />
        <CommentForm locale="en" couponId={coupon.id} />
      </section>
      {!lead.scorecard.decision && lead.kind === 'instructor' && <DecideForm couponId={coupon.id} inspectionId={lead.id} computed={lead.scorecard.computed} />}
      <div><LinkButton href={`/teach/coupons/${coupon.id}?correct=yes`}>Correct this inspection</LinkButton></div>
      <p className="text-base text-ink-2">{door.en.practiceRecord}</p>
    </>
  )
}

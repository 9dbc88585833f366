import { momentText } from '@/lib/reports/dates'
import { RuleList } from '@/app/_components/result/rule-list'
import { VerdictHead } from '@/app/_components/result/verdict-head'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import type { ElsewhereLine } from '@/app/_server/data/second-readings'
import type { OwnReading } from '@/app/_server/views/own-reading'

type Props = { readonly reading: OwnReading; readonly next: ElsewhereLine | null; readonly timeZone: string }

/** What a reader from another class sees afterwards: their own look, what it is for, and the next one. */
export function OwnReadingPage({ reading: { title, number, weldedAt, look }, next, timeZone }: Props) {
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={`A coupon of another class · ${momentText(weldedAt, 'en', timeZone)}`} title={`${title}, no. ${number}`} />
      <Notice kind="ok" word="A second reading">It changes no grade; it shows how alike people judge. What you remarked goes to the coupon’s instructors, not to the student.</Notice>
      <div className="flex flex-wrap gap-2">
        {next && <LinkButton kind="primary" href={`/teach/coupons/${next.id}`}>{`Next: ${next.exerciseTitle}, no. ${next.number}`}</LinkButton>}
        <LinkButton kind={next ? 'secondary' : 'primary'} href="/teach">Back to your classes</LinkButton>
      </div>
      <VerdictHead card={look.scorecard} locale="en" />
      <BeadStrip {...look.strip} />
      <RuleList card={look.scorecard} locale="en" />
    </div>
  )
}

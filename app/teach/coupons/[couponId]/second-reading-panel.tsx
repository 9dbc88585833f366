import { dateText } from '@/lib/reports/dates'
import { LookTable, pairsOf } from '@/app/_components/result/two-looks'
import type { CouponLook } from '@/app/_server/views/coupon-result'

type Props = { readonly first: CouponLook; readonly second: CouponLook; readonly timeZone: string }

const WORD = { accept: 'accept it', reject: 'reject it', incomplete: 'left something unmeasured' } as const

/** The first look and a second reading beside each other: whether the verdicts are alike, and the rules on which they are not. For staff alone. */
export function SecondReadingPanel({ first, second, timeZone }: Props) {
  const pairs = pairsOf(first.scorecard, second.scorecard)
  const differing = pairs.filter(({ same }) => !same)
  const looks = { first: { title: `First look, ${first.inspector}`, scorecard: first.scorecard }, second: { title: `Second reading, ${second.inspector}`, scorecard: second.scorecard }, locale: 'en' } as const
  const alike = first.scorecard.verdict === second.scorecard.verdict
  return (
    <section className="grid gap-2">
      <h2 className="text-2xl">First look and second reading</h2>
      <p className="max-w-prose">
        {second.inspector} read this coupon too, on {dateText(second.at, 'en', timeZone)}, without seeing the first look.{' '}
        <strong>{alike ? `Both ${WORD[first.scorecard.verdict]}.` : 'The verdicts differ.'}</strong>{' '}
        {differing.length === 0 ? `They agree on all ${pairs.length} rules.` : `They agree on ${pairs.length - differing.length} of ${pairs.length} rules.`}
      </p>
      <LookTable {...looks} pairs={differing} caption="Where the first look and the second reading differ" />
      <details>
        <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Every rule, side by side</summary>
        <LookTable {...looks} pairs={pairs} caption="The first look and the second reading, every rule" />
      </details>
      <p className="max-w-prose text-ink-2">A second reading changes no grade, and the student does not see it. What its reader remarked is kept with the notes for staff.</p>
    </section>
  )
}

import type { Locale } from '@/lib/language/say'
import type { PassRate, RateGroup } from '@/lib/reports/pass-rates'
import { rateNote } from '@/lib/reports/pass-rates-words'
import { PassRateBars } from '@/app/_components/charts/pass-rate-bars'

type RateBarsProps = {
  readonly title: string
  readonly groupWord: string
  readonly groups: readonly RateGroup[]
  readonly labelOf: (group: RateGroup) => string
  readonly rateOf: (group: RateGroup) => PassRate
  /** Says what was counted apart; only beside coupons. */
  readonly withApart?: boolean
  readonly locale: Locale
}

/** One kind of pass rate over the groups. */
export function RateBars({ title, groupWord, groups, labelOf, rateOf, withApart = false, locale }: RateBarsProps) {
  const rows = groups.map((group) => {
    const { passed, n, share } = rateOf(group)
    return { key: group.key, label: labelOf(group), passed, n, interval: share, note: rateNote(rateOf(group), withApart ? group : null, locale) }
  })
  return <PassRateBars title={title} groupWord={groupWord} rows={rows} locale={locale} />
}

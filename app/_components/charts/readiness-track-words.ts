import { drawings } from '@/lib/language/drawings'
import { say, type Locale } from '@/lib/language/say'
import { chanceText, type ReadinessTrackInput } from '@/lib/reports/readiness-track'
import type { Column, Row } from '../ui/table'

export type ReadinessTrackProps = ReadinessTrackInput & {
  /** Of the intervals: 0.8 or 0.95. */
  readonly level: number
  readonly locale: Locale
  readonly titleHidden?: boolean
}

/** What the readiness track says in words and figures, the same for paper and for the interactive screen. */
export function readinessTrackWords({ points, tests, threshold, level, locale }: ReadinessTrackProps) {
  const percent = Math.round(level * 100)
  const sorted = [...points].sort((a, b) => a.coupon - b.coupon)
  const last = sorted.findLast((point) => point.estimate)
  const taken = tests.map((test) => say(drawings, locale, test.passed ? 'testPassed' : 'testFailed', { coupon: test.afterCoupon }))
  const between = (low: number, high: number) => say(drawings, locale, 'fromTo', { low: chanceText(low), high: chanceText(high) })
  const summary = last?.estimate
    ? say(drawings, locale, 'trackSummary', {
        coupon: last.coupon, level: percent, chance: chanceText(last.estimate.probability), low: chanceText(last.estimate.low), high: chanceText(last.estimate.high),
      })
    : say(drawings, locale, 'trackTooFew')
  const columns: Column[] = [
    { key: 'coupon', head: say(drawings, locale, 'coupon') },
    { key: 'chance', head: say(drawings, locale, 'chance'), numeric: true },
    { key: 'interval', head: say(drawings, locale, 'trackInterval', { level: percent }), numeric: true },
    { key: 'test', head: say(drawings, locale, 'test') },
  ]
  const rows: Row[] = sorted.map(({ coupon, estimate }) => ({
    key: String(coupon),
    cells: [
      coupon,
      estimate ? chanceText(estimate.probability) : say(drawings, locale, 'notEnough'),
      estimate ? between(estimate.low, estimate.high) : '',
      tests.filter((test) => test.afterCoupon === coupon).map((test) => say(drawings, locale, test.passed ? 'passed' : 'failed')).join(', '),
    ],
  }))
  return {
    title: say(drawings, locale, 'trackTitle'),
    summary: taken.length > 0 ? `${summary} ${say(drawings, locale, 'trackTests', { tests: taken.join('; ') })}` : summary,
    threshold: say(drawings, locale, 'trackThreshold', { threshold: chanceText(threshold) }),
    interval: say(drawings, locale, 'trackInterval', { level: percent }),
    chance: say(drawings, locale, 'chance'),
    coupon: say(drawings, locale, 'coupon'),
    notEnough: say(drawings, locale, 'notEnough'),
    table: { open: say(drawings, locale, 'showTable'), columns, rows },
  }
}

import { outboxLine } from '@/lib/language/outbox-line'
import { say, type Locale } from '@/lib/language/say'
import type { QueueSummary } from '@/lib/outbox/queue-summary'
import { momentText } from '@/lib/reports/dates'

/** A moment by the device's own clock and zone: it is the device's own time that is shown. */
export const deviceMoment = (at: number, locale: Locale): string => momentText(new Date(at), locale, new Intl.DateTimeFormat().resolvedOptions().timeZone)

/** '1 coupon waits …' or '{n} coupons wait …'. */
export const counted = (locale: Locale, n: number, one: 'oneWaits' | 'oneHeld' | 'oneSending' | 'oneKept', many: 'manyWait' | 'manyHeld' | 'manySending' | 'manyKept'): string =>
  say(outboxLine, locale, n === 1 ? one : many, { n })

export const othersText = (locale: Locale, { signInName, count }: QueueSummary['others'][number]): string =>
  say(outboxLine, locale, count === 1 ? 'othersOne' : 'othersMany', { n: count, name: signInName })

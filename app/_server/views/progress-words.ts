import 'server-only'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import { selfTrust } from '@/lib/readiness/self-trust'
import { dateText } from '@/lib/reports/dates'
import { acceptedOfLastTen, comparedBoth, medianMark } from '@/lib/reports/progress-summary'
import { chanceText } from '@/lib/reports/readiness-track'
import type { CouponVerdict } from '../data/pass-counts'
import type { StudentRecord, StudentSkill } from './student-record'

export type SummaryRow = {
  readonly key: string
  readonly title: string
  /** The program's rule says a test is worth booking. */
  readonly testSuggested: boolean
  readonly coupons: number
  readonly lastTen: string
  readonly medianMark: string
  readonly chance: string
  readonly agrees: string
}

const MOST_TESTS = 3

/** A row of the summary's table. `coupons` are the student's of this exercise, as far as the viewer sees them. */
export function rowOf({ skill, exercise }: StudentSkill, coupons: readonly CouponVerdict[], { program }: StudentRecord, locale: Locale): SummaryRow {
  const lastTen = acceptedOfLastTen(coupons)
  const middle = medianMark(coupons)
  const { compared, agreed } = selfTrust(comparedBoth(coupons))
  const { probability, low, high } = skill
  return {
    key: exercise.id,
    title: exercise.title,
    testSuggested: skill.advice === 'test',
    coupons: skill.couponCount,
    lastTen: lastTen ? say(print, locale, 'of', { a: lastTen.accepted, b: lastTen.of }) : say(print, locale, 'notLooked'),
    medianMark: middle === null ? '–' : String(Math.round(middle)),
    chance: probability === null || low === null || high === null
      ? say(print, locale, 'notEnough', { have: skill.couponsUsed, need: program.minimumCoupons })
      : say(print, locale, 'chance', { chance: chanceText(probability), low: chanceText(low), high: chanceText(high) }),
    agrees: compared === 0 ? say(print, locale, 'noneCompared') : say(print, locale, 'of', { a: agreed, b: compared }),
  }
}

/** The answer first: where a test is worth booking, then what is said of the exercise drawn. */
export function answerOf({ skills }: StudentRecord, current: readonly (string | null)[], locale: Locale): string[] {
  if (skills.length === 0) return [say(print, locale, 'noCoupons')]
  const ready = skills.filter(({ skill }) => skill.advice === 'test').length
  return [
    ready === 0 ? say(print, locale, 'testInNone') : say(print, locale, 'testIn', { n: ready, of: skills.length }),
    ...current.filter((sentence) => sentence !== null),
  ]
}

/** What the table rests on and what it leaves out: exercises past the `listed` ones, coupons of classes the viewer does not see. */
export function notesOf({ skills, coupons: all }: StudentRecord, coupons: readonly CouponVerdict[], listed: number, today: string, locale: Locale): string[] {
  const level = skills.find(({ skill }) => skill.level !== null)?.skill.level ?? 0.95
  const left = skills.slice(listed)
  const unseen = all - coupons.length
  return [
    ...(skills.length > 0 ? [say(print, locale, 'tableNote', { level: Math.round(level * 100), date: today })] : []),
    ...(left.length > 0 ? [say(print, locale, 'leftOut', { n: left.length, coupons: left.reduce((sum, { skill }) => sum + skill.couponCount, 0) })] : []),
    ...(unseen > 0 ? [say(print, locale, 'otherClasses', { n: unseen })] : []),
  ]
}

/** The tests taken, the latest first, in one run of words. */
export function testsOf({ attempts }: StudentRecord, locale: Locale): string {
  const latest = attempts.slice(-MOST_TESTS).reverse()
  const earlier = attempts.slice(0, -MOST_TESTS)
  if (latest.length === 0) return say(print, locale, 'noTests')
  const lines = [
    ...latest.map(({ title, on, passed }) => say(print, locale, 'testLine', { title, date: on, result: say(print, locale, passed ? 'passed' : 'failed') })),
    ...(earlier.length > 0 ? [say(print, locale, 'testsMore', { n: earlier.length, passed: earlier.filter(({ passed }) => passed).length })] : []),
  ]
  return `${say(print, locale, 'tests')}: ${lines.join('; ')}.`
}

/** From the first coupon to the last; null without any. */
export function datesOf(coupons: readonly CouponVerdict[], { program, to }: StudentRecord, locale: Locale): string | null {
  const first = coupons[0]
  return first && to ? say(print, locale, 'fromTo', { from: dateText(first.receivedAt, locale, program.timeZone), to }) : null
}

/** '31 h 4 min under the arc'; says so where nobody recorded it, since that is not 0. */
export function arcTimeOf({ skills }: StudentRecord, locale: Locale): string {
  const minutes = Math.round(skills.reduce((sum, { skill }) => sum + skill.arcSeconds, 0) / 60)
  if (minutes === 0) return say(print, locale, 'noArcTime')
  const time = minutes < 60 ? say(print, locale, 'minutes', { m: minutes }) : say(print, locale, 'hours', { h: Math.floor(minutes / 60), m: minutes % 60 })
  return say(print, locale, 'underArc', { time })
}

import { program } from '../language/program'
import { say, type Locale } from '../language/say'
import { LEAST_TO_COMPARE, type PassRate, type PassRates, type RateGroup } from './pass-rates'
import { countText, shareText } from './share-text'

/** The answer first: coupons, what is counted apart, tests and first tests, a sentence each. */
export function passRatesAnswer({ term, overall }: PassRates, locale: Locale): string[] {
  const when = term ? say(program, locale, 'inTerm', { term: term.name }) : say(program, locale, 'inAll')
  const { coupons, incomplete, uninspected, tests, firstTests } = overall
  const grouped = (count: number): string => countText(count, locale)
  const rate = (of: PassRate, told: 'couponsAnswer' | 'testsAnswer' | 'firstAnswer', few: 'couponsFew' | 'testsFew' | 'firstFew'): string =>
    of.share
      ? say(program, locale, told, { n: grouped(of.n), when, rate: shareText(of.share.rate), low: shareText(of.share.low), high: shareText(of.share.high) })
      : say(program, locale, few, { passed: of.passed, n: of.n, when })
  return [
    coupons.n === 0 ? say(program, locale, 'couponsNone', { when }) : rate(coupons, 'couponsAnswer', 'couponsFew'),
    say(program, locale, 'apart', { incomplete: grouped(incomplete), uninspected: grouped(uninspected) }),
    ...(tests.n === 0
      ? [say(program, locale, 'testsNone')]
      : [rate(tests, 'testsAnswer', 'testsFew'), ...(firstTests.n === 0 ? [] : [rate(firstTests, 'firstAnswer', 'firstFew')])]),
  ]
}

/** What stands under a group's count: that it is too small, and what is not in it. */
export function rateNote(rate: PassRate, apart: Pick<RateGroup, 'incomplete' | 'uninspected'> | null, locale: Locale): string {
  const small = rate.n > 0 && rate.share === null ? [say(program, locale, 'tooFew')] : []
  const left = (['incomplete', 'uninspected'] as const).flatMap((kind) =>
    apart && apart[kind] > 0 ? [say(program, locale, kind === 'incomplete' ? 'andIncomplete' : 'andUninspected', { n: apart[kind] })] : [])
  return [...small, ...left].join(', ')
}

export const ratesNote = (locale: Locale): string => say(program, locale, 'ratesNote', { least: LEAST_TO_COMPARE })

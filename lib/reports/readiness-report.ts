import { gradingWords } from '../language/grading'
import { print } from '../language/print'
import { say, type Locale } from '../language/say'
import { scorecardWords } from '../language/scorecard'
import { isOverridden, type Evidence, type JudgedCoupon, type LeftOut } from '../readiness/coupons-from-records'
import type { Finding, Scorecard, Verdict } from '../scoring/types'
import type { LengthUnit } from '../units/length'
import { dateText } from './dates'
import { ruleName } from './rule-names'
import { marginText } from './scorecard-view'

/** One coupon the estimate rests on, in the reader's words. */
export type EvidenceRow = {
  readonly number: number
  readonly date: string
  readonly by: string
  readonly verdict: Verdict
  readonly verdictWord: string
  /** The rule whose margin was the smallest, and that margin; null where the verdict alone counts. */
  readonly closest: { readonly rule: string; readonly margin: string; readonly scaled: string } | null
  readonly yesNo: string
}

type Reader = { readonly locale: Locale; readonly units: LengthUnit }
const MS_PER_DAY = 24 * 3600 * 1000

/**
 * The coupons the estimate used, oldest first.
 *
 * @param firstNumber the number of the first coupon in the records the evidence was drawn from
 */
export function evidenceRows(judged: readonly JudgedCoupon[], firstNumber: number, reader: Reader): EvidenceRow[] {
  return judged.map((each) => {
    const { lead, coupon, worstRule } = each
    const verdict: Verdict = coupon.accepted ? 'accept' : 'reject'
    return {
      number: firstNumber + each.index,
      date: dateText(new Date(coupon.day * MS_PER_DAY), reader.locale, 'UTC'),
      by: isOverridden(lead) ? say(gradingWords, reader.locale, 'byDecisionEvidence') : by(each, reader.locale),
      verdict,
      verdictWord: say(scorecardWords, reader.locale, verdict),
      closest: worstRule !== null && coupon.worstMargin !== undefined
        ? { rule: ruleName(worstRule, reader.locale), margin: closestMargin(lead.scorecard, worstRule, reader), scaled: signed(coupon.worstMargin) }
        : null,
      yesNo: coupon.attributesGood === undefined ? '–' : say(print, reader.locale, coupon.attributesGood ? 'allGood' : 'notAll'),
    }
  })
}

function by({ lead, coupon }: JudgedCoupon, locale: Locale): string {
  if (lead.by === 'self') return say(print, locale, 'bySelf', { weight: (coupon.weight ?? 1).toFixed(2) })
  return say(print, locale, lead.by === 'second' ? 'bySecond' : 'byInstructor')
}

function closestMargin({ findings }: Scorecard, rule: string, reader: Reader): string {
  const finding = findings.find((each): each is Finding => each.rule === rule && each.margin !== null)
  return (finding && marginText(finding, reader)) ?? '–'
}

/** '+0.85', '−1.20' */
const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(2)}`

/** Rules that could not be judged on some of the coupons used, those on most first. */
export function notMeasuredRules(judged: readonly JudgedCoupon[]): { readonly rule: string; readonly coupons: number }[] {
  const counts = new Map<string, number>()
  for (const { lead } of judged) {
    for (const { rule, verdict } of lead.scorecard.findings) if (verdict === 'not-measured') counts.set(rule, (counts.get(rule) ?? 0) + 1)
  }
  return [...counts].map(([rule, coupons]) => ({ rule, coupons })).sort((a, b) => b.coupons - a.coupons || a.rule.localeCompare(b.rule))
}

/** How many coupons were left out, by why. */
export function leftOutCounts(leftOut: Evidence['leftOut']): Readonly<Record<LeftOut['because'], number>> {
  const count = (because: LeftOut['because']): number => leftOut.filter((each) => each.because === because).length
  return { 'not-inspected': count('not-inspected'), incomplete: count('incomplete'), 'self-only': count('self-only') }
}

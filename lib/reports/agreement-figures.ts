import { cohensKappa, gwetAc1, type Agreement } from '../statistics/agreement'
import type { AgreementTable } from '../statistics/agreement-table'
import { type Interval, intervalAround } from '../statistics/interval'
import { twoSidedT } from '../statistics/mean-interval'
import { wilsonInterval } from '../statistics/proportion'
import { scottsPi } from '../statistics/scotts-pi'
import { WHOLE_COUPON, type Subject, type TwoLooks } from './agreement-looks'
import { LEAST_TO_COMPARE } from './pass-rates'

/** With fewer coupons than this AC1 and kappa are not worked out: their standard errors are for many. This project's choice: no source. */
export const LEAST_TO_CORRECT = 10
const CONFIDENCE = 0.95

/**
 * Whether first and second are two persons, or two sides such as students and their instructors (`kept`), or whoever happened to come
 * first (`changing`). Kappa is Cohen's between the former and Scott's pi, which is Fleiss' kappa of two verdicts, over the latter.
 */
export type Sides = 'kept' | 'changing'

/** Agreement less what chance gives. */
export type Corrected =
  | { readonly kind: 'few' }
  /** Everybody gave every coupon the same one verdict: kappa is then not defined. */
  | { readonly kind: 'all-the-same' }
  /** `interval` is null where nobody differed, or everybody did: the standard error is then 0, which is not certainty. */
  | { readonly kind: 'estimate'; readonly value: number; readonly interval: Interval | null }

/** How alike two sides judge. Only coupons that both accepted or rejected are compared. */
export type AgreementFigures = {
  readonly compared: number
  readonly alike: number
  /** Coupons the first accepts and the second rejects. */
  readonly onlyFirst: readonly string[]
  readonly onlySecond: readonly string[]
  /** Coupons on which one of them left it unmeasured, or held that it does not apply. */
  readonly leftOut: number
  /** With its 95 % Wilson interval; null where there are too few. */
  readonly share: (Interval & { readonly rate: number }) | null
  readonly ac1: Corrected
  readonly kappa: Corrected
}

/** Compares two sides over one rule, or over the whole coupon. A rule that neither says applies to a coupon is not there. */
export function compareLooks(looks: readonly TwoLooks[], subject: Subject, sides: Sides): AgreementFigures {
  const pairs = looks.map(({ couponId, first, second }) => ({
    couponId,
    one: subject === WHOLE_COUPON ? first.verdict : (first.rules.get(subject) ?? 'not-applicable'),
    other: subject === WHOLE_COUPON ? second.verdict : (second.rules.get(subject) ?? 'not-applicable'),
  })).filter(({ one, other }) => one !== 'not-applicable' || other !== 'not-applicable')
  const where = (one: string, other: string): string[] => pairs.filter((pair) => pair.one === one && pair.other === other).map(({ couponId }) => couponId)
  const [onlyFirst, onlySecond] = [where('accept', 'reject'), where('reject', 'accept')]
  const table = [[where('accept', 'accept').length, onlyFirst.length], [onlySecond.length, where('reject', 'reject').length]]
  const { compared, ...figures } = agreementOf(table, sides)
  return { compared, ...figures, onlyFirst, onlySecond, leftOut: pairs.length - compared }
}

/**
 * Share, AC1 and kappa of a table of verdicts, with 95 % intervals.
 *
 * Source: Wilson's interval for the share; value ± t · standard error with n − 1 degrees of freedom for the others, as the R package
 * irrCAC does it (Gwet, Handbook of Inter-Rater Reliability, 4th ed. 2014), held within −1 and 1.
 *
 * @throws RangeError when the table is not square or holds anything but counts
 */
export function agreementOf(table: AgreementTable, sides: Sides): Pick<AgreementFigures, 'compared' | 'alike' | 'share' | 'ac1' | 'kappa'> {
  const compared = table.flat().reduce((sum, count) => sum + count, 0)
  const alike = table.reduce((sum, row, k) => sum + (row[k] ?? 0), 0)
  const share = compared < LEAST_TO_COMPARE ? null : { rate: alike / compared, ...wilsonInterval(alike, compared, CONFIDENCE) }
  if (compared < LEAST_TO_CORRECT) return { compared, alike, share, ac1: { kind: 'few' }, kappa: { kind: 'few' } }
  const used = table.filter((row, k) => row.some((count) => count > 0) || table.some((other) => (other[k] ?? 0) > 0)).length
  return {
    compared, alike, share,
    ac1: estimate(gwetAc1(table), compared),
    kappa: used < 2 ? { kind: 'all-the-same' } : estimate(sides === 'kept' ? cohensKappa(table) : scottsPi(table), compared),
  }
}

/** The root of rounding errors, which a standard error of 0 comes out as. */
const NOTHING = 1e-6

function estimate({ value, standardError }: Agreement, n: number): Corrected {
  if (standardError < NOTHING) return { kind: 'estimate', value, interval: null }
  const half = twoSidedT(n - 1, CONFIDENCE) * standardError
  return { kind: 'estimate', value, interval: intervalAround(value, value - half, value + half, -1, 1) }
}

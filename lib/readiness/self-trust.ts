import type { Verdict } from '../scoring/types'

/** A coupon judged by the student and by someone else, each with a verdict. */
export type ComparedVerdicts = { readonly self: 'accept' | 'reject'; readonly instructor: 'accept' | 'reject' }

/** How far a student's own inspections count, and the numbers behind it, for the screen. */
export type SelfTrust = {
  readonly compared: number
  readonly agreed: number
  /** Accepted by the student, rejected by the instructor: the costlier way to be wrong. */
  readonly tooKind: number
  /** Rejected by the student, accepted by the instructor. */
  readonly tooStrict: number
  /** Compared coupons it takes before self-inspections count at all. */
  readonly minimum: number
  /** Expected share of agreement: (agreed + 1) / (compared + 2). */
  readonly agreement: number
  /** 0 to 1: the power given to a coupon that only the student inspected. */
  readonly weight: number
}

/** Fewer compared coupons than this say too little. This project's choice: no source. */
export const LEAST_COMPARED = 5

/**
 * The weight of a student's self-inspections: agreement above what a coin would reach, 2 · (agreed + 1) / (compared + 2) − 1,
 * never below 0, and 0 until five coupons were judged by both.
 *
 * The expected agreement is the posterior mean under a flat prior (Laplace's rule of succession). Taking half as chance is the S
 * coefficient for two categories of Bennett, Alpert & Goldstein 1954, Public Opinion Quarterly 18:303 (from memory); unlike kappa it
 * has a value when all coupons pass. It does not see a student who calls everything a fail while most fail: `tooKind` and `tooStrict` do.
 */
export function selfTrust(pairs: readonly ComparedVerdicts[]): SelfTrust {
  const compared = pairs.length
  const tooKind = pairs.filter(({ self, instructor }) => self === 'accept' && instructor === 'reject').length
  const tooStrict = pairs.filter(({ self, instructor }) => self === 'reject' && instructor === 'accept').length
  const agreed = compared - tooKind - tooStrict
  const agreement = (agreed + 1) / (compared + 2)
  const weight = compared < LEAST_COMPARED ? 0 : Math.max(0, 2 * agreement - 1)
  return { compared, agreed, tooKind, tooStrict, minimum: LEAST_COMPARED, agreement, weight }
}

/** A verdict that decides; null for incomplete. */
export function decided(verdict: Verdict): 'accept' | 'reject' | null {
  return verdict === 'incomplete' ? null : verdict
}

import { median } from 'simple-statistics'
import { assessReadiness, type Assessment, type ReadinessRule } from './assess'
import type { PracticeCoupon } from './practice-coupon'

/** How many further accepted coupons it takes until the program's own rule suggests a test. */
export type AcceptedNeeded =
  | { readonly kind: 'now' }
  /** After `count` of them the chance would be `probability` and the rule met. */
  | { readonly kind: 'after'; readonly count: number; readonly probability: number }
  /** Not even after `most` of them; `probability` is the chance then, null while there would still be too few coupons to tell. */
  | { readonly kind: 'not-within'; readonly most: number; readonly probability: number | null }

/** Looked no further ahead than this: what lies beyond is no goal for the next evenings. This project's choice. */
export const MOST_AHEAD = 6

/** The coupons whose middle margin stands for the student's usual one. */
const RECENT = 10

/**
 * The fewest further accepted coupons, welded today, after which the rule suggests a test, found by adding them one by one and asking
 * the rule again. Each has the middle margin of the student's own latest ten accepted coupons: none is taken to be better than what
 * they have shown. Without a measured one, the verdict alone counts.
 *
 * @param coupons in order of day
 * @param asOf today, on the coupons' count of days
 * @throws RangeError as `assessReadiness` does
 */
export function acceptedNeeded(coupons: readonly PracticeCoupon[], asOf: number, rule: ReadinessRule, most = MOST_AHEAD): AcceptedNeeded {
  if (suggestsTest(assessReadiness(coupons, asOf, rule))) return { kind: 'now' }
  const next = likeOwnAccepted(coupons, asOf)
  // A crack or missing fusion in the latest coupon is mended by an accepted one.
  const afterwards: ReadinessRule = { ...rule, blockingOpen: false }
  let probability: number | null = null
  for (let count = 1; count <= most; count += 1) {
    const then = assessReadiness([...coupons, ...Array.from({ length: count }, () => next)], asOf, afterwards)
    if (then.kind === 'estimate') probability = then.probability
    if (then.kind === 'estimate' && then.advice === 'test') return { kind: 'after', count, probability: then.probability }
  }
  return { kind: 'not-within', most, probability }
}

const suggestsTest = (assessment: Assessment): boolean => assessment.kind === 'estimate' && assessment.advice === 'test'

function likeOwnAccepted(coupons: readonly PracticeCoupon[], today: number): PracticeCoupon {
  const margins = coupons.filter(({ accepted }) => accepted).flatMap(({ worstMargin }) => worstMargin ?? []).slice(-RECENT)
  return margins.length === 0 ? { day: today, accepted: true } : { day: today, accepted: true, attributesGood: true, worstMargin: median(margins) }
}

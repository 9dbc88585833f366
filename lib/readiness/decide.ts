/**
 * What is suggested to the instructor, who decides: go on practising, nearly there, book the test,
 * or weld again first because the last coupon is too long ago.
 */
export type Advice = 'practise' | 'close' | 'test' | 'stale'

/** Why. Put into words by lib/reports. */
export type ReasonCode =
  | 'chance-at-threshold'
  | 'chance-kept'
  | 'chance-close'
  | 'chance-below'
  | 'no-pass-in-last-three'
  | 'blocking-open'
  | 'failed-test-needs-coupons'
  | 'gap-since-last-coupon'
  | 'verdicts-only'
  | 'few-test-results'

/** A suggestion once made is withdrawn only when the chance falls this far below the threshold, so it does not flicker. */
export const WITHDRAWAL_GAP = 0.1

/** Coupons to weld after a failed test before the next is suggested. */
export const COUPONS_AFTER_FAILED_TEST = 4

export type Standing = {
  readonly probability: number
  readonly threshold: number
  readonly passInLastThree: boolean
  readonly blockingOpen: boolean
  /** Coupons since the last failed test; null when the last test passed or there was none. */
  readonly couponsSinceFailedTest: number | null
  readonly daysSinceLastCoupon: number
  readonly staleAfterDays: number
  readonly previousAdvice: Advice | null
}

/**
 * The decision rule, apart from the model and owned by the coordinator. Every condition must hold for 'test':
 * the chance at the threshold (or already suggested and not 0.10 below it), a pass among the last three coupons,
 * nothing blocking open, four coupons since a failed test, and the last coupon no longer ago than `staleAfterDays`.
 * 'close' is a chance no more than 0.10 below the threshold, or one at it that another condition holds back.
 */
export function decide(standing: Standing): { readonly advice: Advice; readonly reasons: readonly ReasonCode[] } {
  const chance = chanceReason(standing)
  const obstacles = obstaclesOf(standing)
  const reasons = [chance, ...obstacles]
  if (obstacles.includes('gap-since-last-coupon')) return { advice: 'stale', reasons }
  if (chance === 'chance-below') return { advice: 'practise', reasons }
  if (chance === 'chance-close' || obstacles.length > 0) return { advice: 'close', reasons }
  return { advice: 'test', reasons }
}

function chanceReason({ probability, threshold, previousAdvice }: Standing): ReasonCode {
  if (probability >= threshold) return 'chance-at-threshold'
  if (probability < threshold - WITHDRAWAL_GAP) return 'chance-below'
  return previousAdvice === 'test' ? 'chance-kept' : 'chance-close'
}

function obstaclesOf(standing: Standing): ReasonCode[] {
  const obstacles: ReasonCode[] = []
  if (standing.daysSinceLastCoupon > standing.staleAfterDays) obstacles.push('gap-since-last-coupon')
  if (!standing.passInLastThree) obstacles.push('no-pass-in-last-three')
  if (standing.blockingOpen) obstacles.push('blocking-open')
  if (standing.couponsSinceFailedTest !== null && standing.couponsSinceFailedTest < COUPONS_AFTER_FAILED_TEST) {
    obstacles.push('failed-test-needs-coupons')
  }
  return obstacles
}

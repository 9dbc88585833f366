import { OPERATING_POINTS } from './operating-curve-data'

/** What following the advice at one threshold led to, on average over made-up students. */
export type OperatingPoint = {
  readonly threshold: number
  /** Share of first tests that passed; null when nobody tested. */
  readonly firstTimePass: number | null
  /** Practice coupons until the test was passed, or until coupon 60 without. */
  readonly coupons: number
  readonly tests: number
  readonly failed: number
  readonly passedBySixty: number
  /** First test booked while the true chance was under 0.6. */
  readonly tooEarly: number
  /** First test booked, or none by coupon 60, more than ten coupons after the true chance first reached 0.8. */
  readonly tooLate: number
}

/** Coupons' worth of plate, wire and time in one test, and in not having passed by coupon 60: assumptions, no source. */
export const TEST_COST = 3
export const NOT_PASSED_COST = 30

/** The curve from which a coordinator picks the threshold, lowest first. Simulated: real classes may differ. */
export function operatingCurve(): readonly OperatingPoint[] {
  return OPERATING_POINTS
}

/**
 * What a threshold costs a student on average, in practice coupons: coupons + 3 per test + `failedTest` per failed one + 30 when not passed.
 *
 * @param failedTest what a failed test costs beyond the test itself, in coupons
 * @throws RangeError when that is negative or not a number
 */
export function costInCoupons(point: OperatingPoint, failedTest: number): number {
  if (!(failedTest >= 0 && failedTest < Infinity)) throw new RangeError(`The cost of a failed test must be 0 coupons or more, not ${failedTest}.`)
  return point.coupons + TEST_COST * point.tests + failedTest * point.failed + NOT_PASSED_COST * (1 - point.passedBySixty)
}

/** The threshold with the least cost; the lower one of equals. */
export function cheapestThreshold(failedTest: number): number {
  return OPERATING_POINTS.reduce((best, point) => (costInCoupons(point, failedTest) < costInCoupons(best, failedTest) ? point : best)).threshold
}

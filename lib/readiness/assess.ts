import { ENOUGH_RESULTS, fitCalibration, levelFor, type Calibration, type ForecastResult } from './calibration'
import { decide, type Advice, type ReasonCode } from './decide'
import { readinessOf, stateAfter, type FilterState } from './incremental'
import { MODEL_VERSION, SHIPPED_PARAMETERS, type FilterParameters } from './parameters'
import { checkCoupons, type PracticeCoupon } from './practice-coupon'

/**
 * A test result.
 *
 * `forecast`: what the filter, uncalibrated, had said of it; results that carry one correct the program's estimates.
 * `day`: on the coupons' own count; results that carry one are this student's tests of this exercise.
 */
export type TestResult = { readonly passed: boolean; readonly forecast?: number; readonly day?: number }

/** The coordinator's rule, with the program's test results and what is known about this student beside the coupons. */
export type ReadinessRule = {
  /** The chance from which a test is suggested; 0.65 unless the program says otherwise. */
  readonly threshold: number
  /** Fewer coupons than this give no estimate at all. */
  readonly minimumCoupons: number
  /** After more days than this without a coupon the estimate is stale. */
  readonly staleAfterDays: number
  readonly testResults: readonly TestResult[]
  /** A finding is open that must be mended first, such as a crack in the latest coupon. */
  readonly blockingOpen?: boolean
  /** What was advised last time: a suggestion is not withdrawn at the first small drop. */
  readonly previousAdvice?: Advice
  /** The program's refitted parameters under their own version; the shipped ones when absent. */
  readonly model?: { readonly version: string; readonly parameters: FilterParameters }
  /** Day of the planned test; `asOf` when absent. */
  readonly testDay?: number
}

/** `need` is the number of coupons an estimate takes, `have` how many there are. */
export type Assessment = { readonly kind: 'insufficient'; readonly have: number; readonly need: number } | ReadinessEstimate

export type ReadinessEstimate = {
  readonly kind: 'estimate'
  readonly probability: number
  readonly low: number
  readonly high: number
  readonly level: 0.8 | 0.95
  readonly advice: Advice
  readonly reasons: readonly ReasonCode[]
  /** Coupons that told the filter something. */
  readonly couponsUsed: number
  /** The filter's probability before calibration: what to store as the forecast of a test. */
  readonly uncalibrated: number
  readonly calibration: Calibration
  /** Test results behind the calibration. */
  readonly resultsUsed: number
  readonly modelVersion: string
}

/**
 * What a screen shows: not enough yet, or the chance with its limits, the advice and the reasons for it.
 *
 * @param coupons this student's coupons of this exercise, in order of day
 * @param asOf today, on the coupons' count of days
 * @param known the filter's state after these coupons under the rule's model, where it is at hand; worked out from them when absent
 * @throws RangeError for coupons out of order or dated after `asOf`, or a rule that cannot be followed
 */
export function assessReadiness(coupons: readonly PracticeCoupon[], asOf: number, rule: ReadinessRule, known?: FilterState): Assessment {
  checkRule(rule)
  checkCoupons(coupons)
  if (!Number.isFinite(asOf)) throw new RangeError(`Today must be a finite number of days, not ${asOf}.`)
  const last = coupons.at(-1)
  if (last && last.day > asOf) throw new RangeError('A coupon is dated after today: correct its date first.')
  if (rule.testResults.some(({ day }) => day !== undefined && day > asOf)) throw new RangeError('A test is dated after today: correct its date first.')
  const testDay = rule.testDay ?? asOf
  if (!(testDay >= asOf)) throw new RangeError('The planned test lies before today.')

  const counted = coupons.filter(tellsSomething)
  if (counted.length < rule.minimumCoupons) return { kind: 'insufficient', have: counted.length, need: rule.minimumCoupons }

  const forecasts = rule.testResults.filter(hasForecast)
  const level = levelFor(forecasts.length)
  const calibration = fitCalibration(forecasts)
  const parameters = rule.model?.parameters ?? SHIPPED_PARAMETERS
  const state = known ?? stateAfter(coupons, parameters)
  const plain = readinessOf(state, testDay, { level, parameters })
  const readiness = forecasts.length > 0 ? readinessOf(state, testDay, { level, parameters, calibration }) : plain
  const { advice, reasons } = decide({
    probability: readiness.probability,
    threshold: rule.threshold,
    passInLastThree: counted.slice(-3).some((coupon) => coupon.accepted),
    blockingOpen: rule.blockingOpen ?? false,
    couponsSinceFailedTest: couponsSinceFailedTest(counted, rule.testResults),
    daysSinceLastCoupon: last ? asOf - last.day : 0,
    staleAfterDays: rule.staleAfterDays,
    previousAdvice: rule.previousAdvice ?? null,
  })
  return {
    kind: 'estimate',
    ...readiness,
    level,
    advice,
    reasons: [...reasons, ...cautions(counted, forecasts.length)],
    couponsUsed: counted.length,
    uncalibrated: plain.probability,
    calibration,
    resultsUsed: forecasts.length,
    modelVersion: rule.model?.version ?? MODEL_VERSION,
  }
}

function checkRule({ threshold, minimumCoupons, staleAfterDays, testResults }: ReadinessRule): void {
  if (typeof threshold !== 'number' || !(threshold > 0 && threshold < 1)) throw new RangeError(`The threshold must lie between 0 and 1, not ${threshold}.`)
  if (!Number.isInteger(minimumCoupons) || minimumCoupons < 0) throw new RangeError(`The minimum of coupons must be a whole number, not ${minimumCoupons}.`)
  if (typeof staleAfterDays !== 'number' || !(staleAfterDays > 0)) throw new RangeError(`The days until an estimate is stale must be above 0, not ${staleAfterDays}.`)
  if (!Array.isArray(testResults)) throw new RangeError('The rule needs a list of test results; an empty list when there are none.')
  for (const result of testResults) {
    if (typeof result?.passed !== 'boolean') throw new RangeError('A test result must say whether it was passed: true or false.')
    const { day } = result
    if (day !== undefined && !Number.isFinite(day)) throw new RangeError(`A test needs a day that is a finite number, not ${day}.`)
  }
}

/** A coupon of weight 0 is practice nobody vouches for. */
function tellsSomething({ weight }: PracticeCoupon): boolean {
  return weight === undefined || weight > 0
}

function hasForecast(result: TestResult): result is TestResult & ForecastResult {
  return result.forecast !== undefined
}

/** Coupons welded on a later day than this student's last test, when that failed; a coupon of the same day may have come before it. */
function couponsSinceFailedTest(coupons: readonly PracticeCoupon[], results: readonly TestResult[]): number | null {
  let last: { day: number; passed: boolean } | null = null
  for (const { day, passed } of results) {
    if (day !== undefined && (last === null || day >= last.day)) last = { day, passed }
  }
  if (last === null || last.passed) return null
  const { day } = last
  return coupons.filter((coupon) => coupon.day > day).length
}

function cautions(coupons: readonly PracticeCoupon[], results: number): ReasonCode[] {
  const codes: ReasonCode[] = []
  if (coupons.every((coupon) => coupon.worstMargin === undefined)) codes.push('verdicts-only')
  if (results < ENOUGH_RESULTS) codes.push('few-test-results')
  return codes
}

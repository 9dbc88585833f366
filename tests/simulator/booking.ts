import { decide, type Advice } from '@/lib/readiness/decide'
import { absorbCoupon, readinessOf, startState } from '@/lib/readiness/incremental'
import type { OperatingPoint } from '@/lib/readiness/operating-curve'
import { makeCohort, trueChance, type Series } from './cohort'
import { diceOf } from './dice'
import type { Scenario } from './scenarios'

export const MOST_COUPONS = 60
const FEWEST_COUPONS = 5
/** A test now fails or passes by this draw, the same for every threshold, so that thresholds are compared on the same luck. */
type Step = { readonly shown: number; readonly truth: number; readonly draw: number; readonly passInLastThree: boolean }

/** Follows the advice at each threshold through the same made-up students. */
export function operatingPoints(scenario: Scenario, students: number, seed: number, thresholds: readonly number[]): OperatingPoint[] {
  const paths = makeCohort(scenario, students, seed, seed, MOST_COUPONS).map((series, i) => pathOf(series, scenario, seed + 15_485_863 * (i + 1)))
  return thresholds.map((threshold) => summary(threshold, paths.map((path) => follow(path, threshold))))
}

function pathOf(series: Series, scenario: Scenario, seed: number): Step[] {
  const dice = diceOf(seed)
  let state = startState()
  return series.coupons.map((coupon, i) => {
    state = absorbCoupon(state, coupon)
    const moment = series.moments[i]!
    return {
      shown: readinessOf(state, moment.day).probability,
      truth: trueChance(series.student, moment, scenario, seed),
      draw: dice.unit(),
      passInLastThree: series.coupons.slice(Math.max(0, i - 2), i + 1).some(({ accepted }) => accepted),
    }
  })
}

type Outcome = { readonly coupons: number; readonly tests: number; readonly passed: boolean; readonly first: { readonly at: number; readonly truth: number; readonly passed: boolean } | null; readonly goodFrom: number | null }

function follow(path: readonly Step[], threshold: number): Outcome {
  let tests = 0
  let first: Outcome['first'] = null
  let failedAt: number | null = null
  let previousAdvice: Advice | null = null
  const good = path.findIndex(({ truth }) => truth >= 0.8)
  const goodFrom = good < 0 ? null : good + 1
  for (let n = FEWEST_COUPONS; n <= path.length; n++) {
    const { shown, truth, draw, passInLastThree } = path[n - 1]!
    const { advice } = decide({
      probability: shown, threshold, passInLastThree, blockingOpen: false, previousAdvice,
      couponsSinceFailedTest: failedAt === null ? null : n - failedAt,
      daysSinceLastCoupon: 0, staleAfterDays: 1,
    })
    previousAdvice = advice
    if (advice !== 'test') continue
    tests++
    const passed = draw < truth
    first ??= { at: n, truth, passed }
    if (passed) return { coupons: n, tests, passed, first, goodFrom }
    failedAt = n
  }
  return { coupons: path.length, tests, passed: false, first, goodFrom }
}

function summary(threshold: number, outcomes: readonly Outcome[]): OperatingPoint {
  const share = (holds: (o: Outcome) => boolean) => outcomes.filter(holds).length / outcomes.length
  const mean = (pick: (o: Outcome) => number) => outcomes.reduce((sum, o) => sum + pick(o), 0) / outcomes.length
  const firsts = outcomes.flatMap(({ first }) => (first ? [first] : []))
  return {
    threshold,
    firstTimePass: firsts.length === 0 ? null : firsts.filter(({ passed }) => passed).length / firsts.length,
    coupons: mean((o) => o.coupons),
    tests: mean((o) => o.tests),
    failed: mean((o) => o.tests - (o.passed ? 1 : 0)),
    passedBySixty: share((o) => o.passed),
    tooEarly: share(({ first }) => first !== null && first.truth < 0.6),
    tooLate: share(({ first, goodFrom }) => goodFrom !== null && (first?.at ?? MOST_COUPONS) > goodFrom + 10),
  }
}

import { assessReadiness, type ReadinessEstimate, type ReadinessRule } from './assess'
import type { JudgedCoupon } from './coupons-from-records'
import { readinessFilter } from './filter'
import { ifRulePassed } from './if-rule-passed'
import { likeTheLastThree } from './like-the-last-three'
import type { Readiness } from './read-out'
import { whyWide, type Ask, type WideBecause } from './why-wide'

/** The chance if this rule had passed on every coupon, and how far that is above the chance as it stands. */
export type IfPassed = { readonly rule: string; readonly probability: number; readonly gain: number }

/** The estimate after `count` more coupons like the last three, welded today. */
export type AfterMore = Readiness & { readonly count: number }

export type ReadinessExplanation = {
  /** The rules that ever failed or held the worst margin, the most to gain first. */
  readonly ifPassed: readonly IfPassed[]
  /** The rule that most holds the chance back; null when mending any one of them gains less than 0.01. */
  readonly holdsBack: IfPassed | null
  readonly afterMore: readonly AfterMore[]
  readonly whyWide: readonly WideBecause[]
}

/** A gain smaller than this is not worth a sentence. */
const LEAST_GAIN = 0.01

/**
 * What holds the chance back, what more coupons would tell, and why the interval is wide: each answered by changing the coupons
 * and asking the filter again.
 *
 * @param judged in order of day, from `couponsFromRecords`
 * @param asOf today, on the coupons' count of days
 * @returns null while there is no estimate to explain
 * @throws RangeError as `assessReadiness` does
 */
export function explainReadiness(judged: readonly JudgedCoupon[], asOf: number, rule: ReadinessRule): ReadinessExplanation | null {
  const coupons = judged.map(({ coupon }) => coupon)
  const estimate = assessReadiness(coupons, asOf, rule)
  if (estimate.kind === 'insufficient') return null
  const ask = askAs(estimate, rule)
  const testDay = rule.testDay ?? asOf

  const ifPassed = rulesThatMatter(judged)
    .map((id) => {
      const { probability } = ask(judged.map((each) => ifRulePassed(each, id)), testDay)
      return { rule: id, probability, gain: probability - estimate.probability }
    })
    .sort((a, b) => b.gain - a.gain)
  const most = ifPassed[0]
  return {
    ifPassed,
    holdsBack: most && most.gain >= LEAST_GAIN ? most : null,
    afterMore: [2, 5].map((count) => ({ count, ...ask([...coupons, ...likeTheLastThree(coupons, count, asOf)], testDay) })),
    whyWide: whyWide(judged, asOf, testDay, estimate, ask),
  }
}

function askAs({ level, calibration, resultsUsed }: ReadinessEstimate, { model }: ReadinessRule): Ask {
  const options = { ...(model ? { parameters: model.parameters } : {}), ...(resultsUsed > 0 ? { calibration } : {}) }
  return (coupons, testDay, otherLevel) => readinessFilter(coupons, testDay, { ...options, level: otherLevel ?? level })
}

/** A rule that never failed and never held the worst margin changes nothing by passing. */
function rulesThatMatter(judged: readonly JudgedCoupon[]): string[] {
  const ids = new Set<string>()
  for (const { lead, worstRule } of judged) {
    if (worstRule !== null) ids.add(worstRule)
    for (const { rule, verdict } of lead.scorecard.findings) if (verdict === 'reject') ids.add(rule)
  }
  return [...ids].sort()
}

import type { Finding, Scorecard, Verdict } from '../scoring/types'
import { couponOf, isOverridden, type JudgedCoupon } from './coupons-from-records'
import type { PracticeCoupon } from './practice-coupon'

/**
 * The coupon as it would have been had this rule passed: its margin no longer counts, its yes/no answer is yes, and the verdict
 * follows from the other rules. A coupon whose verdict then hangs on something not measured teaches nothing (weight 0); one judged
 * against its scorecard stays as it is.
 */
export function ifRulePassed({ lead, coupon }: JudgedCoupon, rule: string): PracticeCoupon {
  if (isOverridden(lead) || !lead.scorecard.findings.some((finding) => finding.rule === rule)) return coupon
  const { by, criteria, stations } = lead
  const inspection = { by, criteria, scorecard: passing(lead.scorecard, rule), ...(stations ? { stations } : {}) }
  return couponOf(coupon.day, inspection, coupon.weight ?? 1)?.coupon ?? { day: coupon.day, accepted: false, weight: 0 }
}

function passing(scorecard: Scorecard, rule: string): Scorecard {
  const findings = scorecard.findings.flatMap((finding): Finding[] => {
    if (finding.rule !== rule || finding.verdict === 'not-applicable') return [finding]
    return finding.margin === null ? [{ ...finding, verdict: 'accept' }] : []
  })
  return { ...scorecard, findings, verdict: verdictOf(findings), mark: null }
}

/** Any reject rejects; else anything not measured leaves it open. */
function verdictOf(findings: readonly Finding[]): Verdict {
  if (findings.some(({ verdict }) => verdict === 'reject')) return 'reject'
  return findings.some(({ verdict }) => verdict === 'not-measured') ? 'incomplete' : 'accept'
}

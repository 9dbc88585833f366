import type { CouponRecord, InspectionRecord } from '@/lib/readiness/coupons-from-records'
import type { Finding, Scorecard } from '@/lib/scoring/types'

/** Criteria of three rules, enough to see each way a rule speaks. */
export const CRITERIA = {
  rules: [
    { id: 'leg-size', readiness: { as: 'margin', scale: 1 } },
    { id: 'leg-balance', readiness: { as: 'margin', scale: 1 } },
    { id: 'crack', readiness: { as: 'attribute' } },
  ],
} as const

type Read = { legSize?: number | null; legBalance?: number | null; crack?: 'accept' | 'reject' | null }

/** A scorecard from margins and a yes/no; null was not measured. */
export function scored({ legSize = 1, legBalance = 1, crack = 'accept' }: Read): Scorecard {
  const findings = [byMargin('leg-size', legSize), byMargin('leg-balance', legBalance), finding('crack', crack ?? 'not-measured', null)]
  const verdict = findings.some((f) => f.verdict === 'reject') ? 'reject' : findings.some((f) => f.verdict === 'not-measured') ? 'incomplete' : 'accept'
  return { criteriaId: 'made-up', scoringVersion: '1', verdict, mark: null, findings }
}

export function inspected(by: InspectionRecord['by'], read: Read, over: Partial<InspectionRecord> = {}): InspectionRecord {
  return { by, scorecard: scored(read), criteria: CRITERIA, ...over }
}

export function record(day: number, ...inspections: InspectionRecord[]): CouponRecord {
  return { day, inspections }
}

function byMargin(rule: string, margin: number | null): Finding {
  return finding(rule, margin === null ? 'not-measured' : margin >= 0 ? 'accept' : 'reject', margin)
}

function finding(rule: string, verdict: Finding['verdict'], margin: number | null): Finding {
  return {
    rule, verdict, margin, measured: margin, limit: { min: null, max: null }, unit: 'mm', closeCall: false, where: null,
    source: { title: 'made up for this test', clause: null, status: 'common-practice' },
  }
}

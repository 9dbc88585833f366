import type { Scorecard } from '../scoring/types'
import type { PracticeCoupon } from './practice-coupon'
import { decided, selfTrust, type ComparedVerdicts, type SelfTrust } from './self-trust'
import { worstMargin, type RuleEvidence, type StationCount } from './worst-margin'

/** One standing inspection of a coupon, scored. */
export type InspectionRecord = {
  readonly by: 'self' | 'instructor' | 'second'
  readonly scorecard: Scorecard
  /** The criteria version the scorecard was made with. */
  readonly criteria: { readonly rules: readonly RuleEvidence[] }
  readonly stations?: StationCount
  /** The inspector's own verdict, given with a reason, where it replaces the scorecard's. */
  readonly stated?: 'accept' | 'reject'
}

/** A coupon as recorded. `day` counts from the same origin for all coupons of the student. */
export type CouponRecord = { readonly day: number; readonly inspections: readonly InspectionRecord[] }

/** A coupon the filter can use: what it reads, and from which inspection. */
export type JudgedCoupon = {
  /** Place in the records given. */
  readonly index: number
  readonly lead: InspectionRecord
  readonly coupon: PracticeCoupon
  readonly worstRule: string | null
  /** Something was not measured, or the verdict was overridden: the verdict alone is used. */
  readonly verdictOnly: boolean
  /** The instructor and the second reader reached different verdicts; null when only one of them did. */
  readonly readersDiffer: boolean | null
}

/** Why a coupon was left out: nobody inspected it, nobody reached a verdict, or only a student whose inspections do not count yet. */
export type LeftOut = { readonly index: number; readonly because: 'not-inspected' | 'incomplete' | 'self-only' }

export type Evidence = { readonly judged: readonly JudgedCoupon[]; readonly leftOut: readonly LeftOut[]; readonly trust: SelfTrust }

/**
 * The filter's coupons from a student's records of one exercise.
 *
 * The instructor's inspection leads, then the second reader's; a coupon only the student inspected counts with the weight of
 * `trust`. Coupons without a verdict are left out whole: logging empty coupons must not move the estimate.
 *
 * @param records in order of day
 * @param trust from all the student's compared coupons; from these records when absent
 * @throws RangeError when a scorecard does not belong to its criteria
 */
export function couponsFromRecords(records: readonly CouponRecord[], trust: SelfTrust = selfTrust(comparedVerdicts(records))): Evidence {
  const judged: JudgedCoupon[] = []
  const leftOut: LeftOut[] = []
  records.forEach((record, index) => {
    const lead = leading(record)
    const weight = lead?.by === 'self' ? trust.weight : 1
    const found = lead && couponOf(record.day, lead, weight)
    if (!found) leftOut.push({ index, because: record.inspections.length === 0 ? 'not-inspected' : 'incomplete' })
    else if (weight === 0) leftOut.push({ index, because: 'self-only' })
    else judged.push({ index, lead, ...found, verdictOnly: found.coupon.worstMargin === undefined, readersDiffer: readersDiffer(record) })
  })
  return { judged, leftOut, trust }
}

function readersDiffer(record: CouponRecord): boolean | null {
  const first = verdictBy(record, 'instructor')
  const second = verdictBy(record, 'second')
  return first && second ? first !== second : null
}

/** The coupons that both the student and an instructor or second reader judged, as pairs of verdicts. */
export function comparedVerdicts(records: readonly CouponRecord[]): readonly ComparedVerdicts[] {
  return records.flatMap((record) => {
    const self = verdictBy(record, 'self')
    const instructor = verdictBy(record, 'instructor') ?? verdictBy(record, 'second')
    return self && instructor ? [{ self, instructor }] : []
  })
}

/** What the filter reads from one inspection, and the rule that held the worst margin; null when it reached no verdict. */
export function couponOf(day: number, inspection: InspectionRecord, weight: number): { coupon: PracticeCoupon; worstRule: string | null } | null {
  const verdict = verdictOf(inspection)
  if (!verdict) return null
  const base = { day, accepted: verdict === 'accept', ...(weight === 1 ? {} : { weight }) }
  if (isOverridden(inspection)) return { coupon: base, worstRule: null }
  const { worstMargin: margin, worstRule, attributesGood } = worstMargin(inspection.scorecard, inspection.criteria, inspection.stations)
  return {
    coupon: { ...base, ...(margin === null ? {} : { worstMargin: margin }), ...(attributesGood === null ? {} : { attributesGood }) },
    worstRule,
  }
}

function leading(record: CouponRecord): InspectionRecord | null {
  for (const by of ['instructor', 'second', 'self'] as const) {
    const found = inspectionBy(record, by)
    if (found && verdictOf(found)) return found
  }
  return null
}

function inspectionBy(record: CouponRecord, by: InspectionRecord['by']): InspectionRecord | undefined {
  return record.inspections.findLast((inspection) => inspection.by === by)
}

function verdictBy(record: CouponRecord, by: InspectionRecord['by']): 'accept' | 'reject' | null {
  const inspection = inspectionBy(record, by)
  return inspection ? verdictOf(inspection) : null
}

function verdictOf({ stated, scorecard }: InspectionRecord): 'accept' | 'reject' | null {
  return stated ?? decided(scorecard.verdict)
}

/** The inspector's own verdict stands against the scorecard's: its margins do not explain it. */
export function isOverridden({ stated, scorecard }: InspectionRecord): boolean {
  return stated !== undefined && stated !== scorecard.verdict
}

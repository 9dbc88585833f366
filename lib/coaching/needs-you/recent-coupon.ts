/**
 * One of a student's latest coupons of one exercise, as far as an instructor has looked at it: what the rules about practice read.
 * A coupon nobody but the student has looked at is not among them, so no rule gives away what the student wrote.
 */
export type RecentCoupon = {
  /** The student's count within the exercise, from 1. */
  readonly number: number
  /** The verdict that stands. */
  readonly verdict: 'accept' | 'reject' | 'incomplete'
  /** 0 to 100; null when the verdict is incomplete. */
  readonly mark: number | null
  /** The student's own verdict; null when there is none. */
  readonly selfVerdict: 'accept' | 'reject' | 'incomplete' | null
  /** What the instructor's look rejected; null where it was not read, which is never "nothing". */
  readonly defects: readonly Defect[] | null
}

/**
 * A rule that rejected, and how: a bead too narrow and one too wide are two defects. 'seen': the rule can reject in one way only, such as
 * by too much undercut.
 */
export type Defect = { readonly rule: string; readonly side: 'under' | 'over' | 'seen' }

type Rejected = { readonly rule: string; readonly measured: number | null; readonly limit: { readonly min: number | null; readonly max: number | null } }

/** The defect behind a rejecting finding. */
export function defectOf({ rule, measured, limit: { min, max } }: Rejected): Defect {
  if (measured === null || min === null) return { rule, side: 'seen' }
  if (measured < min) return { rule, side: 'under' }
  return { rule, side: max === null ? 'seen' : 'over' }
}

/** How many of the latest coupons of one exercise are read, waiting ones among them: enough for the rule that looks furthest back. */
export const RECENT_COUPONS = 12

/** Practice that lies further back says nothing about today, in days since an exercise's last coupon. Common practice, no source. */
export const LATELY_DAYS = 21

import { daysIdle, type Attendance } from './gap'

/** Days without a coupon after which an unsigned exercise is what holds a student up. Common practice, no source: a week, so a class missed. */
export const UNSIGNED_DAYS = 7

/** The exercise to go on with, when its cautions are not confirmed this term. */
export type Unsigned = {
  readonly exerciseId: string
  /** The student has coupons of it already, so is in the middle of it and can log no more. */
  readonly begun: boolean
}

/**
 * Whether unsigned cautions hold a student up now: they are in the middle of the exercise, asked for a look at it, or have logged nothing
 * for a week. Who has just moved on to it reads them when they get there, and needs nobody for that.
 *
 * @param askedAbout the exercise of the look they asked for; null without one
 */
export function heldUp({ exerciseId, begun }: Unsigned, askedAbout: string | null, attendance: Attendance): boolean {
  return begun || askedAbout === exerciseId || daysIdle(attendance) >= UNSIGNED_DAYS
}

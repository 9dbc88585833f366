/** Days without a coupon that make a gap. Common practice, no source: two weeks of a class that meets every week. */
export const GAP_DAYS = 14

/** `never`: the student has logged nothing in this class, and the days count from when they joined or the term began. */
export type Gap = { readonly days: number; readonly never: boolean }

/** All on one count of calendar days. */
export type Attendance = {
  readonly today: number
  readonly termStarts: number
  readonly termEnds: number
  readonly joined: number
  /** null without a coupon. */
  readonly lastCoupon: number | null
}

/** Days in which a student has logged nothing; those before the term began, or before they joined, do not count. */
export const daysIdle = ({ today, termStarts, joined, lastCoupon }: Attendance): number => today - Math.max(termStarts, lastCoupon ?? joined)

/**
 * How long a student has logged nothing, once that is a gap; only while the term runs, and days before it began do not count.
 *
 * @returns null when there is no gap
 */
export function gap(attendance: Attendance): Gap | null {
  if (attendance.today > attendance.termEnds) return null
  const days = daysIdle(attendance)
  return days >= GAP_DAYS ? { days, never: attendance.lastCoupon === null } : null
}

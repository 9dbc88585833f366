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

/**
 * How long a student has logged nothing, once that is a gap; only while the term runs, and days before it began do not count.
 *
 * @returns null when there is no gap
 */
export function gap({ today, termStarts, termEnds, joined, lastCoupon }: Attendance): Gap | null {
  if (today > termEnds) return null
  const days = today - Math.max(termStarts, lastCoupon ?? joined)
  return days >= GAP_DAYS ? { days, never: lastCoupon === null } : null
}

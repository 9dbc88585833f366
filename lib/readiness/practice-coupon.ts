/**
 * What the filter learns from one practice coupon.
 *
 * `day` counts days from any origin, the same for all coupons of a series. `worstMargin` is standardised (margin over the
 * rule's scale), above 0 inside; absent when something was not measured. `attributesGood`: all yes/no rules passed.
 */
export type PracticeCoupon = {
  readonly day: number
  readonly accepted: boolean
  readonly worstMargin?: number
  readonly attributesGood?: boolean
  /** How far the inspection is believed, 0 to 1; absent is 1. It multiplies the likelihood's power. */
  readonly weight?: number
}

/** @throws RangeError naming the first coupon that is malformed or out of order. */
export function checkCoupons(coupons: readonly PracticeCoupon[]): void {
  if (!Array.isArray(coupons)) throw new RangeError('Readiness needs a list of coupons; an empty list when there are none.')
  coupons.forEach((coupon, i) => checkCoupon(coupon, coupons[i - 1]?.day ?? null, `Coupon ${i + 1}`))
}

/** @throws RangeError when the coupon is malformed or earlier than the day before it. */
export function checkCoupon(coupon: PracticeCoupon, dayBefore: number | null, name = 'The coupon'): void {
  if (typeof coupon !== 'object' || coupon === null) throw new RangeError(`${name} is empty: give its day and whether it was accepted.`)
  const { day, accepted, worstMargin, attributesGood, weight } = coupon
  if (!Number.isFinite(day)) throw new RangeError(`${name} needs a day that is a finite number, not ${day}.`)
  if (dayBefore !== null && day < dayBefore) throw new RangeError(`${name} is dated before the one ahead of it: sort coupons by day.`)
  if (typeof accepted !== 'boolean') throw new RangeError(`${name} must say whether it was accepted: leave out coupons nobody judged.`)
  if (worstMargin !== undefined && !Number.isFinite(worstMargin)) {
    throw new RangeError(`${name} has a worst margin that is not a finite number: leave it out when it was not measured.`)
  }
  if (attributesGood !== undefined && typeof attributesGood !== 'boolean') {
    throw new RangeError(`${name} must say true or false for its yes/no rules, or leave them out.`)
  }
  if (weight !== undefined && !(weight >= 0 && weight <= 1)) throw new RangeError(`${name} needs a weight between 0 and 1, not ${weight}.`)
}

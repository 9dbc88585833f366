import { scattered } from '../statistics/scattered'

const NUMBERS = 2 ** 32

/**
 * Whether a coupon is among those that a second person reads. It follows from the coupon's id alone, so that nobody picks them and asking
 * again gives the same answer; a larger share takes in all that a smaller one did.
 *
 * @param share of all coupons, from 0 (none) to 1 (all)
 * @throws RangeError when the share is not between 0 and 1
 */
export function isReadTwice(couponId: string, share: number): boolean {
  if (!(share >= 0 && share <= 1)) throw new RangeError('The share of coupons read twice lies between 0 and 1.')
  return scattered(`second/${couponId.toLowerCase()}`) / NUMBERS < share
}

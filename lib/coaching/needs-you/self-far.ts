import { decided, selfTrust, type SelfTrust } from '../../readiness/self-trust'
import type { RecentCoupon } from './recent-coupon'

/**
 * A student's own looks say no more than a coin about what the instructor's say: the readiness model gives them no weight although there
 * are enough to compare. Both thresholds are that model's (`selfTrust`): five compared coupons, agreement on half of them or less.
 *
 * @param coupons the latest of all exercises
 * @returns null when they agree more often, or too few were compared
 */
export function selfFar(coupons: readonly RecentCoupon[]): SelfTrust | null {
  const trust = selfTrust(coupons.flatMap(({ selfVerdict, verdict }) => {
    const [self, instructor] = [selfVerdict && decided(selfVerdict), decided(verdict)]
    return self && instructor ? [{ self, instructor }] : []
  }))
  return trust.compared >= trust.minimum && trust.weight === 0 ? trust : null
}

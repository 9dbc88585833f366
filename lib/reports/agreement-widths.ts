import { limitsOfAgreement, type LimitsOfAgreement } from '../statistics/limits-of-agreement'
import type { TwoLooks } from './agreement-looks'
import { LEAST_TO_COMPARE } from './pass-rates'
import { widthDifferences } from './width-differences'

const CONFIDENCE = 0.95

/** By how much the first's widths read over the second's, at the places both measured. */
export type WidthBias = {
  readonly coupons: number
  readonly places: number
  /** mm; null with too few coupons to say. */
  readonly found: LimitsOfAgreement | null
}

/** Compares measured widths place by place; each coupon counts once in the bias. */
export function widthBias(looks: readonly TwoLooks[]): WidthBias {
  const differences = looks.map(({ first, second }) => widthDifferences(first.widths, second.widths)).filter((own) => own.length > 0)
  return {
    coupons: differences.length,
    places: differences.flat().length,
    found: differences.length < LEAST_TO_COMPARE ? null : limitsOfAgreement(differences, CONFIDENCE),
  }
}

import { pooledCoefficientOfVariation, vangelInterval } from '../statistics/variation'

/** The widths of one coupon, mm, as far as they were measured. */
export type WidthCoupon = { readonly number: number; readonly widthsMm: readonly number[] }

/** How much widths vary within a coupon: a share of their mean, with its 95 % interval. */
export type Evenness = { readonly value: number; readonly low: number; readonly high: number | null; readonly coupons: number; readonly stations: number }

export type WidthConsistency = {
  /** Over all coupons; null with fewer than ten measured widths, or widths that do not vary at all. */
  readonly all: Evenness | null
  /** The first and the last half of the coupons; null while either has too few widths. */
  readonly halves: { readonly first: Evenness; readonly last: Evenness; readonly trend: 'evener' | 'less-even' | 'no-clear-change' } | null
}

/** Fewer widths than this say too little: the coefficient's own caution. */
const LEAST_STATIONS = 10
const LEAST_COUPONS = 3
const CONFIDENCE = 0.95

/**
 * How even a student's beads are within a coupon, whatever their size, and whether the last half of the coupons is evener than the
 * first. A change is called clear only when the two intervals do not touch.
 */
export function widthConsistency(coupons: readonly WidthCoupon[]): WidthConsistency {
  const usable = [...coupons].sort((a, b) => a.number - b.number).filter(({ widthsMm }) => widthsMm.length >= 2 && widthsMm.every((width) => width > 0))
  const middle = Math.floor(usable.length / 2)
  const [first, last] = [evenness(usable.slice(0, middle)), evenness(usable.slice(usable.length - middle))]
  return { all: evenness(usable), halves: middle >= LEAST_COUPONS && first && last ? { first, last, trend: trendOf(first, last) } : null }
}

function evenness(coupons: readonly WidthCoupon[]): Evenness | null {
  const stations = coupons.reduce((sum, { widthsMm }) => sum + widthsMm.length, 0)
  if (stations < LEAST_STATIONS) return null
  const { value, degreesOfFreedom } = pooledCoefficientOfVariation(coupons.map(({ widthsMm }) => widthsMm))
  if (value <= 0) return null
  return { value, ...vangelInterval(value, degreesOfFreedom + 1, CONFIDENCE), coupons: coupons.length, stations }
}

function trendOf(first: Evenness, last: Evenness): 'evener' | 'less-even' | 'no-clear-change' {
  if (last.high !== null && last.high < first.low) return 'evener'
  if (first.high !== null && last.low > first.high) return 'less-even'
  return 'no-clear-change'
}

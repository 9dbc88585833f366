/** The place of a chart's plot inside its drawing, in the drawing's units, y downward. */
export type Frame = {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** A place on an axis and what stands there. */
export type Tick = { readonly at: number; readonly label: string }

/** For a desk or a page, and for a phone: text keeps its size in both. */
export const WIDE_CHART: Frame = { width: 640, height: 290, left: 40, right: 616, top: 22, bottom: 250 }
export const NARROW_CHART: Frame = { width: 344, height: 240, left: 38, right: 330, top: 22, bottom: 200 }

/** Where a coupon stands along the axis from the first coupon shown to the last; a single coupon stands in the middle. */
export function couponX(first: number, last: number, frame: Frame): (coupon: number) => number {
  const span = frame.right - frame.left
  return (coupon) => round(last === first ? frame.left + span / 2 : frame.left + ((coupon - first) / (last - first)) * span)
}

/** The first and last coupon and round numbers between, at most eight. */
export function couponTicks(first: number, last: number, frame: Frame): Tick[] {
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((each) => (last - first) / each <= 6) ?? Math.ceil((last - first) / 6)
  const between: number[] = []
  for (let at = Math.ceil((first + 1) / step) * step; at < last; at += step) between.push(at)
  const roomy = between.filter((at) => last - at >= step * 0.6 && at - first >= step * 0.6)
  const coupons = first === last ? [first] : [first, ...roomy, last]
  return coupons.map((coupon) => ({ at: couponX(first, last, frame)(coupon), label: String(coupon) }))
}

/** @throws RangeError when it is not a whole number of 1 or more */
export function requireCouponNumber(value: number): void {
  if (!Number.isInteger(value) || value < 1) throw new RangeError(`Coupon number ${value} does not exist: coupons are numbered from 1.`)
}

const round = (value: number): number => Math.round(value * 100) / 100

import { area, line } from 'd3-shape'
import { couponTicks, couponX, requireCouponNumber, WIDE_CHART, type Frame, type Tick } from './chart-frame'

/** 0 is no estimate; 1 to 5 run from unlikely to likely, in the order of steel's temper colours. */
export type HeatStep = 0 | 1 | 2 | 3 | 4 | 5

/** The chance each step begins at. Shades for the eye, not a decision: the program sets its own threshold for a test. */
export const HEAT_FROM = { 1: 0, 2: 0.35, 3: 0.55, 4: 0.7, 5: 0.85 } as const

/**
 * The shade of a chance of passing. It follows the two decimals people see, so a cell that reads 0.55 is shaded as 0.55.
 *
 * @throws RangeError when the chance is not within 0 to 1
 */
export function heatStep(probability: number | null): HeatStep {
  if (probability === null) return 0
  chance(probability, 'A chance of passing')
  const shown = Math.round(probability * 100) / 100
  return ([5, 4, 3, 2] as const).find((step) => shown >= HEAT_FROM[step]) ?? 1
}

/** A chance in two decimals: '0.72'. Never '0.00' or '1.00': no number of coupons makes a test certain. */
export function chanceText(probability: number): string {
  return Math.min(0.99, Math.max(0.01, chance(probability, 'A chance of passing'))).toFixed(2)
}

/** What was known after one coupon. `estimate` is null while there were too few coupons for one. */
export type TrackPoint = {
  readonly coupon: number
  readonly estimate: { readonly probability: number; readonly low: number; readonly high: number } | null
}

/** A test taken after a practice coupon. */
export type TrackTest = { readonly afterCoupon: number; readonly passed: boolean }

export type ReadinessTrackInput = {
  /** In any order; one per practice coupon. */
  readonly points: readonly TrackPoint[]
  readonly tests: readonly TrackTest[]
  /** The chance from which the program suggests a test. */
  readonly threshold: number
}

export type PlacedPoint = TrackPoint & { readonly x: number; readonly y: number | null; readonly yLow: number | null; readonly yHigh: number | null }

/** Everything a drawing of the track needs, in the frame's units, y downward. */
export type ReadinessTrack = {
  readonly frame: Frame
  /** One path for each unbroken run of estimates. */
  readonly lines: readonly string[]
  readonly bands: readonly string[]
  readonly points: readonly PlacedPoint[]
  readonly last: PlacedPoint | null
  readonly tests: readonly (TrackTest & { readonly x: number })[]
  readonly threshold: { readonly y: number; readonly value: number }
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
  /** The coupons before the first estimate, as an interval of x; null when there were none. */
  readonly tooFew: { readonly from: number; readonly to: number } | null
}

/**
 * Places a readiness track in a frame: the chance after each coupon, its interval, the threshold and the tests taken.
 *
 * @throws RangeError when a coupon number is not a whole number of 1 or more or appears twice, a chance or threshold lies outside
 * 0 to 1, an interval does not hold its chance, or there is no point at all
 */
export function drawReadinessTrack(input: ReadinessTrackInput, frame: Frame = WIDE_CHART): ReadinessTrack {
  const sorted = checked(input)
  const first = sorted[0]?.coupon ?? 1
  const end = Math.max(sorted.at(-1)?.coupon ?? first, ...input.tests.map((test) => test.afterCoupon))
  const x = couponX(first, end, frame)
  const y = (p: number): number => round(frame.bottom - p * (frame.bottom - frame.top))

  const points = sorted.map((point) => ({
    ...point,
    x: x(point.coupon),
    y: point.estimate && y(point.estimate.probability),
    yLow: point.estimate && y(point.estimate.low),
    yHigh: point.estimate && y(point.estimate.high),
  }))
  const runs = unbroken(points)
  const firstEstimate = points.find((point) => point.estimate)
  return {
    frame,
    lines: runs.map((run) => line<Estimated>((p) => p.x, (p) => p.y).digits(2)(run) ?? ''),
    bands: runs.map((run) => area<Estimated>((p) => p.x, (p) => p.yLow, (p) => p.yHigh).digits(2)(run) ?? ''),
    points,
    last: points.findLast((point) => point.estimate) ?? null,
    tests: input.tests.map((test) => ({ ...test, x: x(test.afterCoupon) })),
    threshold: { y: y(input.threshold), value: input.threshold },
    xTicks: couponTicks(first, end, frame),
    yTicks: [0, 0.25, 0.5, 0.75, 1].map((p) => ({ at: y(p), label: String(p) })),
    tooFew: points[0]?.estimate ? null : { from: x(first), to: firstEstimate?.x ?? x(end) },
  }
}

type Estimated = { readonly x: number; readonly y: number; readonly yLow: number; readonly yHigh: number }

function unbroken(points: readonly PlacedPoint[]): Estimated[][] {
  const runs: Estimated[][] = []
  let open: Estimated[] | null = null
  for (const { x, y, yLow, yHigh } of points) {
    if (y === null || yLow === null || yHigh === null) {
      open = null
      continue
    }
    if (!open) runs.push((open = []))
    open.push({ x, y, yLow, yHigh })
  }
  return runs
}

function checked({ points, tests, threshold }: ReadinessTrackInput): TrackPoint[] {
  if (points.length === 0) throw new RangeError('A readiness track needs at least one coupon.')
  chance(threshold, 'The threshold')
  const numbers = new Set<number>()
  for (const { coupon, estimate } of points) {
    requireCouponNumber(coupon)
    if (numbers.has(coupon)) throw new RangeError(`Coupon ${coupon} appears twice in the readiness track.`)
    numbers.add(coupon)
    if (!estimate) continue
    chance(estimate.probability, `The chance after coupon ${coupon}`)
    chance(estimate.low, `The low end after coupon ${coupon}`)
    chance(estimate.high, `The high end after coupon ${coupon}`)
    if (estimate.low > estimate.probability || estimate.high < estimate.probability) {
      throw new RangeError(`After coupon ${coupon} the interval ${estimate.low} to ${estimate.high} does not hold the chance ${estimate.probability}.`)
    }
  }
  tests.forEach((test) => requireCouponNumber(test.afterCoupon))
  return [...points].sort((a, b) => a.coupon - b.coupon)
}

function chance(value: number, name: string): number {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} is ${value}: it must lie within 0 and 1.`)
  return value
}

const round = (value: number): number => Math.round(value * 100) / 100

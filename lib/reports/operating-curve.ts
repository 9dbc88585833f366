import { cheapestThreshold, costInCoupons, operatingCurve, type OperatingPoint } from '../readiness/operating-curve'
import type { Frame, Tick } from './chart-frame'

export type CurvePoint = { readonly threshold: number; readonly firstTimePass: number; readonly coupons: number; readonly x: number; readonly y: number }

export type OperatingCurveView = {
  /** One row for each simulated threshold, lowest first, with its cost in practice coupons. */
  readonly rows: readonly (OperatingPoint & { readonly cost: number })[]
  readonly cheapest: number
  /** The program's own threshold, between the simulated ones on a straight line; null outside them. */
  readonly own: (OperatingPoint & { readonly cost: number }) | null
}

/**
 * What each threshold led to in simulation, and what it costs when a failed test costs `failedTest` practice coupons beyond the test.
 *
 * @throws RangeError when the cost is below 0 or no number
 */
export function operatingCurveView(threshold: number, failedTest: number): OperatingCurveView {
  const costed = (point: OperatingPoint) => ({ ...point, cost: costInCoupons(point, failedTest) })
  const own = pointAt(threshold)
  return { rows: operatingCurve().map(costed), cheapest: cheapestThreshold(failedTest), own: own && costed(own) }
}

/** The curve at any threshold within the simulated ones, on a straight line between its neighbours; null outside. */
export function pointAt(threshold: number): OperatingPoint | null {
  const points = operatingCurve()
  const exact = points.find((point) => Math.abs(point.threshold - threshold) < 1e-9)
  if (exact) return exact
  const above = points.findIndex((point) => point.threshold > threshold)
  const [low, high] = [points[above - 1], points[above]]
  if (!low || !high) return null
  const share = (threshold - low.threshold) / (high.threshold - low.threshold)
  const between = (of: (point: OperatingPoint) => number): number => of(low) + share * (of(high) - of(low))
  return {
    threshold,
    firstTimePass: low.firstTimePass === null || high.firstTimePass === null ? null : between((point) => point.firstTimePass ?? 0),
    coupons: between((point) => point.coupons),
    tests: between((point) => point.tests),
    failed: between((point) => point.failed),
    passedBySixty: between((point) => point.passedBySixty),
    tooEarly: between((point) => point.tooEarly),
    tooLate: between((point) => point.tooLate),
  }
}

export type DrawnCurve = {
  readonly frame: Frame
  readonly line: string
  readonly points: readonly CurvePoint[]
  readonly own: { readonly x: number; readonly y: number } | null
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
}

const MOST_COUPONS = 60

/** First tests passed (up) over practice coupons until passed (right), one point for each threshold. */
export function drawOperatingCurve({ rows, own }: OperatingCurveView, frame: Frame): DrawnCurve {
  const x = (coupons: number): number => round(frame.left + (coupons / MOST_COUPONS) * (frame.right - frame.left))
  const y = (share: number): number => round(frame.bottom - share * (frame.bottom - frame.top))
  const points = rows.flatMap(({ threshold, firstTimePass, coupons }) =>
    firstTimePass === null ? [] : [{ threshold, firstTimePass, coupons, x: x(coupons), y: y(firstTimePass) }])
  return {
    frame,
    line: `M${points.map((point) => `${point.x},${point.y}`).join('L')}`,
    points,
    own: own && own.firstTimePass !== null ? { x: x(own.coupons), y: y(own.firstTimePass) } : null,
    xTicks: [0, 10, 20, 30, 40, 50, 60].map((coupons) => ({ at: x(coupons), label: String(coupons) })),
    yTicks: [0, 0.25, 0.5, 0.75, 1].map((share) => ({ at: y(share), label: `${share * 100} %` })),
  }
}

const round = (value: number): number => Math.round(value * 100) / 100

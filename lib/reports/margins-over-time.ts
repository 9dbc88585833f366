import type { Finding } from '../scoring/types'
import { couponX, requireCouponNumber } from './chart-frame'

/** A coupon's findings, by the inspection that counts. */
export type MarginCoupon = { readonly number: number; readonly findings: readonly Finding[] }

/** A rule's margin on one coupon, standardised by the rule's scale; `margin` is null where it was not measured. */
export type MarginPoint = { readonly coupon: number; readonly margin: number | null; readonly finding: Finding | null }

/** One rule over all coupons, in order. `out` counts the coupons outside the limit, `measured` those with a margin. */
export type RuleMargins = { readonly rule: string; readonly points: readonly MarginPoint[]; readonly measured: number; readonly out: number; readonly last: Finding }

/**
 * The rules with a margin, each over the coupons: those most often outside their limit first, then those closest to it lately. Yes/no
 * rules have no margin and are left out.
 *
 * @throws RangeError when a coupon number is no whole number of 1 or more, or appears twice
 */
export function marginsByRule(coupons: readonly MarginCoupon[]): readonly RuleMargins[] {
  const sorted = [...coupons].sort((a, b) => a.number - b.number)
  sorted.forEach(({ number }, i) => {
    requireCouponNumber(number)
    if (sorted[i - 1]?.number === number) throw new RangeError(`Coupon ${number} appears twice.`)
  })
  const rules = [...new Set(sorted.flatMap(({ findings }) => findings.filter(({ standardMargin }) => standardMargin !== undefined).map(({ rule }) => rule)))]
  return rules.flatMap((rule) => ruleOver(rule, sorted)).sort((a, b) => b.out / b.measured - a.out / a.measured || lately(a) - lately(b) || a.rule.localeCompare(b.rule))
}

function ruleOver(rule: string, coupons: readonly MarginCoupon[]): RuleMargins[] {
  const points = coupons.map(({ number, findings }): MarginPoint => {
    const finding = findings.find((each) => each.rule === rule && each.standardMargin !== undefined) ?? null
    return { coupon: number, margin: finding?.standardMargin ?? null, finding }
  })
  const measured = points.filter(({ margin }) => margin !== null)
  const last = measured.at(-1)?.finding
  return last ? [{ rule, points, measured: measured.length, out: measured.filter(({ finding }) => finding?.verdict === 'reject').length, last }] : []
}

const LATELY = 3
/** The smallest of the last few margins. */
const lately = ({ points }: RuleMargins): number => Math.min(...points.flatMap(({ margin }) => margin ?? []).slice(-LATELY))

export type PlacedMargin = MarginPoint & { readonly x: number; readonly y: number }
export type MarginDrawing = {
  /** The limit; above it is inside. */
  readonly limitY: number
  readonly lines: readonly string[]
  readonly points: readonly PlacedMargin[]
}

/** Margins further than this from the limit stand at the edge of the drawing. */
const MOST_SHOWN = 2

/**
 * Places one rule's margins around its limit, on the same scale for every rule. Coupons on which it was not measured break the line.
 *
 * @param coupons the first and last coupon of the axis
 */
export function drawMargins({ points }: RuleMargins, coupons: { readonly first: number; readonly last: number }, frame: { readonly width: number; readonly height: number; readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }): MarginDrawing {
  const x = couponX(coupons.first, coupons.last, frame)
  const half = (frame.bottom - frame.top) / 2
  const limitY = frame.top + half
  const y = (margin: number): number => Math.round((limitY - (Math.max(-MOST_SHOWN, Math.min(MOST_SHOWN, margin)) / MOST_SHOWN) * half) * 100) / 100
  const runs: PlacedMargin[][] = [[]]
  for (const point of points) {
    if (point.margin === null) runs.push([])
    else runs.at(-1)?.push({ ...point, x: x(point.coupon), y: y(point.margin) })
  }
  return { limitY, points: runs.flat(), lines: runs.filter((run) => run.length > 1).map((run) => `M${run.map((each) => `${each.x},${each.y}`).join('L')}`) }
}

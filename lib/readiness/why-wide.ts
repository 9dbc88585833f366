import type { ReadinessEstimate } from './assess'
import type { JudgedCoupon } from './coupons-from-records'
import { likeTheLastThree } from './like-the-last-three'
import type { PracticeCoupon } from './practice-coupon'
import type { Readiness } from './read-out'

/**
 * A reason the interval is wide. `narrowerBy`: how much narrower it would be without it, worked out by asking the filter again;
 * `count` of `of` coupons: what the filter cannot see, or what tells it less.
 */
export type WideBecause =
  | { readonly code: 'few-coupons' | 'gap' | 'scattered-margins' | 'few-test-results'; readonly narrowerBy: number }
  | { readonly code: 'readers-differ' | 'verdicts-only'; readonly count: number; readonly of: number }

/** The filter as the estimate used it: same parameters, level and calibration. */
export type Ask = (coupons: readonly PracticeCoupon[], testDay: number, level?: number) => Readiness

/** An interval narrower than this needs no excuse; a cause that widens it by less needs no mention. */
const WIDE = 0.25
const LEAST = 0.03
/** Margins are looked at for scatter over this many coupons. */
const RECENT = 10

/** Why the interval is as wide as it is, the largest cause first; empty when it is not wide. */
export function whyWide(judged: readonly JudgedCoupon[], asOf: number, testDay: number, estimate: ReadinessEstimate, ask: Ask): WideBecause[] {
  const coupons = judged.map(({ coupon }) => coupon)
  const last = coupons.at(-1)
  const now = width(estimate)
  if (now < WIDE || !last) return []
  const without = [
    { code: 'few-coupons' as const, readiness: ask([...coupons, ...likeTheLastThree(coupons, 5, asOf)], testDay) },
    { code: 'gap' as const, readiness: ask(coupons, last.day) },
    { code: 'scattered-margins' as const, readiness: ask(smoothed(coupons), testDay) },
    { code: 'few-test-results' as const, readiness: estimate.level === 0.95 ? ask(coupons, testDay, 0.8) : estimate },
  ]
  const measured = without
    .map(({ code, readiness }) => ({ code, narrowerBy: now - width(readiness) }))
    .filter(({ narrowerBy }) => narrowerBy >= LEAST)
    .sort((a, b) => b.narrowerBy - a.narrowerBy)
  return [...measured, ...unseen(judged)]
}

function width({ low, high }: Readiness): number {
  return high - low
}

/** What the filter cannot see, or sees only as coupons that tell it less. */
function unseen(judged: readonly JudgedCoupon[]): WideBecause[] {
  const readTwice = judged.filter(({ readersDiffer }) => readersDiffer !== null)
  const differ = readTwice.filter(({ readersDiffer }) => readersDiffer === true).length
  const verdictsOnly = judged.filter(({ verdictOnly }) => verdictOnly).length
  return [
    ...(differ > 0 ? [{ code: 'readers-differ' as const, count: differ, of: readTwice.length }] : []),
    ...(verdictsOnly > 0 ? [{ code: 'verdicts-only' as const, count: verdictsOnly, of: judged.length }] : []),
  ]
}

/** The same coupons with the margins of the last ten on the straight line through them. */
function smoothed(coupons: readonly PracticeCoupon[]): readonly PracticeCoupon[] {
  const recent = coupons.flatMap(({ worstMargin }, at) => (worstMargin === undefined ? [] : [{ at, y: worstMargin }])).slice(-RECENT)
  if (recent.length < 3) return coupons
  const meanAt = mean(recent.map(({ at }) => at))
  const meanY = mean(recent.map(({ y }) => y))
  const slope = sum(recent.map(({ at, y }) => (at - meanAt) * (y - meanY))) / sum(recent.map(({ at }) => (at - meanAt) ** 2))
  const line = new Map(recent.map(({ at }) => [at, meanY + slope * (at - meanAt)]))
  return coupons.map((coupon, at) => {
    const worstMargin = line.get(at)
    return worstMargin === undefined ? coupon : { ...coupon, worstMargin }
  })
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

function mean(values: readonly number[]): number {
  return sum(values) / values.length
}

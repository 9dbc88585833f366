import { LEAST_COMPARED } from '../readiness/self-trust'
import type { Verdict } from '../scoring/types'
import type { Interval } from '../statistics/interval'
import { meanInterval } from '../statistics/mean-interval'
import { wilsonInterval } from '../statistics/proportion'
import { widthDifferences, type WidthAt } from './width-differences'

export type { WidthAt }

/** One person's look at a coupon, as far as the two are compared. */
export type ComparedSide = { readonly verdict: Verdict; readonly widths: readonly WidthAt[] }

/** A coupon that both the student and an instructor looked at. */
export type ComparedLook = { readonly key: string; readonly own: ComparedSide; readonly theirs: ComparedSide }

/** One coupon of the drawing: whether the verdicts agreed, and by how much the student's widths read over the instructor's, mm. */
export type EyePoint = { readonly key: string; readonly agrees: boolean | null; readonly widthOffMm: number | null }

/** How well a student sees their own welds. */
export type EyeOverTime = {
  /** Coupons on which both reached a verdict. */
  readonly compared: number
  readonly agreed: number
  /** Accepted by the student, rejected by the instructor. */
  readonly tooKind: number
  readonly tooStrict: number
  /** The share of agreement with its 95 % interval; null with fewer than `least` coupons. */
  readonly agreement: (Interval & { readonly share: number }) | null
  readonly least: number
  /** Coupons whose widths both measured at the same places. */
  readonly widthCoupons: number
  /** By how much the student's widths read over the instructor's, mm, with the 95 % interval; null with fewer than `least` such coupons. */
  readonly widthBias: (Interval & { readonly mean: number }) | null
  /** Oldest first. */
  readonly points: readonly EyePoint[]
}

const CONFIDENCE = 0.95

/**
 * Compares a student's looks with the instructor's. Each coupon counts once: stations of one coupon are alike, so the difference is
 * averaged over a coupon's stations first, and the interval is that of the coupons' differences.
 *
 * Source: agreement as a share with Wilson's interval; the mean difference as in Bland & Altman 1986, Lancet 327:307 (from memory). The
 * least number of coupons is this project's choice.
 *
 * @param looks oldest first
 */
export function eyeOverTime(looks: readonly ComparedLook[]): EyeOverTime {
  const points = looks.map(({ key, own, theirs }) => ({ key, agrees: agreesOn(own.verdict, theirs.verdict), widthOffMm: meanOff(own.widths, theirs.widths) }))
  const decided = looks.filter(({ own, theirs }) => agreesOn(own.verdict, theirs.verdict) !== null)
  const tooKind = decided.filter(({ own, theirs }) => own.verdict === 'accept' && theirs.verdict === 'reject').length
  const tooStrict = decided.filter(({ own, theirs }) => own.verdict === 'reject' && theirs.verdict === 'accept').length
  const compared = decided.length
  const agreed = compared - tooKind - tooStrict
  const offs = points.flatMap(({ widthOffMm }) => widthOffMm ?? [])
  return {
    compared, agreed, tooKind, tooStrict, least: LEAST_COMPARED, points,
    agreement: compared < LEAST_COMPARED ? null : { share: agreed / compared, ...wilsonInterval(agreed, compared, CONFIDENCE) },
    widthCoupons: offs.length,
    widthBias: offs.length < LEAST_COMPARED ? null : meanInterval(offs, CONFIDENCE),
  }
}

/** null where one of them did not decide. */
function agreesOn(own: Verdict, theirs: Verdict): boolean | null {
  return own === 'incomplete' || theirs === 'incomplete' ? null : own === theirs
}

/** Mean of own less theirs over the places both measured; null without one. */
function meanOff(own: readonly WidthAt[], theirs: readonly WidthAt[]): number | null {
  const offs = widthDifferences(own, theirs)
  return offs.length === 0 ? null : offs.reduce((sum, off) => sum + off, 0) / offs.length
}

/** A point of the drawing, in the frame's units, y downward. */
export type PlacedEye = EyePoint & { readonly x: number; readonly y: number | null }
export type EyeDrawing = { readonly zeroY: number; readonly band: { readonly top: number; readonly bottom: number } | null; readonly points: readonly PlacedEye[]; readonly scaleMm: number }

/**
 * Places each coupon's width difference around a middle line of no difference, with the interval of the mean as a band. The scale fits
 * the largest difference and is never finer than 1 mm.
 *
 * @throws RangeError when the frame has no height
 */
export function drawEye({ points, widthBias }: EyeOverTime, frame: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }): EyeDrawing {
  if (!(frame.bottom > frame.top && frame.right > frame.left)) throw new RangeError('The drawing needs a frame with a width and a height.')
  const scaleMm = Math.max(1, ...points.map(({ widthOffMm }) => Math.abs(widthOffMm ?? 0)))
  const zeroY = (frame.top + frame.bottom) / 2
  const y = (off: number): number => round(zeroY - (Math.max(-scaleMm, Math.min(scaleMm, off)) / scaleMm) * (zeroY - frame.top))
  const step = points.length > 1 ? (frame.right - frame.left) / (points.length - 1) : 0
  return {
    zeroY, scaleMm,
    band: widthBias && { top: y(widthBias.high), bottom: y(widthBias.low) },
    points: points.map((point, i) => ({ ...point, x: round(points.length > 1 ? frame.left + i * step : (frame.left + frame.right) / 2), y: point.widthOffMm === null ? null : y(point.widthOffMm) })),
  }
}

const round = (value: number): number => Math.round(value * 100) / 100

import { median } from 'simple-statistics'
import { decided, type ComparedVerdicts } from '../readiness/self-trust'
import type { Verdict } from '../scoring/types'
import type { Paper } from './paper'

/** A coupon as the summary counts it. `verdict` and `mark` are the instructor's. */
export type CountedCoupon = { readonly number: number; readonly verdict: Verdict | null; readonly mark: number | null; readonly selfVerdict: Verdict | null }

/** Accepted among the latest ten (or fewer) that an instructor accepted or rejected; null when there is none. */
export type LastTen = { readonly accepted: number; readonly of: number }

const LAST = 10

export function acceptedOfLastTen(coupons: readonly CountedCoupon[]): LastTen | null {
  const judged = inOrder(coupons).filter(({ verdict }) => verdict === 'accept' || verdict === 'reject').slice(-LAST)
  return judged.length === 0 ? null : { accepted: judged.filter(({ verdict }) => verdict === 'accept').length, of: judged.length }
}

/** The middle of the instructor's marks, 0 to 100; null when no coupon has one. */
export function medianMark(coupons: readonly CountedCoupon[]): number | null {
  const marks = coupons.flatMap(({ mark }) => mark ?? [])
  return marks.length === 0 ? null : median(marks)
}

/** The coupons that both the student and the instructor decided on. */
export function comparedBoth(coupons: readonly CountedCoupon[]): ComparedVerdicts[] {
  return coupons.flatMap(({ verdict, selfVerdict }) => {
    const [self, instructor] = [selfVerdict && decided(selfVerdict), verdict && decided(verdict)]
    return self && instructor ? [{ self, instructor }] : []
  })
}

const inOrder = <T extends { readonly number: number }>(coupons: readonly T[]): T[] => [...coupons].sort((a, b) => a.number - b.number)

/** An inspected coupon by the rules that rejected it. */
export type Rejections = { readonly number: number; readonly rules: readonly string[] }

/** How often each rule rejected, early against late. `each` is how many coupons stand on either side. */
export type DefectsThenAndNow = {
  readonly each: number
  readonly rows: readonly { readonly rule: string; readonly first: number; readonly last: number }[]
}

const LEAST_COUPONS = 4

/**
 * The rules that rejected most, among the first ten and the last ten coupons. With fewer than twenty coupons it is the first and the
 * last half, so that no coupon stands on both sides.
 *
 * @param most how many rules to name, those with most rejections first
 * @returns null with fewer than four coupons
 */
export function defectsThenAndNow(coupons: readonly Rejections[], most: number): DefectsThenAndNow | null {
  if (coupons.length < LEAST_COUPONS) return null
  const sorted = inOrder(coupons)
  const each = Math.min(LAST, Math.floor(sorted.length / 2))
  const [early, late] = [sorted.slice(0, each), sorted.slice(-each)]
  const times = (side: readonly Rejections[], rule: string): number => side.filter(({ rules }) => rules.includes(rule)).length
  const rows = [...new Set([...early, ...late].flatMap(({ rules }) => rules))]
    .map((rule) => ({ rule, first: times(early, rule), last: times(late, rule) }))
    .sort((a, b) => b.first + b.last - (a.first + a.last) || b.last - a.last || a.rule.localeCompare(b.rule))
  return { each, rows: rows.slice(0, most) }
}

/**
 * Every k-th of a series, k as small as fits, always with the last.
 *
 * @param most how many there is room for, 1 or more
 * @throws RangeError when there is room for none
 */
export function everyKth<T>(series: readonly T[], most: number): { readonly k: number; readonly shown: readonly T[] } {
  if (!(most >= 1)) throw new RangeError(`There must be room for at least one, not ${most}.`)
  const k = Math.max(1, Math.ceil(series.length / most))
  return { k, shown: series.filter((_, i) => (series.length - 1 - i) % k === 0) }
}

/** Exercises that a one-page summary lists at most, and at least. */
export const MOST_EXERCISES = 10
export const LEAST_EXERCISES = 4

/** What shares the sheet with the drawings. `…Lines` count lines of text, `defects` and `exercises` rows of a table. */
export type OnTheSheet = {
  readonly paper: Paper
  readonly exercises: number
  readonly longTitles: number
  readonly answerLines: number
  readonly noteLines: number
  readonly footLines: number
  readonly defects: number
  /** Coupons that could be drawn, and whether some were only looked at by the student, or decided, which is said under the strips. */
  readonly coupons: number
  readonly ownLooks: boolean
}

/** How the drawings share what is left. */
export type SummaryRoom = {
  readonly strips: number
  /** The strips are drawn smaller. */
  readonly compact: boolean
  /** Heights of charts in units of a frame PAPER_CHART_WIDTH wide. */
  readonly trackHeight: number
  readonly marksHeight: number
  readonly defects: number
  /** On a crowded sheet the defects stand under the strips, not under the charts. */
  readonly crowded: boolean
  /** Whether all of it fits one sheet at its least. */
  readonly fits: boolean
}

/** Units across a chart in the right column of the sheet. */
export const PAPER_CHART_WIDTH = 380

/** Heights in millimetres at the sheet's type size, measured on paper. `free` is a sheet less its margins, head, table head and caution line. */
const MM = {
  free: { letter: 202, a4: 223 }, row: 5.8, secondLine: 4.3, answerLine: 5.4, line: 4.3, heading: 10, caption: 9.3, underStrips: 20, strip: 13, compactStrip: 10.2, unit: 0.257,
} as const
const LEAST_CHART = { track: 128, marks: 100 } as const
const MOST_CHART = { track: 290, marks: 220 } as const
const LEAST_STRIPS = 3
const LEAST_DEFECTS = 2
/** With room for fewer than this many strips, and fewer than there are, they are drawn smaller. */
const ROOMY_STRIPS = 8

/** How the drawings share what the words leave of one sheet. */
export function summaryRoom(sheet: OnTheSheet): SummaryRoom {
  const { row, line, heading, caption, unit, underStrips, compactStrip } = MM
  const words = sheet.exercises * row + sheet.longTitles * MM.secondLine + sheet.answerLines * MM.answerLine + (sheet.noteLines + sheet.footLines) * line
  const height = MM.free[sheet.paper] - words - heading
  const tableOf = (defects: number): number => caption + (defects === 0 ? 2 * line : (defects + 1) * row)
  const leastCharts = (LEAST_CHART.track + LEAST_CHART.marks) * unit + 2 * caption
  const few = Math.min(sheet.defects, LEAST_DEFECTS)
  const crowded = leastCharts + tableOf(few) > height
  const defects = !crowded && leastCharts + tableOf(sheet.defects) <= height ? sheet.defects : few
  const units = (height - (crowded ? 0 : tableOf(defects)) - 2 * caption) / unit
  const within = (kind: keyof typeof LEAST_CHART, share: number): number => Math.round(Math.min(MOST_CHART[kind], Math.max(LEAST_CHART[kind], units * share)))
  const forStrips = height - caption - underStrips - (sheet.ownLooks ? 2 * line : 0) - (crowded ? tableOf(defects) : 0)
  const compact = forStrips < Math.min(ROOMY_STRIPS, sheet.coupons) * MM.strip
  return {
    strips: Math.max(LEAST_STRIPS, Math.floor(forStrips / (compact ? compactStrip : MM.strip))), compact,
    trackHeight: within('track', 0.56), marksHeight: within('marks', 0.44), defects, crowded,
    fits: leastCharts <= height && LEAST_STRIPS * compactStrip <= forStrips,
  }
}

import type { Frame, Tick } from './chart-frame'
import { formatForReader } from '../units/display'
import { MM_PER_INCH, type LengthUnit } from '../units/length'
import type { WidthBand, WidthReading } from './gauge-study-figures'
import type { StudyPlan } from './gauge-study-order'

export type ChartPoint = { readonly key: string; readonly reader: number; readonly x: number; readonly y: number }
export type StudyChart = { readonly points: readonly ChartPoint[]; readonly xTicks: readonly Tick[]; readonly yTicks: readonly Tick[]; readonly bandY: readonly number[] }

/** The share of a coupon's place that its readers stand in, side by side. */
const SPREAD = 0.6

/** Every reading over its coupon, the readers side by side and each one's rounds above one another. Empty without readings. */
export function drawStudy(plan: StudyPlan, readerIds: readonly string[], readings: readonly WidthReading[], band: WidthBand | null, units: LengthUnit, frame: Frame): StudyChart {
  const widths = readings.map(({ widthMm }) => widthMm)
  if (widths.length === 0) return { points: [], xTicks: [], yTicks: [], bandY: [] }
  const ticks = ticksAround(Math.min(...widths, ...ends(band)), Math.max(...widths, ...ends(band)), units)
  const [low = 0, high = 1] = [ticks[0], ticks.at(-1)]
  const y = (widthMm: number): number => round(frame.bottom - ((widthMm - low) / (high - low)) * (frame.bottom - frame.top))
  const place = (frame.right - frame.left) / plan.couponIds.length
  const middle = (coupon: number): number => frame.left + place * (coupon + 0.5)
  const apart = readerIds.length < 2 ? 0 : (place * SPREAD) / (readerIds.length - 1)
  return {
    points: readings.flatMap(({ couponId, readerId, round: turn, widthMm }) => {
      const [coupon, reader] = [plan.couponIds.indexOf(couponId), readerIds.indexOf(readerId)]
      return coupon < 0 || reader < 0 ? [] : [{ key: `${couponId}/${readerId}/${turn}`, reader, x: round(middle(coupon) + apart * (reader - (readerIds.length - 1) / 2)), y: y(widthMm) }]
    }),
    xTicks: plan.couponIds.map((_, coupon) => ({ at: round(middle(coupon)), label: String(coupon + 1) })),
    yTicks: ticks.map((value) => ({ at: y(value), label: formatForReader(value, units).replace(/ (in|mm)$/, '') })),
    bandY: ends(band).map(y),
  }
}

const ends = (band: WidthBand | null): number[] => (band ? [band.minMm, band.maxMm] : [])

/** Round widths that hold all readings between the first and the last of them. */
function ticksAround(least: number, most: number, units: LengthUnit): number[] {
  const steps = units === 'in' ? [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1].map((step) => step * MM_PER_INCH) : [0.5, 1, 2, 5, 10, 20]
  const step = steps.find((each) => (most - least) / each <= 5) ?? steps.at(-1) ?? 1
  const first = Math.floor(least / step + 1e-9)
  const last = Math.max(first + 1, Math.ceil(most / step - 1e-9))
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step)
}

const round = (value: number): number => Math.round(value * 100) / 100

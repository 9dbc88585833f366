import type { ReliabilityBin } from '../statistics/calibration'
import type { Frame, Tick } from './chart-frame'

export type DrawnBin = { readonly count: number; readonly x: number; readonly y: number; readonly yLow: number; readonly yHigh: number }
export type ReliabilityDiagram = {
  readonly frame: Frame
  readonly bins: readonly DrawnBin[]
  /** Where a forecaster who is always right on average would lie. */
  readonly diagonal: string
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
}

/** What was said (right) against what happened (up), one point for each bin, with its interval. Both axes from 0 to 1. */
export function drawReliability(bins: readonly ReliabilityBin[], frame: Frame): ReliabilityDiagram {
  const x = (share: number): number => round(frame.left + share * (frame.right - frame.left))
  const y = (share: number): number => round(frame.bottom - share * (frame.bottom - frame.top))
  const ticks = [0, 0.25, 0.5, 0.75, 1]
  return {
    frame,
    bins: bins.map((bin) => ({ count: bin.count, x: x(bin.meanForecast), y: y(bin.observed), yLow: y(bin.interval.low), yHigh: y(bin.interval.high) })),
    diagonal: `M${x(0)},${y(0)}L${x(1)},${y(1)}`,
    xTicks: ticks.map((share) => ({ at: x(share), label: String(share) })),
    yTicks: ticks.map((share) => ({ at: y(share), label: String(share) })),
  }
}

const round = (value: number): number => Math.round(value * 100) / 100

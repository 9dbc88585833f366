import type { Frame, Tick } from '@/lib/reports/chart-frame'

type AxesProps = {
  readonly frame: Frame
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
  /** Under the first tick of x, what is counted: 'Coupon'. */
  readonly xWord: string
}

/** Figures closer than this along the upright axis run into each other. */
const LEAST_APART = 16

/** Every second tick where there is no room for all. */
function roomy(ticks: readonly Tick[]): readonly Tick[] {
  const [first, second] = ticks
  return first && second && Math.abs(first.at - second.at) < LEAST_APART ? ticks.filter((_, i) => i % 2 === 0) : ticks
}

/** Faint rules across, figures at their ends, the foot in ink. */
export function Axes({ frame, xTicks, yTicks, xWord }: AxesProps) {
  return (
    <g>
      {roomy(yTicks).map((tick) => (
        <g key={tick.label}>
          <line x1={frame.left} x2={frame.right} y1={tick.at} y2={tick.at} className="stroke-line" strokeWidth={1} />
          <text x={frame.left - 6} y={tick.at + 5} textAnchor="end" className="figures fill-ink-2 text-[14px]">
            {tick.label}
          </text>
        </g>
      ))}
      <line x1={frame.left} x2={frame.right} y1={frame.bottom} y2={frame.bottom} className="stroke-ink" strokeWidth={1.5} />
      {xTicks.map((tick) => (
        <g key={tick.label}>
          <line x1={tick.at} x2={tick.at} y1={frame.bottom} y2={frame.bottom + 5} className="stroke-ink" strokeWidth={1} />
          <text x={tick.at} y={frame.bottom + 20} textAnchor="middle" className="figures fill-ink-2 text-[14px]">
            {tick.label}
          </text>
        </g>
      ))}
      <text x={frame.left} y={frame.bottom + 37} className="fill-ink-2 text-[14px]">
        {xWord}
      </text>
    </g>
  )
}

type SparklineProps = {
  /** In order; null is a gap, never 0. */
  readonly values: readonly (number | null)[]
  /** The scale: what stands at the foot and at the top. */
  readonly from: number
  readonly to: number
  /** What it shows, in words: 'Marks of the last ten coupons: 52 to 88, rising'. */
  readonly label: string
}

const WIDTH = 96
const HEIGHT = 28

/** A line the size of a word, beside the figure it belongs to. */
export function Sparkline({ values, from, to, label }: SparklineProps) {
  const step = values.length > 1 ? (WIDTH - 8) / (values.length - 1) : 0
  const points = values.flatMap((value, i) => (value === null ? [] : [{ i, x: round(4 + i * step), y: round(HEIGHT - 4 - share(value, from, to) * (HEIGHT - 8)) }]))
  const d = points.map(({ i, x, y }, k) => `${k > 0 && points[k - 1]?.i === i - 1 ? 'L' : 'M'}${x},${y}`).join('')
  const last = points.at(-1)
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label} className="inline-block h-7 w-24 align-middle">
      <path d={d} fill="none" className="stroke-ink" strokeWidth={2} strokeLinejoin="round" strokeLinecap="round" />
      {last && <circle cx={last.x} cy={last.y} r={3} className="fill-ink" />}
    </svg>
  )
}

function share(value: number, from: number, to: number): number {
  return to === from ? 0.5 : Math.min(1, Math.max(0, (value - from) / (to - from)))
}

const round = (value: number): number => Math.round(value * 100) / 100

import { chanceText, type ReadinessTrack } from '@/lib/reports/readiness-track'
import { Axes } from './axes'
import { VerdictPoint } from './verdict-point'

type DrawingProps = {
  readonly track: ReadinessTrack
  readonly words: { readonly title: string; readonly summary: string; readonly threshold: string; readonly coupon: string; readonly notEnough: string }
}

/** The drawn track alone: chance as a line on its interval, the threshold, the tests at the top. */
export function ReadinessTrackDrawing({ track, words }: DrawingProps) {
  const { frame, tooFew, threshold, last } = track
  return (
    <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={`${words.title}. ${words.summary}`} className="block h-auto w-full">
      {tooFew && tooFew.to > tooFew.from && (
        <rect x={tooFew.from} y={frame.top} width={tooFew.to - tooFew.from} height={frame.bottom - frame.top} className="fill-heat-0 stroke-line" />
      )}
      <Axes frame={frame} xTicks={track.xTicks} yTicks={track.yTicks} xWord={words.coupon} />
      {track.bands.map((d) => (
        <path key={d} d={d} className="fill-bead stroke-open" strokeWidth={0.75} />
      ))}
      {tooFew && tooFew.to > tooFew.from && (
        <text x={tooFew.from + 6} y={frame.bottom - 9} className="fill-ink text-[14px]">
          {words.notEnough}
        </text>
      )}
      <line x1={frame.left} x2={frame.right} y1={threshold.y} y2={threshold.y} className="stroke-accept" strokeWidth={2} strokeDasharray="7 4" />
      <text x={frame.left + 6} y={threshold.y - 7} strokeWidth={5} strokeLinejoin="round" className="fill-ink stroke-plate text-[14px] [paint-order:stroke]">
        {words.threshold}
      </text>
      {track.lines.map((d) => (
        <path key={d} d={d} fill="none" className="stroke-ink" strokeWidth={2.75} strokeLinejoin="round" />
      ))}
      {track.tests.map((test, i) => (
        <g key={i}>
          <line x1={test.x} x2={test.x} y1={frame.top} y2={frame.bottom} className="stroke-ink" strokeWidth={1} strokeDasharray="2 3" />
          <VerdictPoint verdict={test.passed ? 'accept' : 'reject'} x={test.x} y={frame.top - 8} r={7} />
        </g>
      ))}
      {last?.estimate && last.y !== null && (
        <>
          {track.lines.length > 0 && last.yLow !== null && last.yHigh !== null && <path d={`M${last.x},${last.yLow}V${last.yHigh}`} className="stroke-ink" strokeWidth={1.25} />}
          <circle cx={last.x} cy={last.y} r={5} className="fill-ink stroke-plate" strokeWidth={2} />
          <text x={last.x - 8} y={last.y - 10} textAnchor="end" strokeWidth={5} strokeLinejoin="round" className="figures fill-ink stroke-plate text-[20px] [paint-order:stroke]">
            {chanceText(last.estimate.probability)}
          </text>
        </>
      )}
    </svg>
  )
}

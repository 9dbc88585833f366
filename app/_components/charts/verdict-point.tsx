import type { Verdict } from '@/lib/scoring/types'

/** A verdict's shape as a point of a chart, `r` from its middle to its edge. */
export function VerdictPoint({ verdict, x, y, r }: { readonly verdict: Verdict; readonly x: number; readonly y: number; readonly r: number }) {
  switch (verdict) {
    case 'accept':
      return <circle cx={x} cy={y} r={r} className="fill-accept stroke-plate" strokeWidth={1} />
    case 'reject':
      return (
        <g className="fill-plate stroke-reject" strokeWidth={r > 4 ? 2 : 1.5}>
          <rect x={x - r * 0.85} y={y - r * 0.85} width={r * 1.7} height={r * 1.7} />
          <path d={`M${x - r * 0.6} ${y + r * 0.6}l${r * 1.2} ${-r * 1.2}`} />
        </g>
      )
    case 'incomplete':
      return <circle cx={x} cy={y} r={r * 0.9} className="fill-plate stroke-open" strokeWidth={1.75} strokeDasharray={`${r * 0.47} ${r * 0.47}`} />
  }
}

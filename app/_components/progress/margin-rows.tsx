import { drawMargins, type RuleMargins } from '@/lib/reports/margins-over-time'
import { VerdictPoint } from '../charts/verdict-point'

type Row = RuleMargins & { readonly name: string; readonly outText: string; readonly nowText: string; readonly label: string }
type Props = { readonly rows: readonly Row[]; readonly first: number; readonly last: number }

const FRAME = { width: 320, height: 56, left: 8, right: 312, top: 6, bottom: 50 } as const

/** Each rule's margin over the coupons: the limit in the middle, inside above it. */
export function MarginRows({ rows, first, last }: Props) {
  return (
    <ul className="divide-y divide-line border-y border-line">
      {rows.map((row) => (
        <li key={row.rule} className="grid items-center gap-x-6 gap-y-1 py-3 sm:grid-cols-[2fr_3fr]">
          <div className="leading-tight">
            <h3 className="font-text text-base font-bold">{row.name}</h3>
            <p className="text-base text-ink-2">{row.outText}; {row.nowText}</p>
          </div>
          <MarginDrawing row={row} first={first} last={last} />
        </li>
      ))}
    </ul>
  )
}

function MarginDrawing({ row, first, last }: { readonly row: Row; readonly first: number; readonly last: number }) {
  const { limitY, lines, points } = drawMargins(row, { first, last }, FRAME)
  return (
    <svg viewBox={`0 0 ${FRAME.width} ${FRAME.height}`} role="img" aria-label={row.label} className="block h-auto w-full">
      <rect x={0} y={0} width={FRAME.width} height={limitY} className="fill-band" />
      <line x1={0} x2={FRAME.width} y1={limitY} y2={limitY} className="stroke-ink" strokeWidth={1.5} />
      {lines.map((d) => <path key={d} d={d} fill="none" className="stroke-open" strokeWidth={1.25} />)}
      {points.map((point) => <VerdictPoint key={point.coupon} verdict={point.finding?.verdict === 'reject' ? 'reject' : 'accept'} x={point.x} y={point.y} r={4} />)}
    </svg>
  )
}

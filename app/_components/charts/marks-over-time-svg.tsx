import { drawings } from '@/lib/language/drawings'
import { say, type Locale } from '@/lib/language/say'
import { NARROW_CHART, WIDE_CHART, type Frame } from '@/lib/reports/chart-frame'
import { drawMarksOverTime, type CouponMark } from '@/lib/reports/marks-over-time'
import { Axes } from './axes'
import { ChartFigure } from './chart-figure'
import { VerdictPoint } from './verdict-point'

type MarksOverTimeProps = {
  /** At least one coupon, in any order. */
  readonly coupons: readonly CouponMark[]
  readonly locale: Locale
  readonly titleHidden?: boolean
}

/** Each coupon's mark with the shape of its verdict. A coupon without a mark stands at the foot as a dashed ring. */
export function MarksOverTimeSvg({ coupons, locale, titleHidden = false }: MarksOverTimeProps) {
  const sorted = [...coupons].sort((a, b) => a.coupon - b.coupon)
  const last = sorted.at(-1)
  const title = say(drawings, locale, 'marksTitle')
  const summary = last?.mark == null
    ? say(drawings, locale, 'marksSummaryOpen', { n: coupons.length })
    : say(drawings, locale, 'marksSummary', { n: coupons.length, mark: Math.round(last.mark) })
  const draw = (frame: Frame) => <MarksOverTimeDrawing coupons={sorted} frame={frame} label={`${title}. ${summary}`} word={say(drawings, locale, 'coupon')} />
  return (
    <ChartFigure
      title={title}
      titleHidden={titleHidden}
      summary={summary}
      drawing={{ narrow: draw(NARROW_CHART), wide: draw(WIDE_CHART) }}
      table={{
        open: say(drawings, locale, 'showTable'),
        columns: [
          { key: 'coupon', head: say(drawings, locale, 'coupon') },
          { key: 'mark', head: say(drawings, locale, 'markWord'), numeric: true },
          { key: 'verdict', head: say(drawings, locale, 'verdict') },
        ],
        rows: sorted.map(({ coupon, mark, verdict }) => ({
          key: String(coupon),
          cells: [coupon, mark === null ? '' : Math.round(mark), say(drawings, locale, verdict)],
        })),
      }}
    />
  )
}

type DrawingProps = { readonly coupons: readonly CouponMark[]; readonly frame: Frame; readonly label: string; readonly word: string }

/** The drawn marks alone, in any frame. `word` names what is counted along the foot. */
export function MarksOverTimeDrawing({ coupons, frame, label, word }: DrawingProps) {
  const chart = drawMarksOverTime(coupons, frame)
  const spacing = (frame.right - frame.left) / Math.max(1, coupons.length - 1)
  const r = Math.max(3, Math.min(6.5, spacing * 0.6))
  return (
    <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={label} className="block h-auto w-full">
      <Axes frame={frame} xTicks={chart.xTicks} yTicks={chart.yTicks} xWord={word} />
      {chart.line && <path d={chart.line} fill="none" className="stroke-open" strokeWidth={1.25} strokeLinejoin="round" />}
      {chart.points.map((point) => (
        <VerdictPoint key={point.coupon} verdict={point.verdict} x={point.x} y={point.y} r={r} />
      ))}
    </svg>
  )
}

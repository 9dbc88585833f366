import { NARROW_CHART, WIDE_CHART, type Frame } from '@/lib/reports/chart-frame'
import { drawStudy } from '@/lib/reports/gauge-study-chart'
import type { NamedReader, WidthBand, WidthReading } from '@/lib/reports/gauge-study-figures'
import type { StudyPlan } from '@/lib/reports/gauge-study-order'
import { Axes } from './axes'
import { ChartFigure } from './chart-figure'
import { ReaderPoint } from './reader-point'

type GaugeStudyProps = {
  readonly plan: StudyPlan
  readonly readers: readonly NamedReader[]
  readonly readings: readonly WidthReading[]
  readonly band: WidthBand | null
  readonly units: 'in' | 'mm'
  /** A row a coupon: its label, then each reader's widths, round by round. */
  readonly rows: readonly { readonly key: string; readonly cells: readonly string[] }[]
}

/** Numbers under the axis stand at least this far apart. */
const LEAST_PLACE = 22

/** Every reading over its coupon, the readers side by side with a shape each, and what the criteria allow between dashed lines. */
export function GaugeStudySvg(props: GaugeStudyProps) {
  const { readers, rows, units, band } = props
  const title = `Every width read, in ${units === 'in' ? 'inches' : 'millimetres'}`
  const summary = 'Marks of one shape above one another: a reader against their own other rounds. Shapes side by side: one reader against another.'
  const draw = (frame: Frame) => (
    <div className="grid gap-2">
      <Legend readers={readers} />
      <Drawing {...props} frame={frame} label={title} />
    </div>
  )
  return (
    <ChartFigure
      title={title} titleHidden={false} summary={`${summary}${band ? ' The dashed lines are the least and the most the criteria allow.' : ''}`}
      drawing={{ narrow: draw(NARROW_CHART), wide: draw(WIDE_CHART) }}
      table={{
        open: 'Show the table', columns: [{ key: 'coupon', head: 'Coupon' }, ...readers.map(({ id, name }) => ({ key: id, head: `${name}, by round` }))],
        rows: rows.map(({ key, cells }) => ({ key, cells })),
      }}
    />
  )
}

function Legend({ readers }: Pick<GaugeStudyProps, 'readers'>) {
  return (
    <ul className="flex flex-wrap gap-x-6 gap-y-1" aria-label="Whose shape is whose">
      {readers.map(({ id, name }, index) => (
        <li key={id} className="flex items-center gap-2">
          <svg viewBox="0 0 20 20" aria-hidden="true" className="size-5 shrink-0"><ReaderPoint reader={index} x={10} y={10} r={6} /></svg>
          {name}
        </li>
      ))}
    </ul>
  )
}

function Drawing({ plan, readers, readings, band, units, frame, label }: GaugeStudyProps & { readonly frame: Frame; readonly label: string }) {
  const chart = drawStudy(plan, readers.map(({ id }) => id), readings, band, units, frame)
  const place = (frame.right - frame.left) / plan.couponIds.length
  const each = Math.ceil(LEAST_PLACE / place)
  const r = Math.max(3, Math.min(5.5, (place * 0.6) / Math.max(1, readers.length) / 2))
  return (
    <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={`${label}. The table under it holds the same figures.`} className="block h-auto w-full">
      <Axes frame={frame} xTicks={chart.xTicks.filter((_, index) => index % each === 0)} yTicks={chart.yTicks} xWord="Coupon, by its place on the bench" />
      {chart.bandY.map((y) => <line key={y} x1={frame.left} x2={frame.right} y1={y} y2={y} className="stroke-accept" strokeWidth={2} strokeDasharray="7 4" />)}
      {chart.points.map((point) => <ReaderPoint key={point.key} reader={point.reader} x={point.x} y={point.y} r={r} />)}
    </svg>
  )
}

import { program } from '@/lib/language/program'
import { say, type Locale } from '@/lib/language/say'
import { NOT_PASSED_COST, TEST_COST } from '@/lib/readiness/operating-curve'
import { OPERATING_SOURCE } from '@/lib/readiness/operating-curve-data'
import { NARROW_CHART, WIDE_CHART, type Frame } from '@/lib/reports/chart-frame'
import { drawOperatingCurve, type OperatingCurveView } from '@/lib/reports/operating-curve'
import { shareText } from '@/lib/reports/share-text'
import { Axes } from '@/app/_components/charts/axes'
import { Table } from '@/app/_components/ui/table'

type OperatingCurveProps = { readonly curve: OperatingCurveView; readonly threshold: number; readonly cost: number; readonly locale: Locale }

/** The simulated trade between passing the first test and practising longer, drawn and as a table with what it all costs. */
export function OperatingCurve({ curve, threshold, cost, locale }: OperatingCurveProps) {
  const told = (key: keyof typeof program.en, values?: Record<string, string | number>): string => say(program, locale, key, values)
  const best = curve.rows.find((row) => row.threshold === curve.cheapest)
  const answer = [
    best && told('costAnswer', { cost, threshold: best.threshold.toFixed(2), total: Math.round(best.cost) }),
    curve.own && told('ownCost', { threshold: threshold.toFixed(2), total: Math.round(curve.own.cost) }),
  ].filter(Boolean).join(' ')
  return (
    <div className="grid gap-5">
      <p className="max-w-prose text-lg">{answer}</p>
      <div className="grid items-start gap-8 xl:grid-cols-[minmax(0,5fr)_minmax(0,7fr)]">
        <figure className="@container min-w-0">
          <figcaption>
            <span className="block font-head text-xl leading-tight font-semibold">{told('curveTitle')}</span>
            <span className="block">{told('curveSummary')}</span>
          </figcaption>
          <div className="mt-2 @lg:hidden"><Drawing curve={curve} frame={NARROW_CHART} locale={locale} /></div>
          <div className="mt-2 hidden max-w-4xl @lg:block"><Drawing curve={curve} frame={WIDE_CHART} locale={locale} /></div>
        </figure>
        <Table
          caption={told('curveHead')} captionHidden
          columns={[
            { key: 'threshold', head: told('colThreshold') },
            ...(['colCost', 'colFirst', 'colCoupons', 'colFailed', 'colSixty'] as const).map((key) => ({
              key, numeric: true, head: <span className="inline-block max-w-24 whitespace-normal">{told(key)}</span>,
            })),
          ]}
          rows={curve.rows.map((row) => ({
            key: String(row.threshold),
            cells: [
              <RowHead key="head" threshold={row.threshold} own={Math.abs(row.threshold - threshold) < 1e-9} best={row.threshold === curve.cheapest} locale={locale} />,
              row.cost.toFixed(1), row.firstTimePass === null ? '' : shareText(row.firstTimePass), row.coupons.toFixed(1), row.failed.toFixed(2), shareText(row.passedBySixty),
            ],
          }))}
        />
      </div>
      <p className="max-w-prose text-base text-ink-2">{told('simulated', { ...OPERATING_SOURCE, model: OPERATING_SOURCE.modelVersion, test: TEST_COST, notPassed: NOT_PASSED_COST })}</p>
    </div>
  )
}

function RowHead({ threshold, own, best, locale }: { readonly threshold: number; readonly own: boolean; readonly best: boolean; readonly locale: Locale }) {
  const notes = [own && say(program, locale, 'yourThreshold'), best && say(program, locale, 'leastCost')].filter(Boolean).join(', ')
  return <>{threshold.toFixed(2)}{notes && <span className="block text-base font-normal text-ink-2">{notes}</span>}</>
}

function Drawing({ curve, frame, locale }: { readonly curve: OperatingCurveView; readonly frame: Frame; readonly locale: Locale }) {
  const drawn = drawOperatingCurve(curve, frame)
  const label = `${say(program, locale, 'curveTitle')}. ${say(program, locale, 'curveSummary')}`
  return (
    <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={label} className="block h-auto w-full">
      <Axes frame={frame} xTicks={drawn.xTicks} yTicks={drawn.yTicks} xWord={say(program, locale, 'couponsAxis')} />
      <path d={drawn.line} fill="none" className="stroke-ink" strokeWidth={2} strokeLinejoin="round" />
      {drawn.own && <circle cx={drawn.own.x} cy={drawn.own.y} r={10} fill="none" className="stroke-ink" strokeWidth={2.5} />}
      {drawn.points.map((point, i) => (
        <g key={point.threshold}>
          <circle cx={point.x} cy={point.y} r={4} className="fill-ink" />
          {i % 2 === 0 && (
            <text x={point.x} y={point.y + 22} textAnchor={point.x > frame.right - 20 ? 'end' : 'start'} strokeWidth={4} className="figures fill-ink stroke-paper text-[14px] [paint-order:stroke]">{point.threshold.toFixed(2)}</text>
          )}
        </g>
      ))}
    </svg>
  )
}

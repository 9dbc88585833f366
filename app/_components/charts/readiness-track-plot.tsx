'use client'

import { Area, CartesianGrid, ComposedChart, Line, ReferenceArea, ReferenceDot, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts'
import { WIDE_CHART } from '@/lib/reports/chart-frame'
import { chanceText, drawReadinessTrack } from '@/lib/reports/readiness-track'
import type { readinessTrackWords, ReadinessTrackProps } from './readiness-track-words'

type PlotProps = ReadinessTrackProps & { readonly words: ReturnType<typeof readinessTrackWords> }
type Datum = { readonly coupon: number; readonly chance: number | null; readonly interval: readonly [number, number] | null }

const TICK = { fill: 'var(--ink-2)', fontSize: 14 }

/** The plotted track. Loaded on its own, only in the browser. */
export default function ReadinessTrackPlot({ points, tests, threshold, words }: PlotProps) {
  const data: Datum[] = [...points]
    .sort((a, b) => a.coupon - b.coupon)
    .map(({ coupon, estimate }) => ({ coupon, chance: estimate?.probability ?? null, interval: estimate ? [estimate.low, estimate.high] : null }))
  const track = drawReadinessTrack({ points, tests, threshold }, WIDE_CHART)
  const last = track.last
  const start = track.points[0]?.coupon
  const known = (track.points.find((point) => point.estimate) ?? track.points.at(-1))?.coupon
  return (
    <div className="figures aspect-[344/240] w-full @lg:aspect-[640/290]">
      <ResponsiveContainer width="100%" height="100%">
        <ComposedChart data={data} title={words.title} desc={words.summary} margin={{ top: 20, right: 20, bottom: 8, left: -16 }}>
          {track.tooFew && start !== undefined && known !== undefined && (
            <ReferenceArea x1={start} x2={known} fill="var(--heat-0)" fillOpacity={1} stroke="var(--line)" label={{ value: words.notEnough, position: 'insideBottomLeft', fill: 'var(--heat-0-ink)', fontSize: 14 }} />
          )}
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis dataKey="coupon" type="number" domain={['dataMin', 'dataMax']} ticks={track.xTicks.map((tick) => Number(tick.label))} tick={TICK} stroke="var(--ink)" />
          <YAxis domain={[0, 1]} ticks={[0, 0.25, 0.5, 0.75, 1]} tick={TICK} stroke="var(--line)" />
          <Area dataKey="interval" name={words.interval} fill="var(--bead)" fillOpacity={1} stroke="var(--open)" strokeWidth={0.75} isAnimationActive={false} activeDot={false} />
          <ReferenceLine y={threshold} stroke="var(--accept)" strokeWidth={2} strokeDasharray="7 4" label={{ value: words.threshold, position: 'insideBottomLeft', fill: 'var(--ink)', fontSize: 14 }} />
          {tests.map((test, i) => (
            <ReferenceLine key={i} x={test.afterCoupon} stroke="var(--ink)" strokeDasharray="2 3" label={{ value: test.passed ? '●' : '☒', position: 'top', fill: test.passed ? 'var(--accept)' : 'var(--reject)', fontSize: 18 }} />
          ))}
          <Line dataKey="chance" name={words.chance} stroke="var(--ink)" strokeWidth={2.75} dot={{ r: 3, fill: 'var(--ink)', stroke: 'none' }} activeDot={{ r: 6, fill: 'var(--ink)' }} isAnimationActive={false} />
          {last?.estimate && (
            <ReferenceDot x={last.coupon} y={last.estimate.probability} r={5} fill="var(--ink)" stroke="var(--plate)" strokeWidth={2} label={{ value: chanceText(last.estimate.probability), position: 'left', offset: 8, dy: -18, fill: 'var(--ink)', fontSize: 20 }} />
          )}
          <Tooltip content={({ active, payload }) => <Reading datum={active ? (payload[0]?.payload as Datum | undefined) : undefined} words={words} />} cursor={{ stroke: 'var(--ink)' }} isAnimationActive={false} />
        </ComposedChart>
      </ResponsiveContainer>
    </div>
  )
}

function Reading({ datum, words }: { readonly datum: Datum | undefined; readonly words: PlotProps['words'] }) {
  if (!datum) return null
  return (
    <div className="border-2 border-ink bg-plate px-3 py-2 text-lg leading-tight">
      <p>
        {words.coupon} {datum.coupon}
      </p>
      {datum.chance === null || datum.interval === null ? (
        <p>{words.notEnough}</p>
      ) : (
        <>
          <p>
            {words.chance} {chanceText(datum.chance)}
          </p>
          <p className="text-base text-ink-2">
            {words.interval} {chanceText(datum.interval[0])}–{chanceText(datum.interval[1])}
          </p>
        </>
      )}
    </div>
  )
}

import { pathToFileURL } from 'node:url'
import { readinessFilter } from '../../lib/readiness/filter'
import { absorbCoupon, readinessOf, stateAfter } from '../../lib/readiness/incremental'
import { SHIPPED_PARAMETERS } from '../../lib/readiness/parameters'
import type { PracticeCoupon } from '../../lib/readiness/practice-coupon'
import type { BenchRow } from '../bench-row'

/** A student's term: 60 coupons, two a day, with days and weekends between; most were measured in full. */
const series: readonly PracticeCoupon[] = Array.from({ length: 60 }, (_, i) => {
  const lesson = Math.floor(i / 2)
  const day = 7 * Math.floor(lesson / 3) + 2 * (lesson % 3)
  return i % 5 === 4 ? { day, accepted: i > 20 } : { day, accepted: i > 20, worstMargin: -1.2 + 0.035 * i + 0.3 * Math.sin(i), attributesGood: i % 7 > 0 }
})
const testDay = series[59]!.day + 3

/** Keeps the optimiser from dropping work whose result nobody reads. */
let sink = 0

function millisecondsPerCall(work: () => number, calls: number): number {
  const start = process.hrtime.bigint()
  for (let i = 0; i < calls; i++) sink += work()
  return Number(process.hrtime.bigint() - start) / 1e6 / calls
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN

/** The ratio is the median over paired rounds, which share their luck with the machine; the time is the quickest round's. */
function measure(work: () => number, calls: number): { readonly ratio: number; readonly ms: number } {
  const json = () => (JSON.parse(JSON.stringify(series)) as PracticeCoupon[]).length
  millisecondsPerCall(work, calls)
  millisecondsPerCall(json, calls * 20)
  const rounds = Array.from({ length: 25 }, () => ({ ms: millisecondsPerCall(work, calls), json: millisecondsPerCall(json, calls * 20) }))
  return { ratio: median(rounds.map(({ ms, json: per }) => ms / per)), ms: Math.min(...rounds.map(({ ms }) => ms)) }
}

/** Time to estimate readiness over time to write and read the series as JSON, with the milliseconds beside it. */
export default function benchReadiness(): Promise<readonly BenchRow[]> {
  const whole = measure(() => readinessFilter(series, testDay).probability, 20)
  // Parameters nobody has met: every kernel is made afresh, as in a process that just started or a refit.
  const cold = measure(() => readinessFilter(series, testDay, { parameters: { ...SHIPPED_PARAMETERS } }).probability, 5)
  const state = stateAfter(series.slice(0, -1))
  const one = measure(() => readinessOf(absorbCoupon(state, series[59]!), testDay).probability, 200)
  if (!Number.isFinite(sink)) throw new Error('The benchmark lost its results.')
  const rows = { 'readiness-60-coupons': whole, 'readiness-60-coupons-cold': cold, 'readiness-one-more-coupon': one }
  return Promise.resolve(Object.entries(rows).flatMap(([name, { ratio, ms }]) => [
    { name, value: Number(ratio.toFixed(1)), unit: 'ratio' },
    { name: `${name}-time`, value: Number(ms.toFixed(3)), unit: 'ms' },
  ]))
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { name, value, unit } of await benchReadiness()) console.log(`${name}: ${value} ${unit}`)
}

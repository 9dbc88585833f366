import { pathToFileURL } from 'node:url'
import { criteriaById } from '../../lib/criteria/catalogue'
import { scoreInspection } from '../../lib/scoring/score-inspection'
import type { BenchRow } from '../bench-row'
import { INDICATION_KINDS, type Indication, type Inspection, type Station, type Weld } from '../../lib/scoring/types'

const weldOf = (lengthMm: number): Weld => ({
  type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 9.525, electrodeDiameterMm: 1.143,
  nominalLegMm: 6.35, lengthMm,
})

/** Readings with the decimals that inches give, at places along the weld. */
function inspectionOf(lengthMm: number, stationCount: number, indicationCount: number): Inspection {
  const stations = Array.from({ length: stationCount }, (_, i): Station => ({
    atMm: (lengthMm * (i + 0.5)) / stationCount,
    widthMm: 9.128125 + 0.396875 * (i % 3), legAMm: 6.746875 + 0.396875 * (i % 2), legBMm: 6.35 + 0.396875 * (i % 4),
    throatMm: 4.7625, convexityMm: 0.79375 + 0.1984375 * (i % 2),
  }))
  const kinds = ['undercut', 'pore', 'undercut', 'pore', 'spatter', 'pore'] as const
  const indications = Array.from({ length: indicationCount }, (_, i): Indication => {
    const kind = kinds[i % kinds.length] ?? 'pore'
    const atMm = (lengthMm * ((i * 7919) % indicationCount)) / indicationCount
    if (kind === 'undercut') return { kind, atMm, lengthMm: 12.7 + (i % 5), depthMm: 0.396875 + 0.1 * (i % 4), toe: i % 4 === 0 ? 'A' : 'B' }
    return kind === 'pore' ? { kind, atMm, diameterMm: 0.79375 + 0.1 * (i % 3) } : { kind, atMm }
  })
  return { stations, indications, lookedFor: INDICATION_KINDS, cratersFilled: true, fusionComplete: true, gaugeResolutionMm: 0.79375 }
}

/** Keeps the optimiser from dropping work whose result nobody reads. */
let sink = 0

function secondsPerCall(work: () => number, calls: number): number {
  const start = process.hrtime.bigint()
  for (let i = 0; i < calls; i++) sink += work()
  return Number(process.hrtime.bigint() - start) / 1e9 / calls
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN

/** Median of paired rounds: both kinds of work share each round's luck with the machine. */
function ratio(judge: () => number, parse: () => number, calls: number): number {
  secondsPerCall(judge, calls)
  secondsPerCall(parse, calls)
  const rounds = Array.from({ length: 25 }, () => secondsPerCall(judge, calls) / secondsPerCall(parse, calls))
  return median(rounds)
}

/** Time to judge an inspection over time to parse its JSON, for a coupon as a class logs it and for a very long record. */
export default async function benchJudge(): Promise<readonly BenchRow[]> {
  const criteria = criteriaById('structural-static.us')
  const measure = (name: string, lengthMm: number, stations: number, indications: number, calls: number): BenchRow => {
    const weld = weldOf(lengthMm)
    const inspection = inspectionOf(lengthMm, stations, indications)
    const json = JSON.stringify(inspection)
    const value = ratio(
      () => scoreInspection(weld, inspection, criteria).findings.length,
      () => (JSON.parse(json) as Inspection).stations.length,
      calls)
    return { name, value: Number(value.toFixed(2)), unit: 'ratio' }
  }
  const rows = [
    measure('judge-per-json', 304.8, 5, 6, 20_000),
    measure('judge-per-json-large', 6000, 200, 500, 200),
  ]
  if (!Number.isFinite(sink)) throw new Error('The benchmark lost its results.')
  return rows
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { name, value, unit } of await benchJudge()) console.log(`${name}: ${value} ${unit}`)
}

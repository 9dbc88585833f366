/**
 * How well readiness is estimated, on students made up by tests/simulator, beside simpler ways and the floor of the true chance.
 *
 *   npm run evidence                       the table, a few minutes
 *   npm run evidence -- --students 100     quicker and rougher
 *   npm run evidence -- --operating-curve  writes lib/readiness/operating-curve-data.ts anew
 */
import { writeFileSync } from 'node:fs'
import { MODEL_VERSION } from '../lib/readiness/parameters'
import { operatingPoints } from '../tests/simulator/booking'
import { makeCohort, trueChance, type Moment, type Series } from '../tests/simulator/cohort'
import { diceOf } from '../tests/simulator/dice'
import { corrected, filterAsShipped, filterCorrected, passShare, threeInARow, type Forecaster, type Tested } from '../tests/simulator/forecasters'
import { BASE, SCENARIOS, type Scenario } from '../tests/simulator/scenarios'
import { meanAndSd, score, type Score } from '../tests/simulator/score'

/** Each run: a training cohort for test results, another to be scored, the same graders for both. */
const RUNS = [{ train: 101, score: 202 }, { train: 103, score: 204 }, { train: 105, score: 206 }] as const
const TEST_RESULTS = 300
/** Forecasts are asked for from this many coupons on. */
const FIRST = 4

type Row = { readonly name: string; readonly level: number; readonly scores: Score[] }

function main(args: readonly string[]): void {
  if (args.includes('--operating-curve')) return writeOperatingCurve()
  const at = args.indexOf('--students')
  const students = at < 0 ? 400 : Number(args[at + 1])
  if (!Number.isInteger(students) || students < 20) throw new RangeError('--students needs a whole number of at least 20.')

  console.log(`Made-up students: ${students} scored per run, ${RUNS.length} runs (seeds ${RUNS.map((r) => r.score).join(', ')}).`)
  console.log(`Test results: ${TEST_RESULTS} other students of the same graders, one test each (seeds ${RUNS.map((r) => r.train).join(', ')}). Shipped parameters throughout.`)
  console.log(`A forecast at every coupon from the ${FIRST}th. Mean over runs, ± sd over runs. ECE with 10 bins. Cover: share of true chances within the limits.`)
  for (const scenario of SCENARIOS) printScenario(scenario, students)
}

function printScenario(scenario: Scenario, students: number): void {
  const rows = new Map<string, Row>()
  let forecasts = 0
  for (const { train, score: scoreSeed } of RUNS) {
    const tests = testsOf(makeCohort(scenario, TEST_RESULTS, train, scoreSeed), train)
    const cohort = makeCohort(scenario, students, scoreSeed).map((series, i) => withTruth(series, scenario, scoreSeed + 104_729 * (i + 1)))
    const passed = cohort.flatMap(({ moments }) => moments.map((m) => m.passed))
    const truth = cohort.flatMap(({ chances }) => chances)
    forecasts += passed.length
    add(rows, 'true chance (floor)', NaN, score(truth.map((chance) => ({ chance, limits: null })), passed, truth))
    for (const forecaster of forecasters(tests)) {
      add(rows, forecaster.name, forecaster.level, score(cohort.flatMap(({ series, moments }) => forecaster.forecast(series, moments)), passed, truth))
    }
  }
  console.log(`\n${scenario.name} (${forecasts} forecasts)`)
  console.log('method                              Brier          log    slope   ECE    cover (nominal)')
  for (const row of rows.values()) console.log(line(row))
  console.log(verdict([...rows.values()]))
}

function forecasters(tests: readonly Tested[]): Forecaster[] {
  const all = passShare('all coupons')
  const ten = passShare('last ten', 10)
  return [filterAsShipped(0.95), filterCorrected(tests), all, corrected(all, tests), ten, corrected(ten, tests), threeInARow(tests)]
}

/** One test of each student, at a moment drawn from those with enough coupons. */
function testsOf(cohort: readonly Series[], seed: number): Tested[] {
  const dice = diceOf(seed + 1_000_003)
  return cohort.map((series) => {
    const moments = lateEnough(series)
    return { series, moment: moments[dice.whole(0, moments.length - 1)]! }
  })
}

function withTruth(series: Series, scenario: Scenario, seed: number) {
  const moments = lateEnough(series)
  return { series, moments, chances: moments.map((moment) => trueChance(series.student, moment, scenario, seed)) }
}

function lateEnough({ moments }: Series): Moment[] {
  return moments.filter(({ coupons }) => coupons >= FIRST)
}

function add(rows: Map<string, Row>, name: string, level: number, found: Score): void {
  const row = rows.get(name) ?? { name, level, scores: [] }
  row.scores.push(found)
  rows.set(name, row)
}

function line({ name, level, scores }: Row): string {
  const of = (pick: (s: Score) => number) => meanAndSd(scores.map(pick))
  const brier = of((s) => s.brier)
  const covers = scores.flatMap(({ cover }) => (cover === null ? [] : [cover]))
  const cover = covers.length === 0 ? '–' : `${meanAndSd(covers).mean.toFixed(2)} (${level.toFixed(2)})`
  return [
    name.padEnd(34), `${brier.mean.toFixed(4)} ± ${brier.sd.toFixed(4)}`, of((s) => s.log).mean.toFixed(4),
    of((s) => s.slope).mean.toFixed(2).padStart(6), of((s) => s.ece).mean.toFixed(3).padStart(6), ` ${cover}`,
  ].join('  ')
}

/** Says plainly whether the filter came first, like against like: each method with the same test results behind it. */
function verdict(rows: readonly Row[]): string {
  const brier = ({ scores }: Row) => meanAndSd(scores.map((s) => s.brier)).mean
  const contenders = rows.filter(({ name }) => name.endsWith(`${TEST_RESULTS} test results`))
  const filter = contenders.find(({ name }) => name.startsWith('filter'))!
  const best = contenders.filter((row) => row !== filter).reduce((a, b) => (brier(b) < brier(a) ? b : a))
  const gains = best.scores.map((s, run) => s.brier - filter.scores[run]!.brier)
  const gain = meanAndSd(gains).mean
  const perRun = `per run ${gains.map((g) => g.toFixed(4)).join(', ')}`
  return gain > 0
    ? `The filter beats the best simple way (${best.name}) by ${gain.toFixed(4)} Brier (${perRun}).`
    : `The filter does NOT beat the best simple way (${best.name}): it is ${(-gain).toFixed(4)} Brier worse (${perRun}).`
}

const CURVE = { students: 2000, seed: 252, thresholds: [0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9] } as const

function writeOperatingCurve(): void {
  const points = operatingPoints(BASE, CURVE.students, CURVE.seed, CURVE.thresholds)
  const rows = points.map((point) => `  { ${Object.entries(point).map(([key, value]) => `${key}: ${value === null ? 'null' : Number(value.toFixed(4))}`).join(', ')} },`)
  writeFileSync(new URL('../lib/readiness/operating-curve-data.ts', import.meta.url), `import type { OperatingPoint } from './operating-curve'

// Written by: npm run evidence -- --operating-curve. Do not edit.

/** Where the points come from: ${CURVE.students} made-up students of up to 60 coupons (seed ${CURVE.seed}, base scenario of tests/simulator), shipped parameters, no calibration. */
export const OPERATING_SOURCE = { modelVersion: '${MODEL_VERSION}', students: ${CURVE.students}, seed: ${CURVE.seed} } as const

export const OPERATING_POINTS: readonly OperatingPoint[] = [
${rows.join('\n')}
]
`)
  console.table(points)
}

main(process.argv.slice(2))

import fCdf from '@stdlib/stats-base-dists-f-cdf'
import { requireFinite, requireRows } from './preconditions'

/** `readings[part][grader][trial]`: every grader measures every part the same number of times. */
export type GaugeReadings = readonly (readonly (readonly number[])[])[]
type BySource = { readonly part: number; readonly grader: number; readonly interaction: number; readonly repeatability: number }
export type GaugeStudy = {
  readonly sumsOfSquares: BySource
  readonly degreesOfFreedom: BySource
  /** Do graders differ more on some parts than on others? `f` is null when repeats never differ. `pooled`: counted as repeatability. */
  readonly interaction: { readonly f: number | null; readonly p: number; readonly pooled: boolean }
  readonly variances: {
    readonly repeatability: number
    readonly grader: number
    readonly interaction: number
    /** Repeatability, grader and interaction together. */
    readonly gauge: number
    readonly part: number
    readonly total: number
  }
  /** Gauge standard deviation as a percentage of the total one. */
  readonly percentOfStudy: number
  /** Gauge variance as a percentage of the total one. */
  readonly percentContribution: number
  /** How many groups of parts the gauge can tell apart, 1.41 × part sd/gauge sd, not rounded; null when the gauge shows no error at all. */
  readonly distinctCategories: number | null
}

/**
 * Crossed gauge R&R study by analysis of variance.
 *
 * Purpose: how much of what we measure is the weld, how much the gauge, how much who holds it.
 * Formula: two-way random effects. Repeatability MS_e; interaction max(0, (MS_po − MS_e)/n); grader max(0, (MS_o − MS_po)/(pn));
 * part max(0, (MS_p − MS_po)/(on)). An interaction with p above `poolAbove` is pooled into repeatability, which then replaces MS_po.
 * Source: AIAG Measurement Systems Analysis, 4th ed. 2010; Montgomery & Runger 1993, Quality Engineering 6:115.
 * Units: variances in the square of the unit of the readings; percentages of the study.
 *
 * @param poolAbove p value above which the interaction is pooled; 1 never pools, 0 always does
 * @throws RangeError with fewer than two parts, graders or trials, unequal trials, a reading that is not finite, or readings that are all equal
 * @example gaugeStudy([[[5, 5.1], [5.2, 5.1]], [[7, 7.1], [7.2, 7.1]], [[6, 6], [6.1, 6.2]]]) // { percentOfStudy: 9.7, interaction: { pooled: true } }
 */
export function gaugeStudy(readings: GaugeReadings, poolAbove = 0.25): GaugeStudy {
  const { parts, graders, trials } = requireCrossed(readings)
  if (!(poolAbove >= 0 && poolAbove <= 1)) throw new RangeError(`The pooling limit is a p value from 0 to 1, not ${String(poolAbove)}.`)
  const sumsOfSquares = sumsOfSquaresOf(readings)
  const degreesOfFreedom = {
    part: parts - 1,
    grader: graders - 1,
    interaction: (parts - 1) * (graders - 1),
    repeatability: parts * graders * (trials - 1),
  }
  const square = (source: keyof BySource) => sumsOfSquares[source] / degreesOfFreedom[source]
  const interaction = interactionTest(square('interaction'), square('repeatability'), degreesOfFreedom)
  const pooled = interaction.p > poolAbove
  const error = pooled
    ? (sumsOfSquares.interaction + sumsOfSquares.repeatability) / (degreesOfFreedom.interaction + degreesOfFreedom.repeatability)
    : square('repeatability')
  const reference = pooled ? error : square('interaction')
  const grader = Math.max(0, (square('grader') - reference) / (parts * trials))
  const part = Math.max(0, (square('part') - reference) / (graders * trials))
  const between = pooled ? 0 : Math.max(0, (square('interaction') - square('repeatability')) / trials)
  const gauge = error + grader + between
  const total = gauge + part
  return {
    sumsOfSquares,
    degreesOfFreedom,
    interaction: { ...interaction, pooled },
    variances: { repeatability: error, grader, interaction: between, gauge, part, total },
    percentOfStudy: 100 * Math.sqrt(gauge / total),
    percentContribution: 100 * gauge / total,
    distinctCategories: gauge === 0 ? null : 1.41 * Math.sqrt(part / gauge),
  }
}

function requireCrossed(readings: GaugeReadings) {
  requireRows(readings, 'The readings', 'Part')
  readings.forEach((byGrader, p) => requireRows(byGrader, `Part ${p + 1}`, `Part ${p + 1}, grader`))
  const parts = readings.length
  const graders = readings[0]?.length ?? 0
  const trials = readings[0]?.[0]?.length ?? 0
  if (parts < 2 || graders < 2 || trials < 2) {
    throw new RangeError(`A gauge study needs at least two parts, two graders and two trials; there are ${parts}, ${graders} and ${trials}.`)
  }
  readings.forEach((byGrader, p) => {
    if (byGrader.length !== graders) throw new RangeError(`Part ${p + 1} was measured by ${byGrader.length} graders, the first by ${graders}.`)
    byGrader.forEach((byTrial, g) => {
      if (byTrial.length !== trials) throw new RangeError(`Part ${p + 1}, grader ${g + 1} has ${byTrial.length} trials, not ${trials}.`)
      byTrial.forEach(reading => requireFinite(reading, `The reading of part ${p + 1} by grader ${g + 1}`))
    })
  })
  return { parts, graders, trials }
}

const average = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

function sumsOfSquaresOf(readings: GaugeReadings): BySource {
  const offset = average(readings.flat(2)) // readings near their mean keep their digits when squared
  const centred = readings.map(part => part.map(cell => cell.map(reading => reading - offset)))
  const cells = centred.map(part => part.map(average))
  const [graders, trials] = [centred[0]?.length ?? 0, centred[0]?.[0]?.length ?? 0]
  const partMeans = cells.map(average)
  const graderMeans = Array.from({ length: graders }, (_, g) => average(cells.map(row => row[g] ?? 0)))
  const grand = average(partMeans)
  const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value * value, 0)
  // Rounding leaves dust where a sum should be nought; beside this much it is nothing.
  const dust = 1e-28 * squares(centred.flat(2))
  const swept = (value: number) => (value <= dust ? 0 : value)
  const result = {
    part: swept(graders * trials * squares(partMeans.map(mean => mean - grand))),
    grader: swept(centred.length * trials * squares(graderMeans.map(mean => mean - grand))),
    interaction: swept(trials * squares(cells.flatMap((row, p) => row.map((cell, g) => cell - (partMeans[p] ?? 0) - (graderMeans[g] ?? 0) + grand)))),
    repeatability: swept(squares(centred.flatMap((row, p) => row.flatMap((cell, g) => cell.map(reading => reading - (cells[p]?.[g] ?? 0)))))),
  }
  if (result.part + result.grader + result.interaction + result.repeatability === 0) {
    throw new RangeError('Every reading is the same: choose parts that differ, or read the gauge more finely.')
  }
  return result
}

function interactionTest(interaction: number, repeatability: number, df: BySource): { f: number | null; p: number } {
  if (repeatability === 0) return { f: null, p: interaction === 0 ? 1 : 0 }
  const f = interaction / repeatability
  return { f, p: Math.min(1, Math.max(0, 1 - fCdf(f, df.interaction, df.repeatability))) }
}

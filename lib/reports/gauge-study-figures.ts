import { gaugeStudy, type GaugeStudy } from '../statistics/gauge-study'
import type { Interval } from '../statistics/interval'
import { meanInterval } from '../statistics/mean-interval'
import type { StudyPlan } from './gauge-study-order'

export type WidthReading = { readonly couponId: string; readonly readerId: string; readonly round: number; readonly widthMm: number }
export type NamedReader = { readonly id: string; readonly name: string }
/** What the criteria allow for the width. */
export type WidthBand = { readonly minMm: number; readonly maxMm: number }

/** `bias`: by how much a reader reads over the mean of all who count, the mean over the coupons with its interval. */
export type ReaderBias = NamedReader & { readonly meanMm: number; readonly bias: Interval & { readonly mean: number } }
export type GaugeFigures =
  | { readonly kind: 'none'; readonly why: string }
  | {
      readonly kind: 'figures'
      readonly study: GaugeStudy
      readonly coupons: number
      readonly rounds: number
      readonly readers: readonly ReaderBias[]
      /** Those whose readings are left out, because they read fewer whole rounds. */
      readonly leftOut: readonly NamedReader[]
      /** Rounds left out, because not enough readers read them whole. */
      readonly roundsLeftOut: number
      /** Six gauge standard deviations as a percentage of the band; null without a band of two ends. */
      readonly percentOfBand: number | null
    }

/** Confidence of the intervals about each reader's bias. */
export const BIAS_CONFIDENCE = 0.95
const SIXFOLD = 6

/**
 * What a closed study says about the measuring.
 *
 * An analysis of crossed readings needs every reader on every coupon equally often, so what counts is the largest block of readers and
 * whole rounds, from the first round on; of blocks of a size the one with more readers. What is left out is named.
 * Share of the band: 6 σ of the gauge over the band's width. Source: AIAG Measurement Systems Analysis, 4th ed. 2010 (from memory).
 */
export function gaugeFigures(plan: StudyPlan, people: readonly NamedReader[], readings: readonly WidthReading[], band: WidthBand | null): GaugeFigures {
  const width = new Map(readings.map((each) => [`${each.readerId}/${each.round}/${each.couponId}`, each.widthMm]))
  const wholeRounds = new Map(people.map(({ id }) => [id, roundsReadWhole(plan, id, width)]))
  const block = largestBlock(plan.rounds, [...wholeRounds.values()])
  if (!block) return { kind: 'none', why: 'There are no figures: two readers must each have read every coupon in two rounds at least. What was read stands below.' }
  const readers = people.filter(({ id }) => (wholeRounds.get(id) ?? 0) >= block.rounds)
  const cells = plan.couponIds.map((couponId) => readers.map(({ id }) =>
    Array.from({ length: block.rounds }, (_, index) => width.get(`${id}/${index + 1}/${couponId}`) ?? Number.NaN)))
  if (new Set(cells.flat(2)).size === 1) return { kind: 'none', why: 'Every reading is the same, so there is no spread to divide. Choose coupons that differ, or read the gauge more finely.' }
  const study = gaugeStudy(cells)
  return {
    kind: 'figures', study, coupons: plan.couponIds.length, rounds: block.rounds,
    readers: readers.map((reader, at) => ({ ...reader, ...biasOf(cells, at) })),
    leftOut: people.filter((person) => !readers.includes(person) && readings.some(({ readerId }) => readerId === person.id)),
    roundsLeftOut: plan.rounds - block.rounds,
    percentOfBand: band && band.maxMm > band.minMm ? (100 * SIXFOLD * Math.sqrt(study.variances.gauge)) / (band.maxMm - band.minMm) : null,
  }
}

function roundsReadWhole({ rounds, couponIds }: StudyPlan, readerId: string, width: ReadonlyMap<string, number>): number {
  for (let round = 1; round <= rounds; round += 1) {
    if (!couponIds.every((couponId) => width.has(`${readerId}/${round}/${couponId}`))) return round - 1
  }
  return rounds
}

function largestBlock(most: number, whole: readonly number[]): { readonly rounds: number; readonly readers: number } | null {
  let best: { readonly rounds: number; readonly readers: number } | null = null
  for (let rounds = 2; rounds <= most; rounds += 1) {
    const readers = whole.filter((each) => each >= rounds).length
    if (readers >= 2 && (!best || readers * rounds > best.readers * best.rounds)) best = { rounds, readers }
  }
  return best
}

const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

function biasOf(cells: readonly (readonly (readonly number[])[])[], at: number): Pick<ReaderBias, 'meanMm' | 'bias'> {
  const own = cells.map((byReader) => average(byReader[at] ?? []))
  const apart = cells.map((byReader, coupon) => (own[coupon] ?? Number.NaN) - average(byReader.flat()))
  return { meanMm: average(own), bias: meanInterval(apart, BIAS_CONFIDENCE) }
}

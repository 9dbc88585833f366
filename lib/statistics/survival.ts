import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { type Interval, intervalAround } from './interval'
import { asOnesAndZeros, type Outcome } from './outcome'
import { requireConfidence, requireNamed, requireSameLength, requireValues } from './preconditions'
import { clopperPearsonInterval } from './proportion'

export type SurvivalStep = Interval & {
  readonly time: number
  readonly survival: number
  readonly atRisk: number
  readonly events: number
}
export type SurvivalCurve = {
  /** One step per time with an event, in order. */
  readonly steps: SurvivalStep[]
  /** First time at which half or fewer are still waiting; null when the curve never gets there. */
  readonly median: number | null
  readonly medianLow: number | null
  readonly medianHigh: number | null
}

const HALF = 0.5 + 1e-12 // a product of fractions that is a half exactly may round to just above

/**
 * Kaplan-Meier curve with log-log limits.
 *
 * Purpose: how many coupons until the first qualification pass, counting those who left or have not passed yet. Never the mean of passers only.
 * Formula: S(t) = Π (1 − d/n); Greenwood variance; limits S^exp(±z · se/(S ln S)). Where the curve reaches 0 the formula ends: the
 * upper limit stays at the step before (Clopper-Pearson if there is none).
 * Source: Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457; Kalbfleisch & Prentice, The Statistical Analysis of Failure Time Data, 1980.
 * Units: durations in any one unit (coupons, weeks); survival and limits are shares.
 *
 * @param durations how long each student was watched
 * @param observed true where the event came at the end of it, false where watching just stopped
 * @throws RangeError when the lists are empty or unequal, a duration is negative or not finite, or the confidence is outside 0 to 1
 * @example kaplanMeier([6, 9, 10, 10], [true, false, true, false]) // { median: 10, steps: [{ time: 6, survival: 0.75 }, { time: 10, survival: 0.375 }] }
 */
export function kaplanMeier(durations: readonly number[], observed: readonly Outcome[], confidence = 0.95): SurvivalCurve {
  requireConfidence(confidence)
  const z = normalQuantile(0.5 + confidence / 2, 0, 1)
  const steps: SurvivalStep[] = []
  let survival = 1
  let greenwood = 0
  for (const { time, atRisk, events } of eventTimes(durations, observed)) {
    survival = atRisk === events ? 0 : survival * (1 - events / atRisk)
    if (survival === 0) {
      const high = steps.at(-1)?.high ?? clopperPearsonInterval(0, atRisk, confidence).high
      steps.push({ time, survival, low: 0, high, atRisk, events })
      break
    }
    greenwood += events / (atRisk * (atRisk - events))
    const power = z * Math.sqrt(greenwood) / Math.log(survival)
    const limits = intervalAround(survival, survival ** Math.exp(-power), survival ** Math.exp(power), 0, 1)
    steps.push({ time, survival, ...limits, atRisk, events })
  }
  const firstAtHalf = (value: (step: SurvivalStep) => number) => steps.find(step => value(step) <= HALF)?.time ?? null
  return {
    steps,
    median: firstAtHalf(step => step.survival),
    medianLow: firstAtHalf(step => step.low),
    medianHigh: firstAtHalf(step => step.high),
  }
}

export type SurvivalGroup = { readonly durations: readonly number[]; readonly observed: readonly Outcome[] }

/**
 * Log-rank test of two groups.
 *
 * Purpose: did one group get there sooner than chance explains?
 * Formula: χ² = (O₁ − E₁)²/V, E₁ = Σ d n₁/n, V = Σ n₁ n₂ d (n − d)/(n²(n − 1)); p from χ² with 1 degree of freedom.
 * Source: Mantel 1966, Cancer Chemotherapy Reports 50:163; Peto & Peto 1972, J. R. Stat. Soc. A 135:185.
 * Units: none.
 *
 * @throws RangeError when a group is empty or badly formed, or no event comes while both groups are still being watched
 * @example logRank({ durations: [1, 2, 3], observed: [1, 1, 1] }, { durations: [4, 5, 6], observed: [1, 1, 0] }) // { chiSquare: 5.052, p: 0.0246 }
 */
export function logRank(first: SurvivalGroup, second: SurvivalGroup): {
  readonly chiSquare: number
  readonly p: number
  readonly observed: readonly [number, number]
  readonly expected: readonly [number, number]
  readonly variance: number
} {
  requireNamed(first, 'The first group')
  requireNamed(second, 'The second group')
  const both = [first, second].map(group => watched(group.durations, group.observed))
  const [mine = [], other = []] = both
  const pooled = [...mine, ...other]
  const times = [...new Set(pooled.filter(student => student.event).map(student => student.time))]
  let [expected, variance] = [0, 0]
  for (const time of times) {
    const n1 = mine.filter(student => student.time >= time).length
    const n2 = other.filter(student => student.time >= time).length
    const d = pooled.filter(student => student.event && student.time === time).length
    const n = n1 + n2
    expected += d * n1 / n
    if (n > 1) variance += n1 * n2 * d * (n - d) / (n * n * (n - 1))
  }
  if (variance === 0) throw new RangeError('The log-rank test needs an event while both groups are still being watched; there is none.')
  const counts = [mine, other].map(group => group.filter(student => student.event).length)
  const [o1 = 0, o2 = 0] = counts
  const chiSquare = (o1 - expected) ** 2 / variance
  return {
    chiSquare,
    p: Math.min(1, 2 * normalCdf(-Math.sqrt(chiSquare), 0, 1)), // keeps its digits where 1 − cdf would lose them
    observed: [o1, o2],
    expected: [expected, o1 + o2 - expected],
    variance,
  }
}

function watched(durations: readonly number[], observed: readonly Outcome[]) {
  requireValues(durations, 'The durations', 1)
  requireSameLength(durations, 'The durations', observed, 'the outcomes')
  const negative = durations.findIndex(time => time < 0)
  if (negative >= 0) throw new RangeError(`A duration cannot be negative; number ${negative + 1} is ${durations[negative]}.`)
  const events = asOnesAndZeros(observed, 'Whether the event was observed')
  return durations.map((time, i) => ({ time, event: events[i] === 1 }))
}

function eventTimes(durations: readonly number[], observed: readonly Outcome[]) {
  const students = watched(durations, observed).sort((a, b) => a.time - b.time)
  const result: { time: number; atRisk: number; events: number }[] = []
  students.forEach(({ time, event }, before) => {
    const last = result.at(-1)
    if (last?.time === time) last.events += event ? 1 : 0
    else result.push({ time, atRisk: students.length - before, events: event ? 1 : 0 })
  })
  return result.filter(step => step.events > 0)
}

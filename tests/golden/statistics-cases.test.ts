// Walks every case of statistics-cases.json. A case without a check, a check without a case, and an expected value nobody looks at all fail.
import { knowledgeTracing, performanceFactors } from '@/lib/statistics/skill-tracing'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { cohensKappa, gwetAc1, percentAgreement, weightedKappa } from '@/lib/statistics/agreement'
import { fleissKappa, gwetAc1OfMany } from '@/lib/statistics/agreement-of-many'
import { betaBinomialPredictive } from '@/lib/statistics/beta-binomial'
import { capability } from '@/lib/statistics/capability'
import { ewma, individualsChart } from '@/lib/statistics/chart'
import { competenceLimits, learningCusum } from '@/lib/statistics/competence-cusum'
import { discountedBeta } from '@/lib/statistics/discounted-beta'
import { funnelLimit } from '@/lib/statistics/funnel'
import { gaugeStudy } from '@/lib/statistics/gauge-study'
import { krippendorffAlpha } from '@/lib/statistics/krippendorff'
import { marginPredictive } from '@/lib/statistics/margin-predictive'
import { clopperPearsonInterval, jeffreysInterval, wilsonInterval } from '@/lib/statistics/proportion'
import { cusumRunLength, ewmaRunLength } from '@/lib/statistics/run-length'
import { stationsToHitZone, successRunLength } from '@/lib/statistics/success-run'
import { kaplanMeier, logRank } from '@/lib/statistics/survival'
import { howeToleranceFactor, natrellaToleranceFactor } from '@/lib/statistics/tolerance'
import { vangelInterval } from '@/lib/statistics/variation'

type GoldenCase = {
  readonly id: string
  readonly data: Record<string, unknown>
  readonly expected: Record<string, unknown>
  readonly tolerance: number
  readonly source: string
}
type Near = (actual: number | null, expected: number | null) => void
type Pair = readonly [number, number]
type Watched = readonly { readonly t: number; readonly event: boolean }[]

const cases = JSON.parse(readFileSync(path.join(import.meta.dirname, 'statistics-cases.json'), 'utf8')) as GoldenCase[]
const checks = new Map<string, (golden: GoldenCase, near: Near) => void>()

function check<Data, Expected>(ids: string | readonly string[], run: (data: Data, expected: Expected, near: Near) => void): void {
  for (const id of [ids].flat()) checks.set(id, ({ data, expected }, near) => run(data as Data, expected as Expected, near))
}

/** Expected values that note which of them were read. */
function noting(expected: Record<string, unknown>) {
  const read = new Set<string>()
  const values = new Proxy(expected, {
    get: (target, key) => {
      read.add(String(key))
      return target[String(key)]
    },
  })
  return { values, unread: () => Object.keys(expected).filter(key => !read.has(key)) }
}

check<{ x: number; n: number; conf: number }, { wilson: Pair; clopperPearson: Pair; jeffreys: Pair }>(
  ['a.81of263@0.95', 'a.15of148@0.95', 'a.0of20@0.95', 'a.4of20@0.9', 'a.0of10@0.95', 'a.10of10@0.95', 'a.7of8@0.95'],
  ({ x, n, conf }, { wilson, clopperPearson, jeffreys }, near) => {
    for (const [interval, [low, high]] of [
      [wilsonInterval(x, n, conf), wilson],
      [clopperPearsonInterval(x, n, conf), clopperPearson],
      [jeffreysInterval(x, n, conf), jeffreys],
    ] as const) {
      near(interval.low, low)
      near(interval.high, high)
    }
  },
)

check<{ a: number; b: number; m: number }, { pmf: number[] }>('b.betabinom.9of10', ({ a, b, m }, { pmf }, near) => {
  const forecast = betaBinomialPredictive({ a, b }, m)
  expect(forecast).toHaveLength(pmf.length)
  forecast.forEach((p, k) => near(p, pmf[k] ?? null))
})

check<{ C: number[]; R: number[]; f: number[] }, { table: Record<string, number[]> }>('b.successrun', ({ C, R, f }, { table }, near) => {
  for (const c of C) for (const r of R) f.forEach((failures, i) => near(successRunLength(c, r, failures), table[`${c}/${r}`]?.[i] ?? null))
})

check<{ x: number[] }, { mean: number; mrBar: number; ucl: number; lcl: number }>('c.individuals', ({ x }, { mean, mrBar, ucl, lcl }, near) => {
  const chart = individualsChart(x)
  near(chart.mean, mean)
  near(chart.averageMovingRange, mrBar)
  near(chart.upper, ucl)
  near(chart.lower, lcl)
})

check<{ x: number[]; lambda_: number; target: number; s: number }, { ewma: number[]; ucl: number; lcl: number }>(
  'c.ewma',
  ({ x, lambda_, target, s }, expected, near) => {
    const chart = ewma(x, { lambda: lambda_, target, sigma: s, width: 3 })
    expect(chart.values).toHaveLength(expected.ewma.length)
    chart.values.forEach((value, i) => near(value, expected.ewma[i] ?? null))
    near(chart.upper, expected.ucl)
    near(chart.lower, expected.lcl)
    expect(chart.signals).toEqual([])
  },
)

type RunLengths = { shift0: number; shift1: number }
check<object, { cusum_k05_h4: RunLengths; cusum_k05_h5: RunLengths; ewma_l02_L2962: RunLengths }>(
  'c.arl',
  (_, { cusum_k05_h4, cusum_k05_h5, ewma_l02_L2962 }, near) => {
    near(cusumRunLength({ k: 0.5, h: 4 }, 0), cusum_k05_h4.shift0)
    near(cusumRunLength({ k: 0.5, h: 4 }, 1), cusum_k05_h4.shift1)
    near(cusumRunLength({ k: 0.5, h: 5 }, 0), cusum_k05_h5.shift0)
    near(cusumRunLength({ k: 0.5, h: 5 }, 1), cusum_k05_h5.shift1)
    near(ewmaRunLength({ lambda: 0.2, width: 2.962 }, 0), ewma_l02_L2962.shift0)
    near(ewmaRunLength({ lambda: 0.2, width: 2.962 }, 1), ewma_l02_L2962.shift1)
  },
)

check<{ usl: number; lsl: number; mean: number; s: number }, { cp: number; cpk: number; cpu: number; cpl: number; k: number }>(
  'd.cpk',
  ({ usl, lsl, mean, s }, { cp, cpk, cpu, cpl, k }, near) => {
    const result = capability({ mean, standardDeviation: s }, { lower: lsl, upper: usl })
    near(result.cp, cp)
    near(result.cpk, cpk)
    near(result.cpu, cpu)
    near(result.cpl, cpl)
    near(result.offCentre, k)
  },
)

check<{ n: number; p: number; gamma: number }, { k2Howe: number; k1Natrella: number; k1Exact: number; k2Exact: number }>(
  'd.tolerance',
  ({ n, p, gamma }, { k2Howe, k1Natrella, k1Exact, k2Exact }, near) => {
    near(howeToleranceFactor(n, p, gamma), k2Howe)
    near(natrellaToleranceFactor(n, p, gamma), k1Natrella)
    expect(Math.abs(howeToleranceFactor(n, p, gamma) / k2Exact - 1)).toBeLessThan(0.01)
    expect(Math.abs(natrellaToleranceFactor(n, p, gamma) / k1Exact - 1)).toBeLessThan(0.015)
  },
)

check<{ table: number[][] }, Record<'kappa' | 'kappaSe' | 'scottPi' | 'ac1' | 'ac1Se' | 'brennanPrediger' | 'krippendorffAlpha' | 'percent' | 'kappaLinear', number>>(
  'e.kappa.3x3',
  ({ table }, expected, near) => {
    near(cohensKappa(table).value, expected.kappa)
    near(cohensKappa(table).standardError, expected.kappaSe)
    near(gwetAc1(table).value, expected.ac1)
    near(gwetAc1(table).standardError, expected.ac1Se)
    near(percentAgreement(table), expected.percent)
    near((percentAgreement(table) - 1 / table.length) / (1 - 1 / table.length), expected.brennanPrediger)
    near(weightedKappa(table, 'linear').value, expected.kappaLinear)
    const pairs = table.flatMap((row, i) => row.flatMap((count, j) => Array.from({ length: count }, () => [i, j] as const)))
    const alpha = krippendorffAlpha([pairs.map(([i]) => i), pairs.map(([, j]) => j)], 'nominal')
    near(alpha, expected.krippendorffAlpha)
    near(1 - (1 - alpha) * 2 * pairs.length / (2 * pairs.length - 1), expected.scottPi) // alpha for two without gaps is Scott's pi, less bias
  },
)

check<{ table: number[][] }, Record<'kappa' | 'kappaAse' | 'linear' | 'linearAse' | 'quadratic' | 'quadraticAse', number>>(
  'e.kappa.weighted',
  ({ table }, expected, near) => {
    near(cohensKappa(table).value, expected.kappa)
    near(cohensKappa(table).standardError, expected.kappaAse)
    near(weightedKappa(table, 'linear').value, expected.linear)
    near(weightedKappa(table, 'linear').standardError, expected.linearAse)
    near(weightedKappa(table, 'quadratic').value, expected.quadratic)
    near(weightedKappa(table, 'quadratic').standardError, expected.quadraticAse)
  },
)

check<{ counts: number[][] }, { kappa: number; z0: number; pa: number; pe: number; ac1: number; krippendorffAlpha: number }>(
  'e.fleiss1971',
  ({ counts }, expected, near) => {
    const { value, z } = fleissKappa(counts)
    near(value, expected.kappa)
    expect(z).toBeCloseTo(expected.z0, 4) // given to five decimals
    near((expected.pa - expected.pe) / (1 - expected.pe), value)
    near(gwetAc1OfMany(counts).value, expected.ac1)
    const ratings = counts.map(row => row.flatMap((count, k) => Array.from({ length: count }, () => k)))
    const byGrader = Array.from({ length: 6 }, (_, grader) => ratings.map(unit => unit[grader] ?? null))
    near(krippendorffAlpha(byGrader, 'nominal'), expected.krippendorffAlpha)
  },
)

type Sources = { part: number; op: number; po: number; error: number }
check<{ operators: Record<string, number[][]> }, {
  ss: Sources
  df: Sources
  fInteraction: number
  pInteraction: number
  withInteraction: { rep: number; po: number; op: number; part: number }
  pooled: { rep: number; op: number; part: number; grr: number; total: number; pctStudy: number; pctContribution: number; ndc: number }
}>('f.aiag', ({ operators }, { ss, df, fInteraction, pInteraction, withInteraction, pooled }, near) => {
  const graders = Object.values(operators) // each trial × part
  const readings = Array.from({ length: 10 }, (_, part) => graders.map(trials => trials.map(trial => trial[part] ?? NaN)))
  const study = gaugeStudy(readings)
  near(study.sumsOfSquares.part, ss.part)
  near(study.sumsOfSquares.grader, ss.op)
  near(study.sumsOfSquares.interaction, ss.po)
  near(study.sumsOfSquares.repeatability, ss.error)
  expect(study.degreesOfFreedom).toEqual({ part: df.part, grader: df.op, interaction: df.po, repeatability: df.error })
  near(study.interaction.f, fInteraction)
  near(study.interaction.p, pInteraction)
  expect(study.interaction.pooled).toBe(true)
  near(study.variances.repeatability, pooled.rep)
  near(study.variances.grader, pooled.op)
  near(study.variances.part, pooled.part)
  near(study.variances.gauge, pooled.grr)
  near(study.variances.total, pooled.total)
  near(study.percentOfStudy, pooled.pctStudy)
  near(study.percentContribution, pooled.pctContribution)
  near(study.distinctCategories, pooled.ndc)
  const apart = gaugeStudy(readings, 1).variances
  near(apart.repeatability, withInteraction.rep)
  near(apart.interaction, withInteraction.po)
  near(apart.grader, withInteraction.op)
  near(apart.part, withInteraction.part)
})

check<{ treated: Watched; control: Watched }, {
  treated: { t: number; atRisk: number; d: number; s: number; lo: number; hi: number }[]
  medianTreated: number
  medianTreatedCI: (number | null)[]
  medianControl: number
  medianControlCI: (number | null)[]
  logrank: number
  expectedTreated: number
  expectedControl: number
  variance: number
  p: number
}>('g.6mp', ({ treated, control }, expected, near) => {
  const group = (patients: Watched) => ({ durations: patients.map(({ t }) => t), observed: patients.map(({ event }) => event) })
  const curve = kaplanMeier(group(treated).durations, group(treated).observed)
  expect(curve.steps.map(({ time, atRisk, events }) => ({ t: time, atRisk, d: events }))).toEqual(expected.treated.map(({ t, atRisk, d }) => ({ t, atRisk, d })))
  curve.steps.forEach((step, i) => {
    near(step.survival, expected.treated[i]?.s ?? null)
    near(step.low, expected.treated[i]?.lo ?? null)
    near(step.high, expected.treated[i]?.hi ?? null)
  })
  expect([curve.median, curve.medianLow, curve.medianHigh]).toEqual([expected.medianTreated, ...expected.medianTreatedCI])
  const other = kaplanMeier(group(control).durations, group(control).observed)
  expect([other.median, other.medianLow, other.medianHigh]).toEqual([expected.medianControl, ...expected.medianControlCI])
  const test = logRank(group(treated), group(control))
  near(test.chiSquare, expected.logrank)
  near(test.expected[0], expected.expectedTreated)
  near(test.expected[1], expected.expectedControl)
  near(test.variance, expected.variance)
  expect(test.p).toBeCloseTo(expected.p, 9)
})

check<{ theta: number[]; n: number[]; p: number[] }, { limits: number[][] }>('h.funnel', ({ theta, n, p }, { limits }, near) => {
  expect(limits).toHaveLength(theta.length)
  theta.forEach((overall, i) => p.forEach((probability, j) => near(funnelLimit(overall, n[i] ?? 0, probability), limits[i]?.[j] ?? null)))
})

check<{ cases: [number, number, number, number][] }, { s_h0_h1: [number, number, number][]; successesToAccept: number[] }>(
  'i.sprtcusum',
  ({ cases: rates }, { s_h0_h1, successesToAccept }, near) => {
    rates.forEach(([acceptable, unacceptable, alpha, beta], i) => {
      const limits = competenceLimits({ acceptable, unacceptable, alpha, beta })
      near(limits.credit, s_h0_h1[i]?.[0] ?? null)
      near(limits.accept, s_h0_h1[i]?.[1] ?? null)
      near(limits.reject, s_h0_h1[i]?.[2] ?? null)
      expect(limits.straightSuccessesToAccept).toBe(successesToAccept[i])
    })
  },
)

check<{ success: number[]; p0: number; p1: number; alpha: number; beta: number }, { score: number[]; h0: number }>(
  'i.learningcusum',
  ({ success, p0, p1, alpha, beta }, { score, h0 }, near) => {
    const rates = { acceptable: p0, unacceptable: p1, alpha, beta }
    const scores = learningCusum(success, rates)
    expect(scores).toHaveLength(score.length)
    scores.forEach((value, i) => near(value, score[i] ?? null))
    near(competenceLimits(rates).accept, h0)
  },
)

check<{ L0: number; T: number; S: number; G: number; obs: (0 | 1)[] }, { pCorrect: number[]; L: number[] }>(
  'i.bkt',
  ({ L0, T, S, G, obs }, { pCorrect, L }, near) => {
    const traced = knowledgeTracing(obs, { known: L0, learned: T, slip: S, guess: G })
    pCorrect.forEach((expected, i) => near(traced.pass[i] ?? NaN, expected))
    L.forEach((expected, i) => near(traced.known[i] ?? NaN, expected))
  },
)

check<{ beta: number; gamma: number; rho: number; history: [number, number][] }, { p: number[] }>('i.pfa', ({ beta, gamma, rho, history }, { p }, near) => {
  history.forEach(([passes, fails], i) => near(performanceFactors({ passes, fails }, { ease: beta, perPass: gamma, perFail: rho }), p[i] ?? NaN))
})

check<{ obs: number[]; lam: number; a0: number; b0: number }, { a: number; b: number; mean: number; q10q90: Pair }>(
  'i.discbeta',
  ({ obs, lam, a0, b0 }, { a, b, mean, q10q90 }, near) => {
    const estimate = discountedBeta(obs, { retention: lam, priorA: a0, priorB: b0, confidence: 0.8 })
    near(estimate.a, a)
    near(estimate.b, b)
    near(estimate.mean, mean)
    near(estimate.low, q10q90[0])
    near(estimate.high, q10q90[1])
  },
)

check<{ margin: number[] }, { mean: number; s: number; t: number; p: number }>('i.tmargin', ({ margin }, { mean, s, t, p }, near) => {
  const forecast = marginPredictive(margin)
  near(forecast.mean, mean)
  near(forecast.standardDeviation, s)
  near(forecast.t, t)
  near(forecast.probability, p)
})

check<{ cv: number; n: number[] }, { ci95: Pair[]; exactNoncentralT_n5: Pair }>('k.cv', ({ cv, n }, { ci95, exactNoncentralT_n5 }, near) => {
  n.forEach((stations, i) => {
    near(vangelInterval(cv, stations, 0.95).low, ci95[i]?.[0] ?? null)
    near(vangelInterval(cv, stations, 0.95).high, ci95[i]?.[1] ?? null)
  })
  const five = vangelInterval(cv, 5, 0.95)
  expect(five.low / exactNoncentralT_n5[0]).toBeCloseTo(1, 4)
  expect((five.high ?? 0) / exactNoncentralT_n5[1]).toBeCloseTo(1, 2)
})

check<{ f: number[]; C: number[] }, { n: number[][] }>('k.stations', ({ f, C }, { n }, near) => {
  f.forEach((fraction, i) => C.forEach((chance, j) => near(stationsToHitZone(fraction, chance), n[i]?.[j] ?? null)))
})

describe('published and recomputed reference cases', () => {
  test('every case has a check, every check a case, and every case names its source', () => {
    expect([...checks.keys()].sort()).toEqual(cases.map(({ id }) => id).sort())
    for (const { id, source } of cases) expect(source.length, id).toBeGreaterThan(15)
  })

  test.each(cases.map(golden => [golden.id, golden] as const))('%s', (id, golden) => {
    const { values, unread } = noting(golden.expected)
    let compared = 0
    checks.get(id)?.({ ...golden, expected: values }, (actual, expected) => {
      compared += 1
      expect(actual, `${id}, value ${compared}`).toBeTypeOf('number')
      expect(expected, `${id}, value ${compared} of the case`).toBeTypeOf('number')
      expect(Math.abs((actual ?? NaN) - (expected ?? NaN)), `${id}, value ${compared}: ${actual} for ${expected}`).toBeLessThanOrEqual(golden.tolerance)
    })
    expect(compared).toBeGreaterThan(0)
    expect(unread()).toEqual([])
  })
})

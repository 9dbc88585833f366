// Every estimator refuses what it cannot answer, with a RangeError whose sentence a person can act on.
import { describe, expect, test } from 'vitest'
import { cohensKappa, gwetAc1, percentAgreement, weightedKappa } from '@/lib/statistics/agreement'
import { fleissKappa, gwetAc1OfMany } from '@/lib/statistics/agreement-of-many'
import { betaBinomialPredictive } from '@/lib/statistics/beta-binomial'
import { brierDecomposition, brierScore, calibrationLine, expectedCalibrationError, logScore, reliabilityBins } from '@/lib/statistics/calibration'
import { capability, cpInterval, cpkInterval } from '@/lib/statistics/capability'
import { chiSquareQuantile } from '@/lib/statistics/chi-square-quantile'
import { cusum, ewma, individualsChart } from '@/lib/statistics/chart'
import { biauLearningCusum, competenceCusum, competenceLimits, learningCusum } from '@/lib/statistics/competence-cusum'
import { discountedBeta } from '@/lib/statistics/discounted-beta'
import { funnelLimit, funnelLimits } from '@/lib/statistics/funnel'
import { gaugeStudy } from '@/lib/statistics/gauge-study'
import { krippendorffAlpha } from '@/lib/statistics/krippendorff'
import { fitLogisticLine } from '@/lib/statistics/logistic-line'
import { limitsOfAgreement } from '@/lib/statistics/limits-of-agreement'
import { meanInterval } from '@/lib/statistics/mean-interval'
import { marginPredictive } from '@/lib/statistics/margin-predictive'
import { clopperPearsonInterval, jeffreysInterval, wilsonInterval } from '@/lib/statistics/proportion'
import { cusumRunLength, ewmaRunLength } from '@/lib/statistics/run-length'
import { scottsPi } from '@/lib/statistics/scotts-pi'
import { betaBinomialShrinkage, fitGroupPrior } from '@/lib/statistics/shrinkage'
import { signTest, signTestSize } from '@/lib/statistics/sign-test'
import { demonstratedPassRate, stationsToHitZone, successRunLength } from '@/lib/statistics/success-run'
import { knowledgeTracing, performanceFactors } from '@/lib/statistics/skill-tracing'
import { kaplanMeier, logRank } from '@/lib/statistics/survival'
import { howeToleranceFactor, natrellaToleranceFactor } from '@/lib/statistics/tolerance'
import { coefficientOfVariation, pooledCoefficientOfVariation, vangelInterval } from '@/lib/statistics/variation'

const NOT_A_TABLE: number[][][] = [[], [[3]], [[1, 2], [3]], [[1, 2, 3], [4, 5, 6]], [[0, 0], [0, 0]], [[1, -1], [0, 3]], [[1.5, 1], [0, 3]], [[NaN, 1], [0, 3]]]
type Score = (forecasts: number[], outcomes: number[]) => unknown
const SCORES: Score[] = [brierScore, logScore, brierDecomposition, calibrationLine, (f, o) => expectedCalibrationError(f, o, 10), (f, o) => reliabilityBins(f, o, 10)]
/** Something else where a list, or values by name, belong: from a caller that no compiler checked. */
const NOTHING = null as never
const NO_ROW = [[1, 2], null] as never
const NO_LIST = { length: 2 } as never
const refused: Record<string, readonly (() => unknown)[]> = {
  proportions: [wilsonInterval, clopperPearsonInterval, jeffreysInterval].flatMap(interval => [
    () => interval(0, 0, 0.95), () => interval(5, 4, 0.95), () => interval(-1, 4, 0.95), () => interval(1.5, 4, 0.95),
    () => interval(NaN, 4, 0.95), () => interval(1, Infinity, 0.95), () => interval(1, 4, 0), () => interval(1, 4, 1), () => interval(1, 4, 95), () => interval(1, 4, NaN),
  ]),
  'beta-binomial': [() => betaBinomialPredictive({ a: 0, b: 1 }, 3), () => betaBinomialPredictive({ a: 1, b: NaN }, 3), () => betaBinomialPredictive({ a: 1, b: 1 }, -1), () => betaBinomialPredictive({ a: 1, b: 1 }, 2.5)],
  'success run': [
    () => successRunLength(1, 0.9), () => successRunLength(0.9, 1), () => successRunLength(0.9, 0), () => successRunLength(0.9, 0.9, -1), () => successRunLength(NaN, 0.9),
    () => demonstratedPassRate(0, 0, 0.9), () => demonstratedPassRate(3, 4, 0.9), () => demonstratedPassRate(3, 0, 90), () => stationsToHitZone(0, 0.9), () => stationsToHitZone(1, 0.9), () => stationsToHitZone(0.2, 1),
  ],
  charts: [
    () => individualsChart([]), () => individualsChart([5]), () => individualsChart([5, NaN]), () => individualsChart([5, Infinity, 4]),
    () => ewma([], { lambda: 0.2, target: 0, sigma: 1, width: 3 }), () => ewma([1], { lambda: 0, target: 0, sigma: 1, width: 3 }), () => ewma([1], { lambda: 1.1, target: 0, sigma: 1, width: 3 }),
    () => ewma([1], { lambda: 0.2, target: NaN, sigma: 1, width: 3 }), () => ewma([1], { lambda: 0.2, target: 0, sigma: 0, width: 3 }), () => ewma([1], { lambda: 0.2, target: 0, sigma: 1, width: -3 }), () => ewma([NaN], { lambda: 0.2, target: 0, sigma: 1, width: 3 }),
    () => cusum([], { target: 0, k: 1, h: 5 }), () => cusum([1], { target: NaN, k: 1, h: 5 }), () => cusum([1], { target: 0, k: -1, h: 5 }), () => cusum([1], { target: 0, k: 1, h: 0 }), () => cusum([Infinity], { target: 0, k: 1, h: 5 }),
  ],
  'run lengths': [
    () => cusumRunLength({ k: -1, h: 5 }, 0), () => cusumRunLength({ k: 0.5, h: 0 }, 0), () => cusumRunLength({ k: 0.5, h: 40 }, 0), () => cusumRunLength({ k: 3, h: 12 }, 0), () => cusumRunLength({ k: 0.5, h: 5 }, NaN),
    () => ewmaRunLength({ lambda: 0.01, width: 3 }, 0), () => ewmaRunLength({ lambda: 0.2, width: 9 }, 0), () => ewmaRunLength({ lambda: 0.2, width: 3 }, Infinity),
  ],
  'competence scores': [
    () => competenceLimits({ acceptable: 0.4, unacceptable: 0.2 }), () => competenceLimits({ acceptable: 0.2, unacceptable: 0.2 }), () => competenceLimits({ acceptable: 0, unacceptable: 0.2 }), () => competenceLimits({ acceptable: 0.2, unacceptable: 0.4, alpha: 0.5 }),
    () => competenceCusum([2], { acceptable: 0.2, unacceptable: 0.4 }), () => learningCusum([NaN], { acceptable: 0.2, unacceptable: 0.4 }),
    () => biauLearningCusum([1], { acceptable: 0.6, margin: 0.4, limit: 1 }), () => biauLearningCusum([1], { acceptable: 0.2, margin: 0, limit: 1 }), () => biauLearningCusum([0.5], { acceptable: 0.2, margin: 0.2, limit: 1 }), () => biauLearningCusum([1], { acceptable: 0.2, margin: 0.2, limit: 0 }),
  ],
  capability: [
    () => capability({ mean: NaN, standardDeviation: 1 }, { lower: 0, upper: 1 }), () => capability({ mean: 0, standardDeviation: 0 }, { lower: 0, upper: 1 }), () => capability({ mean: 0, standardDeviation: 1 }, { lower: null, upper: null }),
    () => capability({ mean: 0, standardDeviation: 1 }, { lower: 2, upper: 1 }), () => capability({ mean: 0, standardDeviation: 1 }, { lower: Infinity, upper: null }),
    () => cpInterval(0, 30, 0.95), () => cpInterval(1, 1, 0.95), () => cpkInterval(NaN, 30, 0.95), () => cpkInterval(1, 30, 1.5), () => chiSquareQuantile(1, 5), () => chiSquareQuantile(0.5, 0),
  ],
  'tolerance factors': [
    () => howeToleranceFactor(1, 0.9, 0.95), () => howeToleranceFactor(10, 1, 0.95), () => howeToleranceFactor(10, 0.9, 0), () => natrellaToleranceFactor(1, 0.9, 0.95), () => natrellaToleranceFactor(10, 0.3, 0.95), () => natrellaToleranceFactor(2, 0.9, 0.99),
  ],
  'agreement of two': NOT_A_TABLE.flatMap(table => [() => cohensKappa(table), () => scottsPi(table), () => gwetAc1(table), () => percentAgreement(table), () => weightedKappa(table, 'linear')]).concat([
    () => cohensKappa([[9, 0], [0, 0]]), () => scottsPi([[9, 0], [0, 0]]), () => weightedKappa([[9, 0], [0, 0]], 'quadratic'),
  ]),
  'agreement of many': [
    () => fleissKappa([]), () => fleissKappa([[3]]), () => fleissKappa([[3, 0], [2, 0]]), () => fleissKappa([[1, 0], [0, 1]]), () => fleissKappa([[3, 0], [3, 0]]), () => fleissKappa([[3, 0], [1, 1, 1]]), () => fleissKappa([[3, -1], [1, 1]]),
    () => gwetAc1OfMany([]), () => gwetAc1OfMany([[1, 0], [0, 1]]), () => gwetAc1OfMany([[2, 0], [0, 1]]), () => gwetAc1OfMany([[2, 0.5], [0, 2]]),
    () => krippendorffAlpha([], 'nominal'), () => krippendorffAlpha([[1, 2], [1]], 'nominal'), () => krippendorffAlpha([[1, null], [null, 2]], 'nominal'), () => krippendorffAlpha([[1, 1], [1, 1]], 'interval'),
    () => krippendorffAlpha([[1, NaN], [1, 2]], 'interval'), () => krippendorffAlpha([[1, -2], [1, 2]], 'ratio'),
  ],
  'leaning one way': [() => signTest(-1, 3), () => signTest(1.5, 3), () => signTest(3, NaN), () => signTestSize(-1, 0.05), () => signTestSize(5.5, 0.05), () => signTestSize(10, 0), () => signTestSize(10, 5)],
  'limits of agreement': [
    () => limitsOfAgreement([], 0.95), () => limitsOfAgreement([[1, 2]], 0.95), () => limitsOfAgreement([[1], []], 0.95), () => limitsOfAgreement([[1], [NaN]], 0.95), () => limitsOfAgreement([[1], [2]], 95),
    () => limitsOfAgreement(NOTHING, 0.95), () => limitsOfAgreement(NO_ROW, 0.95),
  ],
  'gauge study': [
    () => gaugeStudy([]), () => gaugeStudy([[[1, 2], [1, 2]]]), () => gaugeStudy([[[1, 2]], [[1, 2]]]), () => gaugeStudy([[[1], [2]], [[1], [2]]]), () => gaugeStudy([[[1, 2], [1, 2]], [[1, 2]]]), () => gaugeStudy([[[1, 2], [1, 2]], [[1, 2], [1]]]),
    () => gaugeStudy([[[1, 2], [1, 2]], [[1, 2], [1, NaN]]]), () => gaugeStudy([[[0.1, 0.1], [0.1, 0.1]], [[0.1, 0.1], [0.1, 0.1]]]), () => gaugeStudy([[[1, 2], [1, 2]], [[1, 2], [1, 3]]], 2),
  ],
  survival: [
    () => kaplanMeier([], []), () => kaplanMeier([1, 2], [true]), () => kaplanMeier([-1], [true]), () => kaplanMeier([NaN], [true]), () => kaplanMeier([1], [2]), () => kaplanMeier([1], [true], 95),
    () => logRank({ durations: [], observed: [] }, { durations: [1], observed: [1] }), () => logRank({ durations: [1], observed: [0] }, { durations: [2], observed: [0] }), () => logRank({ durations: [1], observed: [0] }, { durations: [2], observed: [1] }),
  ],
  groups: [
    () => funnelLimit(1.1, 10, 0.5), () => funnelLimit(NaN, 10, 0.5), () => funnelLimit(0.5, 0, 0.5), () => funnelLimit(0.5, 10, 0), () => funnelLimits(0.5, 10, 1), () => funnelLimits(-0.1, 10, 0.95),
    () => betaBinomialShrinkage([]), () => betaBinomialShrinkage([{ passed: 0, n: 0 }]), () => betaBinomialShrinkage([{ passed: 3, n: 2 }]), () => betaBinomialShrinkage([{ passed: 1.5, n: 2 }]), () => betaBinomialShrinkage([{ passed: 1, n: 2 }], 1), () => fitGroupPrior([{ passed: -1, n: 2 }]),
  ],
  'no list': [NOTHING, NO_LIST].flatMap(none => [
    () => cohensKappa(none), () => scottsPi(none), () => gwetAc1(none), () => percentAgreement(none), () => weightedKappa(none, 'linear'), () => fleissKappa(none), () => gwetAc1OfMany(none),
    () => krippendorffAlpha(none, 'nominal'), () => gaugeStudy(none), () => kaplanMeier(none, [1]), () => kaplanMeier([1], none), () => individualsChart(none),
    () => cusum(none, { target: 0, k: 1, h: 5 }), () => ewma(none, { lambda: 0.2, target: 0, sigma: 1, width: 3 }), () => betaBinomialShrinkage(none), () => fitGroupPrior(none),
    () => competenceCusum(none, { acceptable: 0.2, unacceptable: 0.4 }), () => learningCusum(none, { acceptable: 0.2, unacceptable: 0.4 }), () => biauLearningCusum(none, { acceptable: 0.2, margin: 0.2, limit: 1 }),
    () => discountedBeta(none, { retention: 0.9, priorA: 1, priorB: 1 }), () => marginPredictive(none), () => coefficientOfVariation(none), () => pooledCoefficientOfVariation(none),
    () => fitLogisticLine(none, [0, 1]), () => fitLogisticLine([1, 2], none), () => meanInterval(none, 0.95), () => knowledgeTracing(none, { known: 0.2, learned: 0.1, slip: 0.1, guess: 0.2 }),
    ...SCORES.flatMap(score => [() => score(none, [1]), () => score([0.5], none)]),
  ]),
  'no row': [
    () => cohensKappa(NO_ROW), () => fleissKappa(NO_ROW), () => krippendorffAlpha(NO_ROW, 'nominal'), () => gaugeStudy(NO_ROW), () => gaugeStudy([NO_ROW, NO_ROW]),
    () => pooledCoefficientOfVariation(NO_ROW), () => betaBinomialShrinkage([{ passed: 1, n: 2 }, NOTHING]),
  ],
  'no values by name': [
    () => betaBinomialPredictive(NOTHING, 3), () => capability(NOTHING, { lower: 0, upper: 1 }), () => capability({ mean: 0, standardDeviation: 1 }, NOTHING), () => cusum([1], NOTHING), () => ewma([1], NOTHING),
    () => competenceLimits(NOTHING), () => competenceCusum([1], NOTHING), () => learningCusum([1], NOTHING), () => biauLearningCusum([1], NOTHING), () => discountedBeta([1], NOTHING),
    () => cusumRunLength(NOTHING, 0), () => ewmaRunLength(NOTHING, 0), () => knowledgeTracing([1], NOTHING), () => performanceFactors(NOTHING, { ease: 0, perPass: 0, perFail: 0 }),
    () => performanceFactors({ passes: 1, fails: 0 }, NOTHING), () => logRank(NOTHING, { durations: [1], observed: [1] }), () => logRank({ durations: [1], observed: [1] }, NOTHING),
  ],
  forecasts: SCORES.flatMap(score => [
    () => score([], []), () => score([0.5], []), () => score([0.5], [0, 1]), () => score([1.1], [1]), () => score([-0.1], [1]), () => score([NaN], [1]), () => score([0.5], [2]), () => score([0.5], [NaN]),
  ]).concat([
    () => expectedCalibrationError([0.5], [1], 0), () => expectedCalibrationError([0.5], [1], 2.5), () => reliabilityBins([0.5], [1], 10, 95),
    () => calibrationLine([0.4, 0.6], [1, 1]), () => calibrationLine([0.4, 0.4], [0, 1]), () => calibrationLine([0.2, 0.3, 0.7], [0, 0, 1]), () => calibrationLine([0.2, 0.3, 0.7], [1, 1, 0]), () => calibrationLine([0.2, 0.5, 0.5, 0.7], [0, 0, 1, 1]), () => calibrationLine([0.2, 0.5, 0.4], [0, 0, 1], 1),
    () => calibrationLine([0, 0.00001], [0, 1]), () => fitLogisticLine([1, 2], [0, 1]),
  ]),
  'the next coupon': [
    () => discountedBeta([1], { retention: 0, priorA: 1, priorB: 1 }), () => discountedBeta([1], { retention: 1.1, priorA: 1, priorB: 1 }), () => discountedBeta([1], { retention: 0.9, priorA: 0, priorB: 1 }), () => discountedBeta([3], { retention: 0.9, priorA: 1, priorB: 1 }), () => discountedBeta([1], { retention: 0.9, priorA: 1, priorB: 1, confidence: 80 }),
    () => marginPredictive([]), () => marginPredictive([1]), () => marginPredictive([1, NaN]), () => marginPredictive([0.1, 0.1, 0.1]), () => marginPredictive([1, 2, 3], 0.1), () => marginPredictive([1, 2], 1.5),
  ],
  'evenness of a bead': [
    () => coefficientOfVariation([6]), () => coefficientOfVariation([6, NaN]), () => coefficientOfVariation([6, -6]), () => coefficientOfVariation([0, 0]), () => pooledCoefficientOfVariation([]), () => pooledCoefficientOfVariation([[6, 7], [6]]),
    () => vangelInterval(0, 10, 0.95), () => vangelInterval(NaN, 10, 0.95), () => vangelInterval(0.1, 1, 0.95), () => vangelInterval(0.1, 10, 1),
  ],
}

describe.each(Object.entries(refused))('%s', (_, calls) => {
  test.each(calls.map(call => [String(call).replace(/^\(\) => (\(0, ?[\w.]+\.(\w+)\)|\w+)/, '$2'), call] as const))('%s', (_name, call) => {
    let answer: unknown = 'nothing thrown'
    try {
      answer = call()
    } catch (error) {
      expect(error).toBeInstanceOf(RangeError)
      const { message } = error as RangeError
      expect(message).toMatch(/^[A-Z0-9].{15,}\.$/)
      expect(message).not.toMatch(/undefined|\[object/)
      return
    }
    expect.fail(`answered ${JSON.stringify(answer)} where it should have refused`)
  })
})

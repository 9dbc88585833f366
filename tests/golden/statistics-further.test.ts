// Values from outside for the estimators that statistics-cases.json leaves out. The source stands above each check.
import { describe, expect, test } from 'vitest'
import { fleissKappa, gwetAc1OfMany } from '@/lib/statistics/agreement-of-many'
import { betaBinomialPredictive } from '@/lib/statistics/beta-binomial'
import { brierDecomposition, brierScore, calibrationLine, expectedCalibrationError, logScore } from '@/lib/statistics/calibration'
import { cpInterval, cpkInterval } from '@/lib/statistics/capability'
import { chiSquareQuantile } from '@/lib/statistics/chi-square-quantile'
import { cusum, ewma, individualsChart } from '@/lib/statistics/chart'
import { biauLearningCusum, competenceLimits } from '@/lib/statistics/competence-cusum'
import { funnelLimit } from '@/lib/statistics/funnel'
import { krippendorffAlpha } from '@/lib/statistics/krippendorff'
import { fitLogisticLine } from '@/lib/statistics/logistic-line'
import { clopperPearsonInterval, jeffreysInterval, wilsonInterval } from '@/lib/statistics/proportion'
import { cusumRunLength } from '@/lib/statistics/run-length'
import { betaBinomialShrinkage, fitGroupPrior } from '@/lib/statistics/shrinkage'
import { kaplanMeier } from '@/lib/statistics/survival'
import { howeToleranceFactor, natrellaToleranceFactor } from '@/lib/statistics/tolerance'
import { coefficientOfVariation, vangelInterval } from '@/lib/statistics/variation'
import { normalNoise, uniformNoise } from '../support/seeded-noise'

describe('proportions and forecasts at sizes far from everyday', () => {
  // SciPy 1.17.1: stats.beta.ppf, stats.binomtest(...).proportion_ci(method='wilson')
  test.each([
    [0, 5000, [0, 0.0007677019450571243], [0, 0.000737503801108105], null],
    [4999, 5000, [0.9988679109191603, 0.9999646942165605], [0.998886180619666, 0.999994936451223], [0.9990655497604077, 0.9999784196255199]],
    [2500, 5000, [0.48614628258320963, 0.5138537174167904], [0.4860443740009258, 0.5139556259990742], [0.48614431585647216, 0.5138556841435278]],
    [1, 1_000_000, [1.765245767453709e-7, 5.664911804311442e-6], [2.5317807663794178e-8, 5.571630655166939e-6], [1.0789766246541867e-7, 4.6741920467298275e-6]],
  ] as const)('%i of %i', (x, n, wilson, exact, jeffreys) => {
    const limits = ({ low, high }: { low: number; high: number }) => [low, high]
    for (const [actual, expected] of [
      [wilsonInterval(x, n, 0.95), wilson],
      [clopperPearsonInterval(x, n, 0.95), exact],
      ...(jeffreys ? [[jeffreysInterval(x, n, 0.95), jeffreys] as const] : []),
    ] as const) {
      limits(actual).forEach((limit, i) => expect(Math.abs(limit - (expected[i] ?? NaN))).toBeLessThan(1e-12 + 1e-9 * (expected[i] ?? 0)))
    }
  })

  test('the forecast keeps its digits when a and b are far apart', () => {
    // SciPy 1.17.1 stats.betabinom.pmf
    const many = betaBinomialPredictive({ a: 3000.5, b: 12.5 }, 40)
    expect(many[40]).toBeCloseTo(0.8477041176070, 10)
    expect((many[20] ?? 0) / 9.299934789771e-33).toBeCloseTo(1, 9)
    const rare = betaBinomialPredictive({ a: 0.5, b: 1e6 }, 2)
    expect((rare[1] ?? 0) / 9.999979994789e-7).toBeCloseTo(1, 8)
  })

  test('chi-square quantiles stay exact where the library underneath does not', () => {
    // SciPy 1.17.1 stats.chi2.ppf
    const table: [number, number, number][] = [
      [0.005, 1000, 888.5635231814683], [0.005, 1001, 889.5059399441448], [0.005, 2500, 2321.61911266333], [0.005, 100000, 98851.81093911004],
      [0.5, 1000, 999.333412403381], [0.5, 2500, 2499.333364947503], [0.975, 1001, 1090.574735898763], [0.975, 2500, 2640.4748532523568],
    ]
    for (const [p, v, expected] of table) expect(Math.abs(chiSquareQuantile(p, v) / expected - 1)).toBeLessThan(6e-10)
  })
})

describe('charts', () => {
  // Montgomery, Introduction to Statistical Quality Control, the 30 observations of its CUSUM and EWMA chapters (values from memory, the same in two
  // public copies): K 0.5 and H 5 signal at period 29 with 5.28;
  // lambda 0.1 and L 2.7 give steady limits 10.62 and 9.38 and begin 9.945, 9.7495.
  const observations = [9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08,
    9.37, 10.62, 10.31, 8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52]

  test("CUSUM of Montgomery's example", () => {
    const { up, down, signals } = cusum(observations, { target: 10, k: 0.5, h: 5 })
    const printed = [0, 0, 0, 1.16, 2.82, 2.5, 0.04, 1, 0, 0, 0, 0.97, 0.98, 0, 0, 0, 0.12, 0, 0, 0.34, 0.74, 0, 1.79, 2.79, 2.89, 3.47, 3.35, 4.47, 5.28, 5.3]
    expect(up).toHaveLength(printed.length)
    up.forEach((sum, i) => expect(sum).toBeCloseTo(printed[i] ?? NaN, 9))
    expect(down.slice(0, 4).map(sum => Math.round(sum * 100) / 100)).toEqual([0.05, 1.56, 1.77, 0])
    expect(signals).toEqual([28, 29])
  })

  test('the moving-range limit of the NIST flow rates', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.2: the ten flow rates, average moving range 1.8778, upper limit 3.267 times that
    const { movingRangeUpper, movingRanges, rangeSignals } = individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
    expect(movingRangeUpper).toBeCloseTo(6.1347, 4)
    expect(movingRanges.map(range => Math.round(range * 10) / 10)).toEqual([2, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5])
    expect(rangeSignals).toEqual([])
  })

  test("EWMA of Montgomery's example", () => {
    const { values, lower, upper, signals } = ewma(observations, { lambda: 0.1, target: 10, sigma: 1, width: 2.7 })
    expect(upper).toBeCloseTo(10.62, 2)
    expect(lower).toBeCloseTo(9.38, 2)
    expect(values[0]).toBeCloseTo(9.945, 9)
    expect(values[1]).toBeCloseTo(9.7495, 9)
    expect(signals).toEqual([28, 29]) // by hand: 10.65 and 10.63 lie above 10.62, 10.57 before them does not
    expect(values.slice(27).map(value => Math.round(value * 100) / 100)).toEqual([10.57, 10.65, 10.63])
  })

  test('CUSUM of the NIST handbook', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.3 (values from memory): target 325, k 0.3175, h 4.1959, first signal at group 14
    const groups = [324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325, 327.25,
      327.825, 328.5, 326.675, 327.775, 326.875, 328.35]
    const { up, signals } = cusum(groups, { target: 325, k: 0.3175, h: 4.1959 })
    expect(signals[0]).toBe(13)
    expect(signals).toEqual([13, 14, 15, 16, 17, 18, 19])
    expect(up[12]).toBeCloseTo(3.0075, 9)
    expect(up[13]).toBeCloseTo(4.94, 9)
  })

  test('the chart runs as long as its run length says', () => {
    // k 0.5, h 4: 168 values in control, 8.38 after a shift of one sigma (Montgomery); standard errors over 1,500 runs are about 4 and 0.1
    const noise = normalNoise(20261)
    const runLength = (shift: number) => {
      const values: number[] = []
      for (;;) {
        for (let i = 0; i < 25; i += 1) values.push(noise() + shift)
        const [first] = cusum(values, { target: 0, k: 0.5, h: 4 }).signals
        if (first !== undefined) return first + 1
      }
    }
    const average = (shift: number) => Array.from({ length: 1500 }, () => runLength(shift)).reduce((sum, length) => sum + length, 0) / 1500
    expect(Math.abs(average(0) - cusumRunLength({ k: 0.5, h: 4 }, 0))).toBeLessThan(15)
    expect(Math.abs(average(1) - cusumRunLength({ k: 0.5, h: 4 }, 1))).toBeLessThan(0.5)
  }, 30_000)

  test('straight successes that competence charts ask for', () => {
    // Computed from the formulas of Bolsin & Colson 2000, alpha = beta = 0.1
    const rows = [[0.05, 0.1, 41], [0.1, 0.2, 19], [0.15, 0.3, 12], [0.2, 0.4, 8]] as const
    for (const [acceptable, unacceptable, straight] of rows) {
      expect(competenceLimits({ acceptable, unacceptable }).straightSuccessesToAccept).toBe(straight)
    }
  })

  test('LC-CUSUM calls a poor student adequate sooner or later', () => {
    // p0 0.2, margin 0.2, a student who fails 40 %, within 60 coupons: .93, .80, .59, .33 by simulation; standard error over 3,000 runs is below .01
    const random = uniformNoise(7)
    const students = Array.from({ length: 3000 }, () => Array.from({ length: 60 }, () => random() >= 0.4))
    for (const [limit, share] of [[1.25, 0.93], [1.5, 0.8], [2, 0.59], [2.5, 0.33]] as const) {
      const called = students.filter(student => biauLearningCusum(student, { acceptable: 0.2, margin: 0.2, limit }).adequateAt.length > 0)
      expect(Math.abs(called.length / students.length - share)).toBeLessThan(0.035)
    }
  })
})

describe('capability and tolerance', () => {
  test('at 30 values a Cpk of 1 runs from .72 to 1.28', () => {
    // Formulas of Bissell 1990 and of the chi-square interval, with SciPy 1.17.1 quantiles
    expect(cpkInterval(1, 30, 0.95).low).toBeCloseTo(0.7163458551431208, 9)
    expect(cpkInterval(1, 30, 0.95).high).toBeCloseTo(1.2836541448568792, 9)
    expect(cpInterval(1, 30, 0.95).low).toBeCloseTo(0.7438731745668536, 9)
    expect(cpInterval(1, 30, 0.95).high).toBeCloseTo(1.2556394964206625, 9)
  })

  test.each([
    // 90 % content, 95 % confidence. Exact factors by R package tolerance 3.0.0; Natrella's approximation by its own formula.
    [5, 3.407, 3.381, 4.291],
    [10, 2.355, 2.321, 2.856],
    [20, 1.926, 1.91, 2.319],
    [30, 1.777, 1.767, 2.145],
  ])('tolerance factors at n = %i', (n, exactOneSided, natrella, exactTwoSided) => {
    expect(natrellaToleranceFactor(n, 0.9, 0.95)).toBeCloseTo(natrella, 3)
    expect(1 - natrellaToleranceFactor(n, 0.9, 0.95) / exactOneSided).toBeGreaterThan(0)
    expect(1 - natrellaToleranceFactor(n, 0.9, 0.95) / exactOneSided).toBeLessThan(0.015)
    expect(Math.abs(1 - howeToleranceFactor(n, 0.9, 0.95) / exactTwoSided)).toBeLessThan(0.007)
  })
})

describe('agreement with missing ratings', () => {
  // Krippendorff 2011, Computing Krippendorff's Alpha-Reliability, example C: four observers, twelve units.
  // Alpha .743, .815, .849, .797 printed there; AC1 .775 (.143) printed by R package irrCAC 1.0 for the same data.
  const _ = null
  const ratings = [
    [1, 2, 3, 3, 2, 1, 4, 1, 2, _, _, _],
    [1, 2, 3, 3, 2, 2, 4, 1, 2, 5, _, 3],
    [_, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, _],
    [1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, _],
  ]

  test.each([['nominal', 0.743], ['ordinal', 0.815], ['interval', 0.849], ['ratio', 0.797]] as const)('alpha, %s', (level, alpha) => {
    expect(krippendorffAlpha(ratings, level)).toBeCloseTo(alpha, 3)
  })

  test('AC1', () => {
    const counts = Array.from({ length: 12 }, (__, unit) => [1, 2, 3, 4, 5].map(k => ratings.filter(row => row[unit] === k).length))
    expect(gwetAc1OfMany(counts).value).toBeCloseTo(0.775, 3)
    expect(gwetAc1OfMany(counts).standardError).toBeCloseTo(0.143, 3)
    expect(() => fleissKappa(counts)).toThrow(/same number of graders/)
  })
})

describe('time to the first pass', () => {
  test('Kaplan-Meier limits at 90 %', () => {
    // 6-MP data of Freireich et al. 1963; SciPy 1.17.1 stats.ecdf(...).sf.confidence_interval(0.9, method='log-log')
    const events = [6, 6, 6, 7, 10, 13, 16, 22, 23]
    const censored = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]
    const { steps } = kaplanMeier([...events, ...censored], [...events.map(() => true), ...censored.map(() => false)], 0.9)
    const expected = [
      [0.857142857143, 0.671106780592, 0.94215940572], [0.806722689076, 0.612478543986, 0.910197832847], [0.752941176471, 0.551123381928, 0.873581243274],
      [0.690196078431, 0.478700309674, 0.82976106502], [0.627450980392, 0.412612768006, 0.782391224443], [0.53781512605, 0.311214080582, 0.719233187225],
      [0.448179271709, 0.226462088245, 0.64811358414],
    ]
    expect(steps).toHaveLength(expected.length)
    steps.forEach(({ survival, low, high }, i) => [survival, low, high].forEach((value, j) => expect(value).toBeCloseTo(expected[i]?.[j] ?? NaN, 9)))
  })
})

describe('groups', () => {
  // Tarone 1982; Gelman et al., Bayesian Data Analysis, 3rd ed., table 5.1: tumours in 70 groups of rats (read in public copies).
  // MLE 2.3048 and 14.0798 printed in the vignette of R package BayesGOF.
  const tumours = [...Array<number>(14).fill(0), ...Array<number>(8).fill(1), ...Array<number>(9).fill(2), 1, 5, 2, 5, 3, 2, 7, 7, 3, 3, 2, 9, 10,
    ...Array<number>(7).fill(4), 10, 4, 4, 4, 5, 11, 12, 5, 5, 6, 5, 6, 6, 6, 6, 16, 15, 15, 9]
  const rats = [...Array<number>(7).fill(20), 19, 19, 19, 19, 18, 18, 17, 20, 20, 20, 20, 19, 19, 18, 18, 25, 24, 23, ...Array<number>(6).fill(20),
    10, 49, 19, 46, 27, 17, 49, 47, 20, 20, 13, 48, 50, ...Array<number>(7).fill(20), 48, 19, 19, 19, 22, 46, 49, 20, 20, 23, 19, 22, 20, 20, 20, 52, 46, 47, 24]

  test('maximum likelihood on the rat tumours', () => {
    expect([tumours.length, rats.length]).toEqual([70, 70])
    const groups = tumours.map((passed, i) => ({ passed, n: rats[i] ?? 0 }))
    const { a, b, fitted } = fitGroupPrior(groups)
    expect(fitted).toBe(true)
    expect(a).toBeCloseTo(2.3048, 3)
    expect(b).toBeCloseTo(14.0798, 3)
    // 0/20 by SciPy 1.17.1 stats.beta.ppf on that prior: .0633 (.0099 to .1609)
    const first = betaBinomialShrinkage(groups)[0]
    expect(first?.mean).toBeCloseTo(0.06334503, 5)
    expect(first?.low).toBeCloseTo(0.00985517, 5)
    expect(first?.high).toBeCloseTo(0.16092799, 5)
  })

  test('six classes', () => {
    // SciPy 1.17.1: optimize.minimize of the beta-binomial likelihood, then stats.beta.ppf
    const passed = [9, 6, 10, 3, 7, 12]
    const groups = [10, 10, 12, 9, 8, 15].map((n, i) => ({ passed: passed[i] ?? 0, n }))
    const expected = [
      [0.8034531872246069, 0.6211402969702099, 0.9354734767919197], [0.6711631987253034, 0.4699268487780226, 0.8438350403162747],
      [0.7788596291369735, 0.5994557781085972, 0.9156751991834491], [0.5637319060137497, 0.35627807434454273, 0.7600406870673049],
      [0.7844424500193553, 0.5886403393596829, 0.9285062362898817], [0.7666988682788475, 0.5957023064592808, 0.9013261149003867],
    ]
    betaBinomialShrinkage(groups).forEach(({ mean, low, high }, i) =>
      [mean, low, high].forEach((value, j) => expect(value).toBeCloseTo(expected[i]?.[j] ?? NaN, 5)))
  })

  test('with three groups a + b is 10 round the overall rate', () => {
    // By hand: overall 15/20, so a 7.5 and b 2.5; the third class without results gets the overall rate
    const shrunk = betaBinomialShrinkage([{ passed: 9, n: 10 }, { passed: 6, n: 10 }, { passed: 0, n: 0 }])
    expect(shrunk.map(({ mean }) => mean)).toEqual([0.825, 0.675, 0.75])
  })

  test.each([
    // Method of Spiegelhalter 2005 at an overall rate of .74, to three decimals
    [10, 0.402, 0.949], [25, 0.537, 0.88], [50, 0.604, 0.848], [100, 0.647, 0.819],
  ])('funnel at n = %i', (n, low, high) => {
    expect(funnelLimit(0.74, n, 0.025)).toBeCloseTo(low, 3)
    expect(funnelLimit(0.74, n, 0.975)).toBeCloseTo(high, 3)
  })
})

describe('were we right', () => {
  const forecasts = [0.15, 0.25, 0.25, 0.35, 0.35, 0.45, 0.45, 0.55, 0.55, 0.55, 0.65, 0.65, 0.65, 0.75, 0.75, 0.75, 0.85, 0.85, 0.95, 0.95]
  const outcomes = [0, 0, 1, 0, 0, 1, 0, 1, 0, 1, 1, 1, 0, 1, 1, 0, 1, 1, 1, 0]

  test('scores of twenty forecasts', () => {
    // NumPy 2.4.6, from the definitions
    expect(brierScore(forecasts, outcomes)).toBeCloseTo(0.2205, 12)
    expect(logScore(forecasts, outcomes)).toBeCloseTo(0.6666848739800444, 12)
    expect(expectedCalibrationError(forecasts, outcomes, 10)).toBeCloseTo(0.165, 12)
    const parts = brierDecomposition(forecasts, outcomes)
    expect(parts.reliability).toBeCloseTo(0.0455, 12)
    expect(parts.resolution).toBeCloseTo(0.0725, 12)
    expect(parts.uncertainty).toBeCloseTo(0.2475, 12)
  })

  test('calibration line of twenty forecasts', () => {
    // NumPy 2.4.6, iteratively reweighted least squares; SciPy 1.17.1 normal quantile
    const line = calibrationLine(forecasts, outcomes)
    expect(line.intercept).toBeCloseTo(-0.034379863094735084, 9)
    expect(line.slope).toBeCloseTo(0.5526691630003606, 9)
    expect(line.slopeInterval.low).toBeCloseTo(-0.2803895991164167, 8)
    expect(line.slopeInterval.high).toBeCloseTo(1.385727925117138, 8)
    expect(line.interceptInterval.low).toBeCloseTo(-1.0092213685297657, 8)
    expect(line.interceptInterval.high).toBeCloseTo(0.9404616423402955, 8)
  })

  test('logistic regression on the shuttle O-rings', () => {
    // Dalal, Fowlkes & Hoadley 1989, J. Am. Stat. Assoc. 84:945 (23 flights, data from memory); intercept 15.0429 (7.3786), slope -0.2322 (0.1082)
    const temperature = [66, 70, 69, 68, 67, 72, 73, 70, 57, 63, 70, 78, 67, 53, 67, 75, 70, 81, 76, 79, 75, 76, 58]
    const distress = [0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1] as const
    const line = fitLogisticLine(temperature, distress)
    expect(line.intercept).toBeCloseTo(15.0429016, 6)
    expect(line.slope).toBeCloseTo(-0.232162744, 8)
    expect(line.interceptStandardError).toBeCloseTo(7.378636, 4)
    expect(line.slopeStandardError).toBeCloseTo(0.108236522, 6)
  })
})

describe('evenness of a bead', () => {
  test('coefficient of variation and its interval', () => {
    // Output of an R function after Vangel 1996, equation 16, printed on a public forum on bioequivalence (2018): CV .05263158, .03617573 to .09632067
    const values = [3.8, 3.9, 3.9, 3.8, 4.1, 4.0, 3.4, 3.6, 3.8, 3.7]
    const cv = coefficientOfVariation(values)
    expect(cv).toBeCloseTo(0.05263158, 8)
    expect(vangelInterval(cv, values.length, 0.95).low).toBeCloseTo(0.03617573, 8)
    expect(vangelInterval(cv, values.length, 0.95).high).toBeCloseTo(0.09632067, 8)
  })
})

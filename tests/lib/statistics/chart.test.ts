import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cusum, ewma, individualsChart } from '@/lib/statistics/chart'
import { biauLearningCusum, competenceCusum, competenceLimits, learningCusum } from '@/lib/statistics/competence-cusum'
import { cusumRunLength, ewmaRunLength } from '@/lib/statistics/run-length'
import { everyNumber } from '../../support/every-number'

fc.configureGlobal({ seed: 42, numRuns: 200 })

const readings = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(value => value + 0), { minLength: 2, maxLength: 60 })

describe('individuals chart', () => {
  test('a steady series signals nowhere, a jump where it jumps', () => {
    const steady = [5, 5.2, 4.9, 5.1, 5, 5.1, 4.9, 5]
    expect(individualsChart(steady)).toMatchObject({ signals: [], rangeSignals: [] })
    expect(individualsChart([...steady, 7.5, ...steady]).signals).toEqual([8])
    expect(individualsChart([...steady, 7.5, ...steady]).rangeSignals).toEqual([7, 8])
  })

  test('limits lie round the mean, whatever the series', () => {
    fc.assert(fc.property(readings, values => {
      const chart = individualsChart(values)
      expect(everyNumber(chart).every(Number.isFinite)).toBe(true)
      expect(chart.lower).toBeLessThanOrEqual(chart.mean)
      expect(chart.upper).toBeGreaterThanOrEqual(chart.mean)
    }))
  })

  test('equal values have limits on the mean and no signal', () => {
    expect(individualsChart([0.1, 0.1, 0.1])).toMatchObject({ averageMovingRange: 0, signals: [], rangeSignals: [] })
  })
})

describe('EWMA', () => {
  test('stays between the extremes of target and values, and lambda 1 is the values themselves', () => {
    fc.assert(fc.property(readings, fc.double({ min: 0.01, max: 1, noNaN: true }), (values, lambda) => {
      const chart = ewma(values, { lambda, target: 0, sigma: 1, width: 3 })
      const [least, most] = [Math.min(0, ...values), Math.max(0, ...values)]
      for (const value of chart.values) {
        expect(value).toBeGreaterThanOrEqual(least - 1e-6)
        expect(value).toBeLessThanOrEqual(most + 1e-6)
      }
      expect(ewma(values, { lambda: 1, target: 0, sigma: 1, width: 3 }).values).toEqual(values)
    }))
  })

  test('a value on the limit is no signal, one beyond it is', () => {
    const settings = { lambda: 1, target: 0, sigma: 1, width: 3 }
    expect(ewma([3, -3, 3.001, -3.001], settings).signals).toEqual([2, 3])
  })
})

describe('CUSUM', () => {
  test('never falls below 0, and mirrors when values are turned round the target', () => {
    fc.assert(fc.property(readings, fc.double({ min: 0, max: 100, noNaN: true }), (values, k) => {
      const chart = cusum(values, { target: 0, k, h: 5 })
      expect(Math.min(...chart.up, ...chart.down)).toBeGreaterThanOrEqual(0)
      const mirrored = cusum(values.map(value => 0 - value), { target: 0, k, h: 5 })
      expect(mirrored).toEqual({ up: chart.down, down: chart.up, signals: chart.signals })
    }))
  })

  test('a sum on h is no signal, one beyond it is, on either side', () => {
    expect(cusum([6, 5], { target: 0, k: 1, h: 5 }).signals).toEqual([1])
    expect(cusum([-6, -5], { target: 0, k: 1, h: 5 }).signals).toEqual([1])
  })
})

describe('run lengths', () => {
  test('lambda 1 is a plain three-sigma chart: 370 values between false alarms', () => {
    // 1/(2·Φ(−3)) = 370.398, a textbook value
    expect(ewmaRunLength({ lambda: 1, width: 3 }, 0)).toBeCloseTo(370.398, 2)
  })

  test('shrink as the shift grows and do not care for its sign', () => {
    const shifts = [0, 0.5, 1, 2, 4]
    for (const run of [(shift: number) => cusumRunLength({ k: 0.5, h: 5 }, shift), (shift: number) => ewmaRunLength({ lambda: 0.2, width: 2.962 }, shift)]) {
      const lengths = shifts.map(run)
      expect([...lengths].sort((a, b) => b - a)).toEqual(lengths)
      shifts.forEach((shift, i) => expect(run(-shift)).toBeCloseTo(lengths[i] ?? NaN, 6))
    }
  })
})

describe('competence scores', () => {
  const rates = { acceptable: 0.2, unacceptable: 0.4 }
  const series = fc.array(fc.boolean(), { maxLength: 80 })

  test('the free score counts successes and failures and nothing else', () => {
    fc.assert(fc.property(series, successes => {
      const { credit } = competenceLimits(rates)
      const failures = successes.filter(success => !success).length
      expect(competenceCusum(successes, rates).at(-1) ?? 0).toBeCloseTo(failures - successes.length * credit, 9)
    }))
  })

  test('the learning score never climbs above 0 and never lies above the free score', () => {
    fc.assert(fc.property(series, successes => {
      const free = competenceCusum(successes, rates)
      learningCusum(successes, rates).forEach((score, i) => {
        expect(score).toBeLessThanOrEqual(0)
        expect(score).toBeLessThanOrEqual((free[i] ?? 0) + 1e-9)
      })
    }))
  })

  test('exactly the promised straight successes reach the limit', () => {
    const { accept, straightSuccessesToAccept } = competenceLimits(rates)
    const scores = competenceCusum(Array.from({ length: straightSuccessesToAccept }, () => true), rates)
    expect(scores.findIndex(score => score <= -accept)).toBe(straightSuccessesToAccept - 1)
  })

  test('the LC score never falls below 0', () => {
    fc.assert(fc.property(series, successes => {
      const { scores } = biauLearningCusum(successes, { acceptable: 0.1, margin: 0.2, limit: 1.25 })
      expect(Math.min(0, ...scores)).toBe(0)
    }))
  })
})

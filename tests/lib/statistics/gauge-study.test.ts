import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gaugeStudy } from '@/lib/statistics/gauge-study'
import { everyNumber } from '../../support/every-number'

fc.configureGlobal({ seed: 44, numRuns: 200 })

const reading = fc.integer({ min: 0, max: 400 }).map(steps => steps / 10)
const studies = fc.tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 3 }), fc.integer({ min: 2, max: 3 }))
  .chain(([parts, graders, trials]) => fc.array(
    fc.array(fc.array(reading, { minLength: trials, maxLength: trials }), { minLength: graders, maxLength: graders }),
    { minLength: parts, maxLength: parts },
  ))
  .filter(readings => new Set(readings.flat(2)).size > 1)

describe('gauge study', () => {
  test('sums of squares add up, variances are 0 or more, percentages at most 100', () => {
    fc.assert(fc.property(studies, readings => {
      const study = gaugeStudy(readings)
      const all = readings.flat(2)
      const mean = all.reduce((sum, value) => sum + value, 0) / all.length
      const total = all.reduce((sum, value) => sum + (value - mean) ** 2, 0)
      expect(Object.values(study.sumsOfSquares).reduce((sum, part) => sum + part, 0)).toBeCloseTo(total, 6)
      expect(everyNumber(study).every(value => Number.isFinite(value) && value >= 0)).toBe(true)
      expect(study.percentOfStudy).toBeLessThanOrEqual(100)
      expect(study.interaction.p).toBeLessThanOrEqual(1)
    }))
  })

  test('the order of parts, graders and trials does not matter, nor does the origin', () => {
    fc.assert(fc.property(studies, readings => {
      const { percentOfStudy } = gaugeStudy(readings, 1)
      expect(gaugeStudy([...readings].reverse(), 1).percentOfStudy).toBeCloseTo(percentOfStudy, 6)
      expect(gaugeStudy(readings.map(part => [...part].reverse()), 1).percentOfStudy).toBeCloseTo(percentOfStudy, 6)
      expect(gaugeStudy(readings.map(part => part.map(cell => [...cell].reverse())), 1).percentOfStudy).toBeCloseTo(percentOfStudy, 6)
      expect(gaugeStudy(readings.map(part => part.map(cell => cell.map(value => value + 1024))), 1).percentOfStudy).toBeCloseTo(percentOfStudy, 4)
    }))
  })

  test('a gauge without any error has no number of categories', () => {
    const study = gaugeStudy([[[0.1, 0.1, 0.1], [0.1, 0.1, 0.1]], [[0.3, 0.3, 0.3], [0.3, 0.3, 0.3]]])
    expect(study).toMatchObject({ percentOfStudy: 0, distinctCategories: null, interaction: { f: null, p: 1, pooled: true } })
    expect(study.variances.part).toBeCloseTo(0.02, 12)
  })

  test('graders who differ by the same amount everywhere are reproducibility, not repeatability', () => {
    // By hand: graders 1 apart, so MS_o 1·(2·2·2)/4·… = 2·… gives a grader variance of ½; parts 10 apart give 50
    const { variances } = gaugeStudy([[[0, 0], [1, 1]], [[10, 10], [11, 11]]])
    expect(variances.repeatability).toBe(0)
    expect(variances.grader).toBeCloseTo(0.5, 12)
    expect(variances.part).toBeCloseTo(50, 12)
  })

  test('graders who differ on one part only show as interaction', () => {
    const study = gaugeStudy([[[5, 5.01], [5, 5.01]], [[7, 7.01], [9, 9.01]], [[6, 6.01], [6, 6.01]]])
    expect(study.interaction.pooled).toBe(false)
    expect(study.interaction.p).toBeLessThan(0.001)
    expect(study.variances.interaction).toBeGreaterThan(0.5)
  })
})

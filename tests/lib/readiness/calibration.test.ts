import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calibrate, clippedLogit } from '@/lib/readiness/calibrate'
import { fitCalibration, levelFor, type ForecastResult } from '@/lib/readiness/calibration'

const results = (n: number, forecast: (i: number) => number, passed: (i: number) => boolean): ForecastResult[] =>
  Array.from({ length: n }, (_, i) => ({ forecast: forecast(i), passed: passed(i) }))

/** The target written out, and its top found by trying a fine mesh: no derivative in sight. */
function topByMesh(cases: readonly ForecastResult[], sdAlpha: number, sdBeta: number): { alpha: number; beta: number } {
  const height = (alpha: number, beta: number) =>
    cases.reduce((sum, { forecast, passed }) => {
      const p = 1 / (1 + Math.exp(-(alpha + beta * Math.log(forecast / (1 - forecast)))))
      return sum + Math.log(passed ? p : 1 - p)
    }, -((alpha / sdAlpha) ** 2) / 2 - ((beta - 1) / sdBeta) ** 2 / 2)
  let best = { alpha: 0, beta: 1 }
  for (let reach = 1; reach > 1e-5; reach /= 4) {
    const { alpha: a0, beta: b0 } = best
    for (let i = -8; i <= 8; i++) {
      for (let j = -8; j <= 8; j++) {
        const [alpha, beta] = [a0 + (i * reach) / 8, b0 + (j * reach) / 8]
        if (height(alpha, beta) > height(best.alpha, best.beta)) best = { alpha, beta }
      }
    }
  }
  return best
}

describe('the fitted calibration', () => {
  it('without results leaves forecasts as they are', () => expect(fitCalibration([])).toEqual({ alpha: 0, beta: 1 }))

  it.each([
    ['40 results, priors 0.25 and 0.1', 40, 0.25, 0.1],
    ['99 results, priors 0.25 and 0.1', 99, 0.25, 0.1],
    ['100 results, priors 0.5 and 0.2', 100, 0.5, 0.2],
    ['300 results, priors 0.5 and 0.2', 300, 0.5, 0.2],
  ])('is the top of the posterior: %s', (_, n, sdAlpha, sdBeta) => {
    const cases = results(n, (i) => 0.3 + 0.6 * ((i * 7) % 10) / 10, (i) => (i * 13) % 10 < 5)
    const top = topByMesh(cases, sdAlpha, sdBeta)
    const fit = fitCalibration(cases)
    expect(fit.alpha).toBeCloseTo(top.alpha, 3)
    expect(fit.beta).toBeCloseTo(top.beta, 3)
  })

  it('takes harsh results as they are once there are many', () => {
    const cases = results(4000, () => 0.8, (i) => i % 2 === 0)
    expect(calibrate(0.8, fitCalibration(cases))).toBeCloseTo(0.5, 1)
  })

  it('never turns better into worse, even when the results do', () => {
    const perverse = results(3000, (i) => (i % 2 === 0 ? 0.9 : 0.1), (i) => i % 2 === 1)
    expect(fitCalibration(perverse).beta).toBe(0)
  })

  it('keeps order and stays within 0 to 1', () => {
    fc.assert(fc.property(
      fc.array(fc.record({ forecast: fc.double({ min: 0, max: 1, noNaN: true }), passed: fc.boolean() }), { maxLength: 150 }),
      (cases) => {
        const fit = fitCalibration(cases)
        const shown = [0, 0.2, 0.5, 0.8, 1].map((p) => calibrate(p, fit))
        shown.forEach((p, i) => {
          expect(p).toBeGreaterThanOrEqual(shown[i - 1] ?? 0)
          expect(p).toBeLessThanOrEqual(1)
        })
      },
    ))
  })

  it('holds logits within 1e-4 of certainty', () => {
    expect(clippedLogit(0)).toBeCloseTo(Math.log(1e-4 / (1 - 1e-4)), 12)
    expect(clippedLogit(1)).toBeCloseTo(-clippedLogit(0), 9)
  })

  it('refuses a forecast that is no chance', () => {
    expect(() => fitCalibration([{ forecast: NaN, passed: true }])).toThrow(RangeError)
    expect(() => fitCalibration([{ forecast: -0.1, passed: true }])).toThrow(RangeError)
  })
})

it('the limits are 95 % ones until 100 results', () => {
  expect([0, 99, 100, 5000].map(levelFor)).toEqual([0.95, 0.95, 0.8, 0.8])
})

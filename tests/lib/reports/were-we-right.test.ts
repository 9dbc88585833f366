import { describe, expect, it } from 'vitest'
import { drawReliability } from '@/lib/reports/reliability-diagram'
import { LEAST_RESULTS, wereWeRight, type ForecastResult, type JudgedForecasts } from '@/lib/reports/were-we-right'

/** `n` tests given this chance, of which the first `passed` passed. */
const tests = (n: number, forecast: number | null, passed: number): ForecastResult[] => Array.from({ length: n }, (_, i) => ({ forecast, passed: i < passed }))

function judged(results: readonly ForecastResult[]): JudgedForecasts {
  const found = wereWeRight(results)
  if (found.kind !== 'judged') throw new Error('There should be enough results.')
  return found
}

describe('were we right?', () => {
  it('says nothing of the forecasts below twenty results', () => {
    expect(wereWeRight(tests(LEAST_RESULTS - 1, 0.7, 12))).toEqual({ kind: 'few', n: 19, passed: 12, least: 20, withoutForecast: 0 })
    expect(wereWeRight(tests(LEAST_RESULTS, 0.7, 12)).kind).toBe('judged')
    expect(wereWeRight([])).toEqual({ kind: 'few', n: 0, passed: 0, least: 20, withoutForecast: 0 })
  })

  it('leaves out tests without a forecast, and counts them', () => {
    expect(wereWeRight([...tests(19, 0.7, 12), ...tests(5, null, 5)])).toMatchObject({ kind: 'few', n: 19, withoutForecast: 5 })
  })

  it('sets the Brier score beside that of always guessing the pass rate', () => {
    // By hand: forecasts 0.8 with 8 of 10 passed and 0.2 with 2 of 10: mean (f − o)² is 0.8·0.04 + 0.2·0.64 = 0.16; the pass rate is 0.5, so guessing it scores 0.25.
    expect(judged([...tests(10, 0.8, 8), ...tests(10, 0.2, 2)])).toMatchObject({
      n: 20, passed: 10, meanForecast: expect.closeTo(0.5, 12) as number, brier: expect.closeTo(0.16, 12) as number, brierOfPassRate: 0.25,
      middleHalf: { low: 0.2, high: 0.8 },
    })
  })

  it('finds nothing wrong with forecasts that came true', () => {
    const found = judged([...tests(20, 0.8, 16), ...tests(20, 0.5, 10), ...tests(20, 0.2, 4)])
    expect(found.line).toMatchObject({ slope: expect.closeTo(1, 6) as number, intercept: expect.closeTo(0, 6) as number })
    expect(found.consistent).toBe(true)
  })

  it('finds forecasts that were far too hopeful', () => {
    const found = judged([...tests(60, 0.9, 24), ...tests(60, 0.7, 12)])
    expect(found.consistent).toBe(false)
    expect(found.brier).toBeGreaterThan(found.brierOfPassRate)
  })

  it('lives without a line where none can be fitted', () => {
    expect(judged(tests(25, 0.7, 25))).toMatchObject({ line: null, consistent: null, brierOfPassRate: 0 })
    expect(judged(tests(25, 0.7, 15))).toMatchObject({ line: null, consistent: null })
  })

  it('takes coarse bins and a warning below a hundred results, fine ones from there', () => {
    const few = judged(tests(99, 0.65, 60))
    expect(few).toMatchObject({ stillFew: true, bins: [{ from: 0.6, to: 0.8, count: 99 }] })
    expect(judged(tests(100, 0.65, 60))).toMatchObject({ stillFew: false, bins: [{ from: 0.6, to: 0.7, count: 100 }] })
  })

  it('refuses a forecast that is no chance', () => {
    expect(() => wereWeRight(tests(20, 1.2, 10))).toThrow(RangeError)
  })

  it('draws each bin at what was said and what happened, and the diagonal corner to corner', () => {
    const frame = { width: 120, height: 120, left: 10, right: 110, top: 10, bottom: 110 }
    const [low, high] = drawReliability(judged([...tests(10, 0.8, 8), ...tests(10, 0.2, 2)]).bins, frame).bins
    expect(low).toMatchObject({ count: 10, x: 30, y: 90 })
    expect(high).toMatchObject({ count: 10, x: 90, y: 30 })
    expect(high?.yHigh).toBeLessThan(30)
    expect(high?.yLow).toBeGreaterThan(30)
    expect(drawReliability([], frame).diagonal).toBe('M10,110L110,10')
  })
})

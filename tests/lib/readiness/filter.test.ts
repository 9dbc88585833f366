import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readinessFilter, type PracticeCoupon } from '@/lib/readiness/filter'
import { SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'

const coupon = (day: number, over: Partial<PracticeCoupon> = {}): PracticeCoupon => ({ day, accepted: true, ...over })

function expectWhole({ probability, low, high }: { probability: number; low: number; high: number }): void {
  for (const value of [probability, low, high]) {
    expect(value).toBeGreaterThanOrEqual(0)
    expect(value).toBeLessThanOrEqual(1)
  }
  expect(low).toBeLessThanOrEqual(probability)
  expect(high).toBeGreaterThanOrEqual(probability)
}

/** Any series a class could produce, wild margins included. */
const anySeries = fc.array(
  fc.record({
    gap: fc.integer({ min: 0, max: 60 }),
    accepted: fc.boolean(),
    worstMargin: fc.option(fc.oneof(fc.double({ min: -4, max: 3, noNaN: true }), fc.constantFrom(-1e6, 1e6)), { nil: undefined }),
    attributesGood: fc.option(fc.boolean(), { nil: undefined }),
    weight: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
  }),
  { maxLength: 30 },
).map((steps) => {
  let day = 0
  return steps.map(({ gap, accepted, worstMargin, attributesGood, weight }): PracticeCoupon => ({
    day: (day += gap),
    accepted,
    ...(worstMargin === undefined ? {} : { worstMargin }),
    ...(attributesGood === undefined ? {} : { attributesGood }),
    ...(weight === undefined ? {} : { weight }),
  }))
})

describe('whatever the series', () => {
  it('the chance and its limits lie in order within 0 to 1', () => {
    fc.assert(fc.property(anySeries, fc.integer({ min: 0, max: 400 }), fc.constantFrom(0.01, 0.5, 0.8, 0.95), (series, wait, level) => {
      expectWhole(readinessFilter(series, (series.at(-1)?.day ?? 0) + wait, { level }))
    }))
  })

  it('a calibration, however steep, keeps them there', () => {
    fc.assert(fc.property(anySeries, fc.double({ min: -20, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), (series, alpha, beta) => {
      expectWhole(readinessFilter(series, 3000, { calibration: { alpha, beta } }))
    }))
  })

  it('the answer depends on nothing but the arguments, and leaves them alone', () => {
    fc.assert(fc.property(anySeries, (series) => {
      const before = JSON.stringify(series)
      expect(readinessFilter(series, 3000)).toEqual(readinessFilter(structuredClone(series), 3000))
      expect(JSON.stringify(series)).toBe(before)
    }))
  })

  it('moving the origin of the days changes nothing', () => {
    fc.assert(fc.property(anySeries, fc.integer({ min: -20_000, max: 20_000 }), (series, shift) => {
      const moved = series.map((c) => ({ ...c, day: c.day + shift }))
      expect(readinessFilter(moved, 2000 + shift)).toEqual(readinessFilter(series, 2000))
    }))
  })
})

describe('better work', () => {
  it('a pass in place of a fail never lowers the chance, where only verdicts are known', () => {
    fc.assert(fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 20 }), fc.nat(), (verdicts, pick) => {
      const at = pick % verdicts.length
      const series = (changed: boolean) => verdicts.map((accepted, day) => coupon(day, { accepted: day === at ? changed : accepted }))
      expect(readinessFilter(series(true), 30).probability).toBeGreaterThanOrEqual(readinessFilter(series(false), 30).probability)
    }))
  })

  it('yes/no rules that passed in place of failed never lower the chance', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -2, max: 1.5, noNaN: true }), { minLength: 1, maxLength: 20 }), fc.nat(), (margins, pick) => {
      const at = pick % margins.length
      const series = (good: boolean) => margins.map((worstMargin, day) => coupon(day, { worstMargin, attributesGood: day === at ? good : true }))
      expect(readinessFilter(series(true), 30).probability).toBeGreaterThanOrEqual(readinessFilter(series(false), 30).probability)
    }))
  })

  it('a whole series with better margins never lowers the chance, up to half a bead’s spread on coupons that resemble each other', () => {
    fc.assert(fc.property(
      fc.double({ min: -1.6, max: 1, noNaN: true }),
      fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 5, maxLength: 25 }),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      (level, wiggles, better) => {
        const series = (lift: number) => wiggles.map((w, day) => coupon(day, { worstMargin: level + w + lift, attributesGood: true }))
        expect(readinessFilter(series(better), 30).probability).toBeGreaterThanOrEqual(readinessFilter(series(0), 30).probability - 1e-12)
      },
    ))
  })

  it('a single margin far from everything else is let go of: this is the t distribution, and known', () => {
    const first = (worstMargin: number) => readinessFilter([coupon(0, { worstMargin })], 1).probability
    expect(first(0.6)).toBeGreaterThan(first(0))
    expect(first(1e6)).toBeLessThan(first(1.2))
  })
})

describe('time', () => {
  it('a long gap lowers a good student’s chance and widens the limits', () => {
    const series = Array.from({ length: 12 }, (_, day) => coupon(day, { worstMargin: 0.8, attributesGood: true }))
    const soon = readinessFilter(series, 12)
    const late = readinessFilter(series, 132)
    expect(late.probability).toBeLessThan(soon.probability)
    expect(late.high - late.low).toBeGreaterThan(soon.high - soon.low)
  })

  it('no coupons is the prior, whatever the test day', () => {
    expect(readinessFilter([], 0)).toEqual(readinessFilter([], 5000))
  })
})

describe('weight', () => {
  const series = [coupon(0, { worstMargin: -0.5 }), coupon(1, { worstMargin: 0.9 })]
  const withWeight = (weight: number) => readinessFilter([series[0]!, { ...series[1]!, weight }], 2).probability

  it('1 is the same as none', () => expect(withWeight(1)).toBe(readinessFilter(series, 2).probability))
  it('less weight moves the chance less', () => {
    expect(withWeight(0.5)).toBeLessThan(withWeight(1))
    expect(withWeight(0.5)).toBeGreaterThan(withWeight(0))
  })
  it('0 still counts as practice: time and learning pass', () => {
    expect(withWeight(0)).not.toBe(readinessFilter([series[0]!], 2).probability)
  })
})

describe('bad input', () => {
  it.each<[string, () => unknown]>([
    ['coupons out of order', () => readinessFilter([coupon(3), coupon(2)], 5)],
    ['a test before the last coupon', () => readinessFilter([coupon(3)], 2)],
    ['a day that is no number', () => readinessFilter([coupon(NaN)], 5)],
    ['a day without end', () => readinessFilter([coupon(0)], Infinity)],
    ['a gap over a century', () => readinessFilter([coupon(0)], 1e6)],
    ['a margin that is no number', () => readinessFilter([coupon(0, { worstMargin: NaN })], 5)],
    ['an infinite margin', () => readinessFilter([coupon(0, { worstMargin: Infinity })], 5)],
    ['a weight above 1', () => readinessFilter([coupon(0, { weight: 1.1 })], 5)],
    ['a level of 1', () => readinessFilter([], 0, { level: 1 })],
    ['a level that is no number', () => readinessFilter([], 0, { level: NaN })],
    ['a calibration that is no number', () => readinessFilter([], 0, { calibration: { alpha: NaN, beta: 1 } })],
    ['a calibration that turns better into worse', () => readinessFilter([], 0, { calibration: { alpha: 0, beta: -1 } })],
    ['a parameter out of range', () => readinessFilter([], 0, { parameters: { ...SHIPPED_PARAMETERS, s: 0 } })],
  ])('%s throws', (_, call) => expect(call).toThrow(RangeError))

  it.each<[string, Partial<PracticeCoupon>]>([
    ['all passes', {}],
    ['all fails', { accepted: false }],
    ['all margins a million inside', { worstMargin: 1e6, attributesGood: true }],
    ['all margins a million outside', { worstMargin: -1e6, attributesGood: false }],
    ['all margins as large as a number can be', { worstMargin: Number.MAX_VALUE }],
  ])('5,000 coupons, %s, get an answer', (_, over) => {
    expectWhole(readinessFilter(Array.from({ length: 5000 }, (_, day) => coupon(day, over)), 5000))
  })

  it('all passes end high and all fails end low', () => {
    const ends = (accepted: boolean) => readinessFilter(Array.from({ length: 60 }, (_, day) => coupon(day, { accepted })), 61).probability
    expect(ends(true)).toBeGreaterThan(0.9)
    expect(ends(false)).toBeLessThan(0.15)
  })
})

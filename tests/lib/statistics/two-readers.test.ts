// What compares two people who read the same coupons: pi for readers who change, the sign test, limits of agreement.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fleissKappa } from '@/lib/statistics/agreement-of-many'
import { limitsOfAgreement } from '@/lib/statistics/limits-of-agreement'
import { meanInterval } from '@/lib/statistics/mean-interval'
import { scottsPi } from '@/lib/statistics/scotts-pi'
import { signTest, signTestSize } from '@/lib/statistics/sign-test'

fc.configureGlobal({ seed: 47, numRuns: 200 })

describe('Scott’s pi', () => {
  it('agrees with the overview that comes with the R package irrCAC 1.0: scott2.table(cont3x3abstractors)', () => {
    const { value, standardError } = scottsPi([[13, 0, 0], [0, 20, 7], [0, 4, 56]])
    expect(value).toBeCloseTo(0.7962397, 7)
    expect(standardError).toBeCloseTo(0.05905473, 8)
  })

  const tables = fc.array(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 2 }), { minLength: 2, maxLength: 2 })
    .filter(([[a = 0, b = 0] = [], [c = 0, d = 0] = []]) => (a > 0 ? 1 : 0) + (d > 0 ? 1 : 0) + (b + c > 0 ? 2 : 0) > 1)
  it('is Fleiss’ kappa of the same coupons, and does not care who is called the first', () => {
    fc.assert(fc.property(tables, (table) => {
      const counts = table.flatMap((row, i) => row.flatMap((count, j) => Array.from({ length: count }, () => [0, 1].map((k) => Number(i === k) + Number(j === k)))))
      expect(scottsPi(table).value).toBeCloseTo(fleissKappa(counts).value, 10)
      expect(scottsPi(table.map((_, j) => table.map((row) => row[j] ?? 0)))).toEqual(scottsPi(table))
    }))
  })
})

describe('the sign test', () => {
  // By hand from Pascal's triangle: 2 · (1 + 10)/1024, 2 · 1/32, 2 · (1 + 11 + 55)/2048 …
  it.each([[9, 1, 22 / 1024], [5, 0, 2 / 32], [6, 0, 2 / 64], [2, 9, 134 / 2048], [3, 3, 1], [0, 0, 1], [1, 0, 1]])('%i against %i', (one, other, p) => expect(signTest(one, other)).toBeCloseTo(p, 12))

  it('calls a fair split uneven as often as its attainable chances below the level add up to', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 60 }), fc.double({ min: 0.001, max: 0.3, noNaN: true }), (n, level) => {
      let [sum, ways] = [0, 1]
      for (let k = 0; k <= n; k += 1) {
        if (signTest(k, n - k) <= level) sum += ways / 2 ** n
        ways = (ways * (n - k)) / (k + 1)
      }
      expect(signTestSize(n, level)).toBeCloseTo(sum, 10)
      expect(signTestSize(n, level)).toBeLessThanOrEqual(level)
    }))
  })
  it('cannot say anything of five coupons at 5 %', () => {
    expect(signTestSize(5, 0.05)).toBe(0)
    expect(signTestSize(6, 0.05)).toBeCloseTo(2 / 64, 12)
  })
})

describe('limits of agreement', () => {
  // Bland & Altman 1986, Lancet 327:307, table: peak flow of 17 people by a large and a small meter, first readings. The data from memory;
  // they give the printed mean of −2.1, standard deviation of 38.8 and 95 % interval of −22.1 to 17.8 l/min.
  const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
  const small = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
  const apart = large.map((reading, i) => [reading - (small[i] ?? Number.NaN)])
  it('of the paper that made them known', () => {
    const { bias, standardDeviation, limits } = limitsOfAgreement(apart, 0.95)
    expect(bias.mean).toBeCloseTo(-2.1, 1)
    expect(standardDeviation).toBeCloseTo(38.8, 1)
    expect(Math.abs(bias.low - -22.1)).toBeLessThan(0.06)
    expect(Math.abs(bias.high - 17.8)).toBeLessThan(0.06)
    // They took 2 standard deviations for 1.96, of the rounded figures: −79.7 to 75.5.
    expect(Math.abs(bias.mean - (2 / 1.959964) * (bias.mean - limits.low) - -79.7)).toBeLessThan(0.1)
    expect(Math.abs(bias.mean + (2 / 1.959964) * (limits.high - bias.mean) - 75.5)).toBeLessThan(0.1)
  })

  it('count a coupon of many stations once in the bias, and add the spread within coupons to that between them', () => {
    // By hand: means 2 and 4; within (1 + 1 + 1 + 1)/2 = 2; between 2 · (1 + 1)/1 = 4; between coupons (4 − 2)/2 = 1; √(2 + 1).
    const { bias, standardDeviation } = limitsOfAgreement([[1, 3], [3, 5]], 0.95)
    expect(bias.mean).toBe(3)
    expect(standardDeviation).toBeCloseTo(Math.sqrt(3), 12)
    expect(limitsOfAgreement([[0, 0, 0, 0], [6]], 0.95).bias.mean).toBe(3)
  })

  const differences = fc.array(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 6 }), { minLength: 2, maxLength: 30 })
  it('turn round with the readers, do not hang on the order, and hold the bias between them', () => {
    fc.assert(fc.property(differences, (given) => {
      const found = limitsOfAgreement(given, 0.95)
      const turned = limitsOfAgreement(given.map((own) => own.map((value) => -value)), 0.95)
      expect(turned.bias.mean).toBeCloseTo(-found.bias.mean, 10)
      expect(turned.limits.low).toBeCloseTo(-found.limits.high, 9)
      expect(turned.standardDeviation).toBeCloseTo(found.standardDeviation, 9)
      expect(limitsOfAgreement([...given].reverse().map((own) => [...own].reverse()), 0.95).limits.high).toBeCloseTo(found.limits.high, 9)
      expect(found.limits.low).toBeLessThanOrEqual(found.bias.mean)
      expect(found.bias).toEqual(meanInterval(given.map((own) => own.reduce((sum, value) => sum + value, 0) / own.length), 0.95))
    }))
  })
})

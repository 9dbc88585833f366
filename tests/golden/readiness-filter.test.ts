// Three outside checks of the filter:
// 1. Student's t with 5 degrees of freedom against the published table (NIST/SEMATECH e-Handbook 1.3.6.7.2, from memory) and @stdlib.
// 2. Series short enough to work out by hand as one-dimensional integrals.
// 3. A second program, written apart from the first: backward sums over a grid of any fineness, library distributions,
//    logarithms nowhere. At 121 points it must agree to rounding; at 1201 it shows what the coarse grid costs.
import tCdf from '@stdlib/stats-base-dists-t-cdf'
import { describe, expect, it } from 'vitest'
import { readinessFilter, type PracticeCoupon } from '@/lib/readiness/filter'
import { SHIPPED_PARAMETERS as P } from '@/lib/readiness/parameters'
import { t5Cdf } from '@/lib/readiness/student-t5'

describe('Student’s t with 5 degrees of freedom', () => {
  it.each([
    [1.476, 0.9], [2.015, 0.95], [2.571, 0.975], [3.365, 0.99], [4.032, 0.995],
  ])('at %f the table says %f', (t, share) => {
    expect(t5Cdf(t)).toBeCloseTo(share, 4)
    expect(t5Cdf(-t)).toBeCloseTo(1 - share, 4)
  })

  it.each([-30, -7.3, -1, -0.01, 0, 0.2, 2.5, 9])('agrees with the library at %f', (t) => {
    expect(t5Cdf(t)).toBeCloseTo(tCdf(t, 5), 13)
  })
})

const passChance = (x: number) => tCdf(x / P.s, 5) / (1 + Math.exp(-(P.c + P.d * x)))
const bell = (z: number) => Math.exp(-0.5 * z * z)

/** Trapezium rule over a fine mesh of the filter's own range. */
function integral(f: (x: number) => number): number {
  const n = 1200
  let sum = 0
  for (let i = 0; i <= n; i++) sum += f(-3.5 + (6 * i) / n) * (i === 0 || i === n ? 0.5 : 1)
  return (sum * 6) / n
}

describe('series short enough for pencil and paper', () => {
  const prior = (x: number) => bell((x - P.m0) / P.s0)

  it('with no coupon the chance is the prior mean of the link', () => {
    const mean = integral((x) => prior(x) * passChance(x)) / integral(prior)
    expect(readinessFilter([], 0).probability).toBeCloseTo(mean, 4)
  })

  it('one passed coupon and a test the same day: one update, one step of 0.2', () => {
    const after = (x: number) => prior(x) * passChance(x) ** P.eta
    // The step moves the point x to x + 0.035 (1.2 - x), spread by sqrt(0.2² + 0.025²): the mean of the link over that spread.
    const spread = Math.sqrt(0.2 ** 2 + 0.025 ** 2)
    const linkAfterStep = (x: number) => {
      const to = x + 0.035 * (1.2 - x)
      let sum = 0
      let weight = 0
      for (let z = -5; z <= 5; z += 0.1) {
        sum += bell(z) * passChance(Math.min(2.5, Math.max(-3.5, to + spread * z)))
        weight += bell(z)
      }
      return sum / weight
    }
    const mean = integral((x) => after(x) * linkAfterStep(x)) / integral(after)
    expect(readinessFilter([{ day: 0, accepted: true }], 0).probability).toBeCloseTo(mean, 4)
  })

  // Walk and session terms off, so that only forgetting moves the belief.
  const still = { ...P, m0: -1, rho: 0, q1: 0, qs: 0, qg: 0, s: 0.4 }

  it('a long wait takes nothing from a student who never rose above the start', () => {
    const parameters = { ...still, s0: 0.01 }
    const coupon = [{ day: 0, accepted: true, weight: 0 }]
    const before = readinessFilter(coupon, 0, { parameters }).probability
    expect(readinessFilter(coupon, 33, { parameters }).probability).toBeCloseTo(before, 7)
  })

  it('33 days undo 1 - exp(-30/120) of what lies above the start', () => {
    const surelyAt1 = Array.from({ length: 400 }, () => ({ day: 0, accepted: true, worstMargin: 1 }))
    const later = readinessFilter(surelyAt1, 33, { parameters: { ...still, s0: 1 } }).probability
    // From 1, which is 2 above the start, 22.12 % of 2 is lost.
    const at = 1 - 2 * (1 - Math.exp(-30 / 120))
    expect(Math.abs(later - tCdf(at / 0.4, 5) / (1 + Math.exp(-(P.c + P.d * at))))).toBeLessThan(0.005)
  })
})

/** The second program. `points` 121 is the shipped grid. */
function secondProgram(coupons: readonly PracticeCoupon[], testDay: number, points: number, level: number) {
  const h = 6 / (points - 1)
  const xs = Array.from({ length: points }, (_, i) => (i === points - 1 ? 2.5 : -3.5 + h * i))
  const scaled = (ws: readonly number[]) => ws.map((w) => w / ws.reduce((a, b) => a + b, 0))
  const move = (ws: readonly number[], gap: number) => {
    const wide = P.q1 ** 2 + h ** 2 / 4 + (gap > 0 ? P.qs ** 2 + (P.qg ** 2 * gap) / 30 : 0)
    const keep = gap > 3 ? Math.exp(-(gap - 3) / P.tauF) : 1
    const far = Math.ceil((8 * Math.sqrt(wide)) / h)
    const out = xs.map(() => 0)
    xs.forEach((x, from) => {
      const to = x * (1 - P.rho) + P.rho * P.mInf - (x > P.m0 ? (x - P.m0) * (1 - keep) : 0)
      const nearest = Math.round((to + 3.5) / h)
      const cells: [number, number][] = []
      for (let k = nearest - far; k <= nearest + far; k++) cells.push([Math.min(points - 1, Math.max(0, k)), bell((-3.5 + h * k - to) / Math.sqrt(wide))])
      const all = cells.reduce((a, [, w]) => a + w, 0)
      for (const [k, w] of cells) out[k] = out[k]! + (ws[from]! * w) / all
    })
    return out
  }
  const see = (ws: readonly number[], coupon: PracticeCoupon) =>
    scaled(ws.map((w, i) => {
      const x = xs[i]!
      const good = 1 / (1 + Math.exp(-(P.c + P.d * x)))
      const seen = coupon.worstMargin === undefined
        ? (coupon.accepted ? passChance(x) : 1 - passChance(x))
        : (1 + ((coupon.worstMargin - x) / P.s) ** 2 / 5) ** -3 * (coupon.attributesGood === undefined ? 1 : coupon.attributesGood ? good : 1 - good)
      return w * seen ** P.eta
    }))
  let ws = scaled(xs.map((x) => bell((x - P.m0) / P.s0)))
  coupons.forEach((coupon, i) => {
    if (i > 0) ws = move(ws, coupon.day - coupons[i - 1]!.day)
    ws = see(ws, coupon)
  })
  if (coupons.length > 0) ws = move(ws, testDay - coupons.at(-1)!.day)
  const edgeBelow = (share: number) => {
    let sum = 0
    for (let i = 0; i < points; i++) {
      if (sum + ws[i]! >= share) return xs[i]! - h / 2 + (h * (share - sum)) / ws[i]!
      sum += ws[i]!
    }
    return 2.5 + h / 2
  }
  return {
    probability: xs.reduce((sum, x, i) => sum + ws[i]! * passChance(x), 0),
    low: passChance(edgeBelow((1 - level) / 2)),
    high: passChance(edgeBelow((1 + level) / 2)),
  }
}

/** Fixed made-up series; nothing random, so both programs meet the same numbers every time. */
const wave = (n: number, make: (i: number) => Omit<PracticeCoupon, 'day'>, gap = 1): PracticeCoupon[] =>
  Array.from({ length: n }, (_, i) => ({ day: Math.floor(i / 3) * gap, ...make(i) }))

const SERIES: Record<string, { coupons: PracticeCoupon[]; testDay: number }> = {
  'no coupons': { coupons: [], testDay: 4 },
  'one fail': { coupons: wave(1, () => ({ accepted: false })), testDay: 0 },
  'verdicts only': { coupons: wave(12, (i) => ({ accepted: i % 3 !== 0 })), testDay: 6 },
  'margins rising': { coupons: wave(14, (i) => ({ accepted: i > 6, worstMargin: -1.4 + 0.18 * i + 0.3 * Math.sin(3 * i), attributesGood: i !== 4 })), testDay: 5 },
  'margins without yes/no rules': { coupons: wave(9, (i) => ({ accepted: i > 4, worstMargin: -0.6 + 0.15 * i })), testDay: 3 },
  'mixed, with long gaps': { coupons: wave(12, (i) => (i % 4 === 1 ? { accepted: true } : { accepted: true, worstMargin: 0.4 + 0.2 * Math.cos(i), attributesGood: true }), 25), testDay: 190 },
  'wild margins': { coupons: wave(6, (i) => ({ accepted: i % 2 === 0, worstMargin: i % 2 === 0 ? 1e6 : -1e6, attributesGood: true })), testDay: 2 },
  'high and steady': { coupons: wave(12, () => ({ accepted: true, worstMargin: 2.3, attributesGood: true })), testDay: 9 },
}

describe.each(Object.entries(SERIES))('the second program, %s', (_, { coupons, testDay }) => {
  it.each([0.8, 0.95])('agrees to rounding on the same grid at level %f', (level) => {
    const ours = readinessFilter(coupons, testDay, { level })
    const theirs = secondProgram(coupons, testDay, 121, level)
    expect(ours.probability).toBeCloseTo(theirs.probability, 9)
    expect(ours.low).toBeCloseTo(theirs.low, 9)
    expect(ours.high).toBeCloseTo(theirs.high, 9)
  })

  it('on a grid ten times finer the chance moves by less than 0.002 and the limits by less than 0.005', () => {
    const ours = readinessFilter(coupons, testDay)
    const fine = secondProgram(coupons, testDay, 1201, 0.8)
    expect(Math.abs(ours.probability - fine.probability)).toBeLessThan(0.002)
    expect(Math.abs(ours.low - fine.low)).toBeLessThan(0.005)
    expect(Math.abs(ours.high - fine.high)).toBeLessThan(0.005)
  })
})

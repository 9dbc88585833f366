import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kaplanMeier, logRank } from '@/lib/statistics/survival'
import { everyNumber } from '../../support/every-number'

fc.configureGlobal({ seed: 45, numRuns: 300 })

const students = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.boolean()), { minLength: 1, maxLength: 60 })
const curveOf = (list: readonly (readonly [number, boolean])[]) => kaplanMeier(list.map(([time]) => time), list.map(([, event]) => event))

describe('Kaplan-Meier', () => {
  test('falls from step to step, and its limits hold it within 0 to 1', () => {
    fc.assert(fc.property(students, list => {
      const { steps } = curveOf(list)
      let [before, time] = [1, -1]
      for (const step of steps) {
        expect(step.time).toBeGreaterThan(time)
        expect(step.survival).toBeLessThan(before)
        expect(step.low).toBeGreaterThanOrEqual(0)
        expect(step.low).toBeLessThanOrEqual(step.survival)
        expect(step.high).toBeGreaterThanOrEqual(step.survival)
        expect(step.high).toBeLessThanOrEqual(1)
        ;[before, time] = [step.survival, step.time]
      }
      expect(steps.reduce((sum, { events }) => sum + events, 0)).toBe(list.filter(([, event]) => event).length)
    }))
  })

  test('the order of students does not matter', () => {
    fc.assert(fc.property(students, list => {
      expect(curveOf([...list].reverse())).toEqual(curveOf(list))
    }))
  })

  test('without censoring it is the share still waiting', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 50 }), times => {
      for (const { time, survival } of kaplanMeier(times, times.map(() => true)).steps) {
        expect(survival).toBeCloseTo(times.filter(other => other > time).length / times.length, 10)
      }
    }))
  })

  test('with only stopped watches there is no step and no median', () => {
    expect(kaplanMeier([4, 9], [false, false])).toEqual({ steps: [], median: null, medianLow: null, medianHigh: null })
  })

  test('a curve that reaches exactly one half has its median there', () => {
    expect(kaplanMeier([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], Array<boolean>(10).fill(true)).median).toBe(5)
  })

  test('where everyone has passed the upper limit stays at the step before', () => {
    const { steps } = kaplanMeier([3, 5, 7], [true, true, true])
    expect(steps[2]).toMatchObject({ survival: 0, low: 0, high: steps[1]?.high })
  })

  test('where all pass at once the limit is the exact one for none of n', () => {
    // Clopper-Pearson 0/4 at 95 %: 1 − 0.025^(1/4) = 0.60236
    const { steps, median } = kaplanMeier([6, 6, 6, 6], [1, 1, 1, 1])
    expect(steps).toHaveLength(1)
    expect(steps[0]?.high).toBeCloseTo(0.602365, 5)
    expect(median).toBe(6)
  })

  test('someone who stops at the time of an event still counts as at risk', () => {
    expect(kaplanMeier([5, 5], [true, false]).steps).toMatchObject([{ atRisk: 2, events: 1, survival: 0.5 }])
  })
})

describe('log-rank test', () => {
  const group = (list: readonly (readonly [number, boolean])[]) => ({ durations: list.map(([time]) => time), observed: list.map(([, event]) => event) })

  test('treats both groups alike, and expects as many events as there were', () => {
    fc.assert(fc.property(students, students, (one, other) => {
      // Something can be learnt at a time when both groups are watched and not everyone has the event.
      const atRisk = (list: typeof one, time: number) => list.filter(([t]) => t >= time)
      const both = [...one, ...other]
      fc.pre(both.some(([time, event]) => event && atRisk(one, time).length > 0 && atRisk(other, time).length > 0
        && both.filter(([t, e]) => e && t === time).length < atRisk(both, time).length))
      const forward = logRank(group(one), group(other))
      const backward = logRank(group(other), group(one))
      expect(backward.chiSquare).toBeCloseTo(forward.chiSquare, 8)
      expect(forward.expected[0] + forward.expected[1]).toBeCloseTo(forward.observed[0] + forward.observed[1], 9)
      expect(everyNumber(forward).every(Number.isFinite)).toBe(true)
      expect(forward.p).toBeGreaterThanOrEqual(0)
      expect(forward.p).toBeLessThanOrEqual(1)
    }))
  })

  test('equal groups do not differ', () => {
    const same = group([[3, true], [5, true], [8, false]])
    expect(logRank(same, same)).toMatchObject({ chiSquare: 0, p: 1 })
  })
})

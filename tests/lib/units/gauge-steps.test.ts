import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gaugeResolutionMm, gaugeSteps, GAUGE_UNITS, nearestStep, padGauge } from '@/lib/units/gauge-steps'

const labels = (...args: Parameters<typeof gaugeSteps>): string[] => gaugeSteps(...args).map((step) => step.label)
const bead = { minMm: 25.4 * 5 / 16, maxMm: 25.4 * 3 / 8 } // five to six diameters of 1/16 in wire

it('offers eight keys about the band, fractions reduced', () => {
  expect(labels(bead, 'in16')).toEqual(['1/8 in', '3/16 in', '1/4 in', '5/16 in', '3/8 in', '7/16 in', '1/2 in', '9/16 in'])
  expect(labels(bead, 'in32')).toEqual(['1/4 in', '9/32 in', '5/16 in', '11/32 in', '3/8 in', '13/32 in', '7/16 in', '15/32 in'])
  expect(labels(bead, 'in64')).toEqual(['19/64 in', '5/16 in', '21/64 in', '11/32 in', '23/64 in', '3/8 in', '25/64 in', '13/32 in'])
  expect(labels(bead, 'mm')).toEqual(['7 mm', '7.5 mm', '8 mm', '8.5 mm', '9 mm', '9.5 mm', '10 mm', '10.5 mm'])
})

it('turns the page to larger and smaller sizes without a gap', () => {
  expect(labels(bead, 'in16', { page: 1 })[0]).toBe('5/8 in')
  expect(labels(bead, 'mm', { page: -1 }).at(-1)).toBe('6.5 mm')
})

it('never goes below one step', () => {
  expect(labels({ minMm: 0, maxMm: 0.8 }, 'in32')[0]).toBe('1/32 in')
  expect(labels(bead, 'in16', { page: -9 })[0]).toBe('1/16 in')
})

it('takes coarser keys for a band wider than the pad', () => {
  expect(labels({ minMm: 10, maxMm: 20 }, 'mm')).toEqual(['8 mm', '10 mm', '12 mm', '14 mm', '16 mm', '18 mm', '20 mm', '22 mm'])
})

it('holds the whole band with a step to spare on either side, in neighbouring steps', () => {
  fc.assert(fc.property(
    fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: 0, max: 300, noNaN: true }), fc.constantFrom(...GAUGE_UNITS), fc.integer({ min: 4, max: 24 }),
    (minMm, width, unit, keys) => {
      const steps = gaugeSteps({ minMm, maxMm: minMm + width }, unit, { keys }).map((step) => step.valueMm)
      expect(steps).toHaveLength(keys)
      const gap = (steps[1] ?? 0) - (steps[0] ?? 0)
      expect(steps.every((each, i) => i === 0 || Math.abs(each - (steps[i - 1] ?? 0) - gap) < 1e-9)).toBe(true)
      expect(gap / gaugeResolutionMm(unit)).toBeCloseTo(Math.round(gap / gaugeResolutionMm(unit)), 6)
      expect(steps.at(-1)).toBeGreaterThan(minMm + width - 1e-6)
      expect(steps[0]).toBeLessThanOrEqual(Math.max(gap, minMm) + 1e-6)
    },
  ))
})

it('marks the key nearest to a reading', () => {
  expect(nearestStep(8, 'in16')).toEqual({ valueMm: 7.9375, label: '5/16 in' })
  expect(nearestStep(8.2, 'mm').label).toBe('8 mm')
  expect(nearestStep(0, 'in32').label).toBe('0 in')
  expect(() => nearestStep(Number.NaN, 'mm')).toThrow(RangeError)
})

it.each([
  [{ minMm: 9, maxMm: 8 }, {}],
  [{ minMm: -1, maxMm: 8 }, {}],
  [{ minMm: Number.NaN, maxMm: 8 }, {}],
  [{ minMm: 1, maxMm: Infinity }, {}],
  [{ minMm: 1, maxMm: 2 }, { keys: 3 }],
  [{ minMm: 1, maxMm: 2 }, { page: 0.5 }],
])('refuses a pad for %j with %j', (band, options) => {
  expect(() => gaugeSteps(band, 'in16', options)).toThrow(RangeError)
})

it.each([['in16', 1.5875], ['in32', 0.79375], ['in64', 0.396875], ['mm', 0.5]] as const)('reads a gauge in %s to %d mm', (unit, resolution) => {
  expect(gaugeResolutionMm(unit)).toBe(resolution)
})

it('begins at nothing where nothing is a reading', () => {
  expect(labels({ minMm: 0, maxMm: 3.175 }, 'in32', { least: 0 })).toEqual(['0 in', '1/32 in', '1/16 in', '3/32 in', '1/8 in', '5/32 in', '3/16 in', '7/32 in'])
  expect(labels({ minMm: 0, maxMm: 3.175 }, 'in32', { least: 0, page: -3 })[0]).toBe('0 in')
  expect(labels({ minMm: 0, maxMm: 2 }, 'mm', { least: 0 })[0]).toBe('0 mm')
})

it('shows a reader the gauge in their own units', () => {
  expect(padGauge('in64', 'in')).toBe('in64')
  expect(padGauge('in16', 'mm')).toBe('mm')
  expect(padGauge('mm', 'in')).toBe('in32')
  expect(padGauge('mm', 'mm')).toBe('mm')
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plateMassKg, steelMassKg } from '@/lib/consumables/steel'
import { consumableNeededKg, CORED_SHARE, depositionEfficiency, depositionKgPerHour, meltOffKgPerHour, solidWireKgPerMm, wireFedKg, wireInchesPerPound, wireShare } from '@/lib/procedure/wire'

const wire = { feedMmPerS: 60, diameterMm: 1.6 }

it('weighs a pound of wire as a pound, whatever its diameter', () => {
  fc.assert(fc.property(fc.double({ min: 0.5, max: 5, noNaN: true }), (diameter) => {
    expect(wireInchesPerPound(diameter) * 25.4 * solidWireKgPerMm(diameter)).toBeCloseTo(0.45359237, 9)
  }))
})

it('feeds in an hour of arc what it melts off in an hour', () => {
  expect(wireFedKg({ ...wire, arcSeconds: 3600 })).toBeCloseTo(meltOffKgPerHour(wire), 12)
  expect(wireFedKg({ ...wire, arcSeconds: 90 })).toBeCloseTo(meltOffKgPerHour(wire) / 40, 12)
})

it('scales with the wire’s share of solid mass and with the efficiency', () => {
  expect(meltOffKgPerHour({ ...wire, share: 0.8 })).toBeCloseTo(meltOffKgPerHour(wire) * 0.8, 12)
  expect(depositionKgPerHour({ ...wire, share: 0.8, efficiency: 0.78 })).toBeCloseTo(meltOffKgPerHour(wire) * 0.624, 12)
})

it('knows solid wire exactly, cored wire within bounds, and feeds no covered electrode', () => {
  expect(wireShare('GMAW')).toEqual({ low: 1, high: 1 })
  expect(wireShare('FCAW-S')).toEqual({ low: CORED_SHARE.low, high: CORED_SHARE.high })
  expect(wireShare('SMAW')).toBeNull()
})

it('buys more than it deposits', () => {
  expect(consumableNeededKg(1, 'FCAW-S')).toBeCloseTo(1 / 0.78, 12)
  expect(consumableNeededKg(0, 'SMAW')).toBe(0)
  for (const process of ['SMAW', 'FCAW-S', 'FCAW-G', 'GMAW'] as const) expect(depositionEfficiency(process).efficiency).toBeLessThan(1)
})

it('weighs plate: 150 × 75 × 10 mm is 0.881 kg', () => {
  expect(plateMassKg({ lengthMm: 150, widthMm: 75, thicknessMm: 10 })).toBeCloseTo(0.8813, 3)
})

it.each([0, -1, Number.NaN, Infinity])('refuses %d where a size is needed', (bad) => {
  expect(() => wireInchesPerPound(bad)).toThrow(RangeError)
  expect(() => meltOffKgPerHour({ ...wire, feedMmPerS: bad })).toThrow(RangeError)
  expect(() => wireFedKg({ ...wire, arcSeconds: bad })).toThrow(RangeError)
  expect(() => plateMassKg({ lengthMm: bad, widthMm: 1, thicknessMm: 1 })).toThrow(RangeError)
})

it.each([0, -0.1, 1.01, Number.NaN])('refuses %d as a share', (bad) => {
  expect(() => meltOffKgPerHour({ ...wire, share: bad })).toThrow(/share/)
  expect(() => depositionKgPerHour({ ...wire, efficiency: bad })).toThrow(/efficiency/)
})

it('refuses a mass below zero', () => {
  expect(() => steelMassKg(-1)).toThrow(RangeError)
  expect(() => consumableNeededKg(-1, 'GMAW')).toThrow(RangeError)
  expect(() => consumableNeededKg(Number.NaN, 'GMAW')).toThrow(RangeError)
})

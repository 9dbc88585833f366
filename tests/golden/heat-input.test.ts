// Worked examples published by others, and the factors of ISO/TR 17671-1 as a steel maker prints them.
import { expect, it } from 'vitest'
import { arcEnergy, heatInput, travelSpeed } from '@/lib/procedure/heat-input'
import { processFacts } from '@/lib/procedure/process-facts'
import { kilojoulesPerInch } from '@/lib/units/energy-per-length'
import { parseTravelSpeed } from '@/lib/units/travel-speed'

it('325 A at 29 V, 25 in in 2 min, is 45.24 kJ/in (weldinginspections.net, worked example, topic 318)', () => {
  const speed = travelSpeed(25 * 25.4, 120)
  expect(speed).toBeCloseTo(parseTravelSpeed('12.5 in/min', 'mm/s'), 9)
  expect(kilojoulesPerInch(arcEnergy({ volts: 29, amps: 325, travelSpeedMmPerS: speed }))).toBeCloseTo(45.24, 9)
})

it('24 V, 120 A, 10 in/min is 17,280 J/in (study-page example; arithmetic of V × A × 60 / speed)', () => {
  const energy = arcEnergy({ volts: 24, amps: 120, travelSpeedMmPerS: parseTravelSpeed('10', 'in/min') })
  expect(kilojoulesPerInch(energy) * 1000).toBeCloseTo(17_280, 6)
})

it('20 V, 300 A, 2.5 mm/s is 2.4 kJ/mm without a factor (expertsmind.com, arc welding example)', () => {
  expect(arcEnergy({ volts: 20, amps: 300, travelSpeedMmPerS: 2.5 })).toBeCloseTo(2.4, 12)
  expect(heatInput({ volts: 20, amps: 300, travelSpeedMmPerS: 2.5, process: 'GMAW' })).toBeCloseTo(1.92, 12)
})

it('24 V, 180 A, 300 mm/min with k = 0.8 is 0.691 kJ/mm or 17.6 kJ/in (hand calculation: 24 × 180 / 5 / 1000 × 0.8)', () => {
  const input = heatInput({ volts: 24, amps: 180, travelSpeedMmPerS: parseTravelSpeed('300 mm/min', 'mm/s'), process: 'FCAW-G' })
  expect(input).toBeCloseTo(0.6912, 12)
  expect(kilojoulesPerInch(input)).toBeCloseTo(17.556, 3)
})

it.each([
  ['SMAW', '111', 0.8], // SSAB heat-input page: MMA 0.8
  ['GMAW', '135', 0.8], // SSAB heat-input page: MIG/MAG, all types, 0.8
  ['FCAW-G', '136', 0.8], // same row; number from memory
  ['FCAW-S', '114', 0.8], // from memory: grouped with cored-wire metal-arc welding
] as const)('%s is ISO 4063 process %s with k = %d', (process, number, k) => {
  expect(processFacts(process).iso4063).toBe(number)
  expect(processFacts(process).efficiency).toBe(k)
})

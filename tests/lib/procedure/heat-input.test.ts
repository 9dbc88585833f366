import fc from 'fast-check'
import { expect, it } from 'vitest'
import { arcOnSeconds, operatingFactor, totalArcSeconds } from '@/lib/procedure/arc-time'
import { arcEnergy, heatInput, travelSpeed } from '@/lib/procedure/heat-input'
import { PROCESSES } from '@/lib/procedure/process'
import { processFacts, processOfIso4063 } from '@/lib/procedure/process-facts'

const positive = fc.double({ min: 0.01, max: 1000, noNaN: true })
const arc = { volts: 20, amps: 200, travelSpeedMmPerS: 4 }

it.each([0, -1, Number.NaN, Infinity])('refuses %d in any place, and says which', (bad) => {
  expect(() => travelSpeed(bad, 10)).toThrow(/length welded/)
  expect(() => travelSpeed(10, bad)).toThrow(/arc time/)
  expect(() => arcEnergy({ ...arc, volts: bad })).toThrow(/voltage/)
  expect(() => arcEnergy({ ...arc, amps: bad })).toThrow(/current/)
  expect(() => heatInput({ ...arc, travelSpeedMmPerS: bad, process: 'SMAW' })).toThrow(/travel speed/)
  expect(() => arcOnSeconds(bad, 4)).toThrow(RangeError)
  expect(() => arcOnSeconds(100, bad)).toThrow(RangeError)
})

it('is never more than the arc energy, and slower means hotter', () => {
  fc.assert(fc.property(positive, positive, positive, fc.constantFrom(...PROCESSES), (volts, amps, speed, process) => {
    const energy = arcEnergy({ volts, amps, travelSpeedMmPerS: speed })
    expect(heatInput({ volts, amps, travelSpeedMmPerS: speed, process })).toBeLessThanOrEqual(energy)
    expect(arcEnergy({ volts, amps, travelSpeedMmPerS: speed / 2 })).toBeCloseTo(energy * 2, 6)
  }))
})

it('gives the arc time back from the speed it made', () => {
  fc.assert(fc.property(positive, positive, (length, seconds) => {
    expect(arcOnSeconds(length, travelSpeed(length, seconds)) / seconds).toBeCloseTo(1, 9)
  }))
})

it('adds up arc time without taking a missing time for zero', () => {
  expect(totalArcSeconds([{ arcSeconds: 60 }, { arcSeconds: null }, { arcSeconds: 30 }])).toEqual({ seconds: 90, notTimed: 1 })
  expect(totalArcSeconds([{ arcSeconds: null }])).toEqual({ seconds: null, notTimed: 1 })
  expect(totalArcSeconds([])).toEqual({ seconds: null, notTimed: 0 })
  expect(() => totalArcSeconds([{ arcSeconds: -1 }])).toThrow(RangeError)
})

it('keeps the operating factor between nought and one', () => {
  expect(operatingFactor(27, 60)).toBe(0.45)
  expect(operatingFactor(0, 60)).toBe(0)
  expect(() => operatingFactor(61, 60)).toThrow(RangeError)
  expect(() => operatingFactor(0, 0)).toThrow(RangeError)
})

it('finds a process by its ISO 4063 number, and the number by the process', () => {
  for (const process of PROCESSES) expect(processOfIso4063(processFacts(process).iso4063)).toBe(process)
  expect(processOfIso4063(' 138 ')).toBe('GMAW')
  expect(() => processOfIso4063('141')).toThrow(/141/)
  expect(() => processOfIso4063('toString')).toThrow(RangeError)
})

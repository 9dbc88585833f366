import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees, formatAngle, parseAngle } from '@/lib/units/angle'
import { amps, formatAmps, parseAmps } from '@/lib/units/current'
import { formatDuration, formatSeconds, formatTotalTime, parseDuration, seconds } from '@/lib/units/duration'
import { formatEnergyPerLength, kilojoulesPerInch, kilojoulesPerMm } from '@/lib/units/energy-per-length'
import { formatGasFlow, litresPerMinute, parseGasFlow } from '@/lib/units/gas-flow'
import { formatMass, fromPounds, kg, parseMass, toPounds } from '@/lib/units/mass'
import { formatTravelSpeed, parseTravelSpeed, travelSpeedMmPerS } from '@/lib/units/travel-speed'
import { formatVolts, parseVolts, volts } from '@/lib/units/voltage'
import { formatWireFeedSpeed, parseWireFeedSpeed, wireFeedMmPerS } from '@/lib/units/wire-feed-speed'

const tenths = fc.integer({ min: 0, max: 5000 }).map((n) => n / 10)

describe('travel speed', () => {
  it.each([['10', 'in/min', 254 / 60], ['10 ipm', 'mm/s', 254 / 60], ['10 in / min', 'mm/s', 254 / 60], ['4,2 mm/s', 'in/min', 4.2], ['300 mm/min', 'in/min', 5], ['25 cm/min', 'mm/s', 250 / 60]] as const)('reads %j', (text, unit, expected) => {
    expect(parseTravelSpeed(text, unit)).toBeCloseTo(expected, 12)
  })
  it('returns to the same speed in every unit', () => {
    fc.assert(fc.property(tenths, fc.constantFrom('in/min' as const, 'mm/s' as const, 'mm/min' as const, 'cm/min' as const), (n, unit) => {
      const text = `${n.toFixed(1)} ${unit}`
      expect(formatTravelSpeed(parseTravelSpeed(text, 'mm/s'), { unit, digits: 1 })).toBe(text)
    }))
  })
  it('does not pass for wire feed speed', () => {
    // @ts-expect-error the arc's speed is not the wire's
    expect(formatTravelSpeed(wireFeedMmPerS(5), { unit: 'mm/s', digits: 0 })).toBe('5 mm/s')
    expect(formatTravelSpeed(travelSpeedMmPerS(5), { unit: 'mm/s', digits: 0 })).toBe('5 mm/s')
  })
})

describe('wire feed speed', () => {
  it.each([['150', 'in/min', 63.5], ['150 IPM', 'm/min', 63.5], ['3,81 m/min', 'in/min', 63.5], ['63.5 mm/s', 'in/min', 63.5]] as const)('reads %j', (text, unit, expected) => {
    expect(parseWireFeedSpeed(text, unit)).toBeCloseTo(expected, 9)
  })
  it('returns to the same speed in every unit', () => {
    fc.assert(fc.property(tenths, fc.constantFrom('in/min' as const, 'm/min' as const, 'mm/s' as const), (n, unit) => {
      const text = `${n.toFixed(1)} ${unit}`
      expect(formatWireFeedSpeed(parseWireFeedSpeed(text, 'mm/s'), { unit, digits: 1 })).toBe(text)
    }))
  })
})

describe('volts, amps and angles', () => {
  it.each(['24', '24 V', '24 volts', '24v'])('reads %j as 24 volts', (text) => expect(parseVolts(text)).toBe(24))
  it.each(['180', '180 A', '180 amps', '180 Amperes'])('reads %j as 180 amperes', (text) => expect(parseAmps(text)).toBe(180))
  it.each(['45', '45°', '45 deg', '45 grados'])('reads %j as 45 degrees', (text) => expect(parseAngle(text)).toBe(45))
  it.each(['', 'abc', '-5', '24 A'])('refuses %j as a voltage', (text) => expect(() => parseVolts(text)).toThrow(RangeError))
  it.each(['', '180 V', '1/0'])('refuses %j as a current', (text) => expect(() => parseAmps(text)).toThrow(RangeError))
  it.each(['', '45 rad', '-10'])('refuses %j as an angle', (text) => expect(() => parseAngle(text)).toThrow(RangeError))
  it('writes what it reads', () => {
    fc.assert(fc.property(tenths, (n) => {
      expect(parseVolts(formatVolts(volts(n)))).toBe(n)
      expect(parseAmps(formatAmps(amps(n), 1))).toBe(n)
      expect(parseAngle(formatAngle(degrees(n), 1))).toBe(n)
    }))
  })
  it('writes nothing that is not a number', () => {
    expect(() => formatVolts(volts(Number.NaN))).toThrow(RangeError)
    expect(() => formatAmps(amps(Infinity))).toThrow(RangeError)
    expect(() => formatAngle(degrees(Number.NaN))).toThrow(RangeError)
  })
})

describe('mass', () => {
  it.each([['1 lb', 'kg', 0.45359237], ['33 lbs', 'kg', 14.96854821], ['15', 'kg', 15], ['1/2', 'lb', 0.226796185], ['8 oz', 'kg', 0.226796185], ['250 g', 'lb', 0.25]] as const)('reads %j', (text, unit, expected) => {
    expect(parseMass(text, unit)).toBeCloseTo(expected, 12)
  })
  it('returns to the same mass in every unit', () => {
    fc.assert(fc.property(tenths, fc.constantFrom('lb' as const, 'kg' as const, 'oz' as const, 'g' as const), (n, unit) => {
      const text = `${n.toFixed(1)} ${unit}`
      expect(formatMass(parseMass(text, 'kg'), { unit, digits: 1 })).toBe(text)
    }))
    expect(toPounds(fromPounds(33))).toBeCloseTo(33, 12)
    expect(formatMass(kg(0.5), { unit: 'kg', digits: 2 })).toBe('0.50 kg')
  })
})

describe('time', () => {
  it.each([['1:30', 90], ['0:05', 5], ['90', 90], ['90 s', 90], ['1.5 min', 90], ['1:02:05', 3725], ['75:00', 4500], ['0:07,5', 7.5], ['2 h', 7200]])('reads %j as %d seconds', (text, expected) => {
    expect(parseDuration(text)).toBe(expected)
  })
  it.each(['', ':30', '1:75', '1:60', '1:99:00', '1:2', '-1:00', '1:30:30:30', 'soon'])('refuses %j', (text) => {
    expect(() => parseDuration(text)).toThrow(RangeError)
  })
  it.each([[0, '0:00'], [45, '0:45'], [59.6, '1:00'], [90, '1:30'], [3725, '1:02:05']])('writes %d seconds as %s', (value, expected) => {
    expect(formatDuration(seconds(value))).toBe(expected)
  })
  it.each([[0, '0 s'], [59.4, '59 s'], [59.5, '1 min'], [356, '6 min'], [3569, '59 min'], [3570, '1 h 0 min'], [13_130, '3 h 39 min']])('sums %s seconds up as %s', (value, expected) => {
    expect(formatTotalTime(seconds(value))).toBe(expected)
  })
  it('has no sum below zero', () => {
    expect(() => formatTotalTime(seconds(-1))).toThrow(RangeError)
    expect(() => formatTotalTime(seconds(Number.NaN))).toThrow(RangeError)
  })
  it('returns to the same second', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 86_400 }), (n) => {
      expect(parseDuration(formatDuration(seconds(n)))).toBe(n)
    }))
    expect(formatSeconds(seconds(0.5))).toBe('0.5 s')
  })
  it('writes no impossible time', () => {
    expect(() => formatDuration(seconds(-1))).toThrow(RangeError)
    expect(() => formatDuration(seconds(Number.NaN))).toThrow(RangeError)
  })
})

describe('gas flow', () => {
  it('reads and writes both units', () => {
    expect(parseGasFlow('1 cfh', 'L/min')).toBeCloseTo(28.316846592 / 60, 12)
    expect(parseGasFlow('16', 'L/min')).toBe(16)
    expect(formatGasFlow(litresPerMinute(16.5), { unit: 'L/min', digits: 1 })).toBe('16.5 L/min')
    fc.assert(fc.property(tenths, fc.constantFrom('cfh' as const, 'L/min' as const), (n, unit) => {
      const text = `${n.toFixed(1)} ${unit}`
      expect(formatGasFlow(parseGasFlow(text, 'cfh'), { unit, digits: 1 })).toBe(text)
    }))
  })
})

describe('energy for each length of weld', () => {
  it('turns kJ/mm into kJ/in and back', () => {
    expect(kilojoulesPerInch(1)).toBe(25.4)
    expect(kilojoulesPerMm(kilojoulesPerInch(1.781))).toBeCloseTo(1.781, 12)
    expect(formatEnergyPerLength(1.781, 'kJ/in')).toBe('45.2 kJ/in')
    expect(formatEnergyPerLength(1.781, 'kJ/mm')).toBe('1.78 kJ/mm')
    expect(() => formatEnergyPerLength(Number.NaN, 'kJ/in')).toThrow(RangeError)
  })
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { formatBesideLimit, formatForReader } from '@/lib/units/display'

it.each([
  [25.4 / 32, '1/32 in', '0.79 mm'],
  [25.4 / 16, '1/16 in', '1.6 mm'],
  [25.4 * 3 / 32, '3/32 in', '2.4 mm'],
  [25.4 * 0.01, '0.010 in', '0.25 mm'],
  [0.25, '0.010 in', '0.25 mm'],
  [0.9, '0.035 in', '0.9 mm'],
  [1, '0.039 in', '1.0 mm'],
  [2.2, '0.087 in', '2.2 mm'],
  [7.9375, '5/16 in', '7.9 mm'],
  [8, '5/16 in', '8.0 mm'],
  [8.1, '0.319 in', '8.1 mm'],
  [28.575, '1 1/8 in', '28.6 mm'],
  [304.8, '12 in', '304.8 mm'],
  [0, '0 in', '0.0 mm'],
  [-25.4 / 32, '-1/32 in', '-0.79 mm'],
] as const)('shows %d mm as %s and as %s', (value, inches, millimetres) => {
  expect(formatForReader(value, 'in')).toBe(inches)
  expect(formatForReader(value, 'mm')).toBe(millimetres)
})

it.each([
  [25.4 * 5 / 16 + 0.095, '5/16 in'], [25.4 * 5 / 16 + 0.105, '0.317 in'], [25.4 * 5 / 16 - 0.095, '5/16 in'], [25.4 * 5 / 16 - 0.105, '0.308 in'],
  [0.825, '1/32 in'], [0.829, '0.033 in'],
  [1.45, '0.057 in'], [1.8, '0.071 in'], [25.4 * 0.225, '0.225 in'], [25.4 * 0.27, '0.27 in'],
] as const)('calls %d mm %s: a sixty-fourth only from close by', (value, inches) => {
  expect(formatForReader(value, 'in')).toBe(inches)
})

it('never shows a reading over its limit as the limit', () => {
  expect(formatForReader(0.8, 'in')).toBe('1/32 in')
  expect(formatBesideLimit(0.8, 25.4 / 32, 'in')).toBe('0.0315 in')
  expect(formatBesideLimit(1.02, 1, 'mm')).toBe('1.02 mm')
  expect(formatBesideLimit(25.4 / 32, 25.4 / 32, 'in')).toBe('1/32 in')
  fc.assert(fc.property(fc.double({ min: 0.1, max: 30, noNaN: true }), fc.double({ min: 1e-4, max: 0.2, noNaN: true }), fc.constantFrom('in' as const, 'mm' as const), (limit, over, units) => {
    expect(formatBesideLimit(limit + over, limit, units)).not.toBe(formatForReader(limit, units))
  }))
})

it('shows a length within 0.1 mm of what it is, in either unit', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 300, noNaN: true }), (value) => {
    const fraction = /^(?:(\d+) )?(\d+)\/(\d+) in$/.exec(formatForReader(value, 'in'))
    const inches = fraction ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]) : Number.parseFloat(formatForReader(value, 'in'))
    expect(Math.abs(inches * 25.4 - value)).toBeLessThanOrEqual(0.127 + 1e-9) // half a hundredth of an inch
    expect(Math.abs(Number.parseFloat(formatForReader(value, 'mm')) - value)).toBeLessThanOrEqual(0.05 + 1e-9)
  }))
})

it('refuses what is not a number', () => {
  expect(() => formatForReader(Number.NaN, 'in')).toThrow(RangeError)
  expect(() => formatForReader(Infinity, 'mm')).toThrow(RangeError)
})

it('rounds a five up as paper does, however the machine stores it', () => {
  expect(formatForReader(6.35, 'mm')).toBe('6.4 mm')
  expect(formatForReader(12.65, 'mm')).toBe('12.7 mm')
})

import { expect, it } from 'vitest'
import { formatLength, fromInches, mm, parseLength, toInches, type Millimetres } from '@/lib/units/length'

it.each([
  ['5/16', 'in', 7.9375],
  ['1 1/8', 'in', 28.575],
  ['1-1/8', 'in', 28.575],
  ['1 - 1/8', 'in', 28.575],
  ['1–1/8', 'in', 28.575],
  ['1 – ⅛ in', 'mm', 28.575],
  ['.045', 'in', 1.143],
  ['0.045 in', 'mm', 1.143],
  ['3/8"', 'mm', 9.525],
  ['3/8 in.', 'mm', 9.525],
  ['3/8-inch', 'mm', 9.525],
  ['3/8″', 'mm', 9.525],
  ['3/8”', 'mm', 9.525],
  ["3/8''", 'mm', 9.525],
  ['2 Inches', 'mm', 50.8],
  ['1/4 pulg', 'mm', 6.35],
  ['⅜', 'in', 9.525],
  ['1⅛', 'in', 28.575],
  ['1 ⅛ in', 'mm', 28.575],
  ['3⁄8', 'in', 9.525],
  ['8', 'mm', 8],
  ['8', 'in', 203.2],
  ['8.', 'mm', 8],
  ['8 mm', 'in', 8],
  ['8MM', 'in', 8],
  ['8,5 mm', 'in', 8.5],
  [',5', 'mm', 0.5],
  [' 0 ', 'mm', 0],
  ['1\u00a01/8\u202fin', 'mm', 28.575],
] as const)('reads %j (bare numbers in %s) as %d mm', (text, unit, expected) => {
  expect(parseLength(text, unit)).toBeCloseTo(expected, 9)
})

it.each([
  '', '   ', 'abc', '1/0', '0/0', '1 1/0', '-3', '−3', '–3', '- 1/8', '– 1/8', '1–2', '1—1/8', '5/16/2', 'NaN', '1e999', '1e3', 'Infinity', '-Infinity', '∞', '+5', '1.2.3',
  '8 8', '8-', '8,5,1', '1.5/16', '/16', '5/', '3 ft', '3 in mm', '8 cm', 'in', '"', '.', ',', '0x10', '5-16', '8 constructor',
  '9'.repeat(400), `1/${'9'.repeat(400)}`,
])('refuses %j', (text) => {
  expect(() => parseLength(text, 'in')).toThrow(RangeError)
})

it('says what was typed, what is wrong with it and how to write it', () => {
  expect(() => parseLength('5/16 ft', 'in')).toThrow('"5/16 ft" is not a length: "ft" is not understood. Write it like 5/16, 1 1/8, .045 in or 8 mm.')
  expect(() => parseLength('1/0', 'in')).toThrow(/"1\/0".*divided by zero/)
  expect(() => parseLength('-3', 'mm')).toThrow(/"-3".*below zero/)
})

it.each([
  [7.9375, 16, '5/16 in'],
  [28.575, 16, '1 1/8 in'],
  [50.8, 16, '2 in'],
  [0, 64, '0 in'],
  [25.4 / 64, 64, '1/64 in'],
  [25.4 / 64, 16, '0 in'],
  [25.4 * 0.9999, 64, '1 in'],
  [-25.4 / 32, 32, '-1/32 in'],
  [-0.01, 16, '0 in'],
] as const)('writes %d mm in steps of 1/%d in as %s', (value, denominator, expected) => {
  expect(formatLength(mm(value), { unit: 'in', denominator })).toBe(expected)
})

it.each([[7.9375, 1, '7.9 mm'], [8, 0, '8 mm'], [0.25, 2, '0.25 mm'], [-0.04, 1, '0.0 mm'], [-1.24, 1, '-1.2 mm']] as const)('writes %d mm with %d decimals as %s', (value, digits, expected) => {
  expect(formatLength(mm(value), { unit: 'mm', digits })).toBe(expected)
})

it.each([Number.NaN, Infinity, -Infinity])('never writes %d as a length', (value) => {
  expect(() => formatLength(mm(value), { unit: 'in', denominator: 16 })).toThrow(RangeError)
  expect(() => formatLength(mm(value), { unit: 'mm', digits: 1 })).toThrow(RangeError)
})

it('refuses decimals that make no sense', () => {
  expect(() => formatLength(mm(1), { unit: 'mm', digits: -1 })).toThrow(RangeError)
  expect(() => formatLength(mm(1), { unit: 'mm', digits: 1.5 })).toThrow(RangeError)
})

it('returns to the same size for every 1/64 in up to 12 in', () => {
  for (let steps = 0; steps <= 12 * 64; steps += 1) {
    const size = fromInches(steps / 64)
    const text = formatLength(size, { unit: 'in', denominator: 64 })
    expect(parseLength(text, 'mm'), text).toBeCloseTo(size, 9)
    expect(formatLength(parseLength(text, 'mm'), { unit: 'in', denominator: 64 })).toBe(text)
  }
})

it('returns to the same size for every 0.1 mm up to 300 mm', () => {
  for (let tenths = 0; tenths <= 3000; tenths += 1) {
    const text = formatLength(mm(tenths / 10), { unit: 'mm', digits: 1 })
    expect(parseLength(text, 'in'), text).toBe(tenths / 10)
    expect(formatLength(parseLength(text, 'in'), { unit: 'mm', digits: 1 })).toBe(text)
  }
})

it('turns inches into millimetres and back', () => {
  expect(toInches(fromInches(5 / 16))).toBe(5 / 16)
})

it('does not take a bare number for a length', () => {
  // @ts-expect-error a number without a unit is not a length
  const size: Millimetres = 8
  expect(size).toBe(8)
})

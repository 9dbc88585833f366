// Outside: fraction.js 5.3.4 (exact rational arithmetic, written for general use) as a second opinion on every inch fraction;
// decimal equivalents as printed on shop charts and in ASME B94.11M's table of fractional drill sizes (recalled; checked by 25.4 mm = 1 in).
import Fraction from 'fraction.js'
import { expect, it } from 'vitest'
import { formatLength, parseLength } from '@/lib/units/length'

it('agrees with fraction.js on every sixty-fourth up to 12 in', () => {
  for (let steps = 1; steps <= 12 * 64; steps += 1) {
    const exact = new Fraction(steps, 64)
    const text = exact.toFraction(true) // '1 1/8'
    expect(parseLength(text, 'in'), text).toBeCloseTo(exact.mul('25.4').valueOf(), 9)
    expect(formatLength(parseLength(text, 'in'), { unit: 'in', denominator: 64 })).toBe(`${text} in`)
  }
})

it('agrees with fraction.js on decimals as typed', () => {
  for (let thousandths = 1; thousandths <= 2000; thousandths += 1) {
    const text = (thousandths / 1000).toFixed(3)
    expect(parseLength(text, 'in'), text).toBeCloseTo(new Fraction(text).mul('25.4').valueOf(), 9)
    expect(parseLength(text.replace('.', ','), 'mm'), text).toBe(new Fraction(text).valueOf())
  }
})

it.each([
  ['1/64', '0.015625', 0.396875],
  ['1/32', '0.03125', 0.79375],
  ['3/64', '0.046875', 1.190625],
  ['1/16', '0.0625', 1.5875],
  ['5/64', '0.078125', 1.984375],
  ['3/32', '0.09375', 2.38125],
  ['1/8', '0.125', 3.175],
  ['5/32', '0.15625', 3.96875],
  ['3/16', '0.1875', 4.7625],
  ['1/4', '0.25', 6.35],
  ['5/16', '0.3125', 7.9375],
  ['3/8', '0.375', 9.525],
  ['1/2', '0.5', 12.7],
  ['3/4', '0.75', 19.05],
  ['63/64', '0.984375', 25.003125],
])('%s in, %s in and %d mm are one size on a decimal-equivalents chart', (fraction, decimal, millimetres) => {
  expect(parseLength(fraction, 'in')).toBeCloseTo(millimetres, 9)
  expect(parseLength(decimal, 'in')).toBeCloseTo(millimetres, 9)
})

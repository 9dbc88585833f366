import fc from 'fast-check'
import { expect, it } from 'vitest'
import { formatLength, mm, parseLength, type InchDenominator } from '@/lib/units/length'

it('either reads a length of zero or more, or throws a RangeError, whatever is typed', () => {
  const typed = fc.oneof(
    fc.string({ unit: fc.constantFrom(...'0123456789 ./,-"⅜″inmce'), maxLength: 14 }),
    fc.string({ unit: 'grapheme', maxLength: 60 }),
  )
  fc.assert(fc.property(typed, fc.constantFrom('in' as const, 'mm' as const), (text, unit) => {
    try {
      const value = parseLength(text, unit)
      expect(Number.isFinite(value) && value >= 0).toBe(true)
    } catch (error) {
      expect(error).toBeInstanceOf(RangeError)
    }
  }), { numRuns: 2000 })
})

it('rounds to the nearest step of the rule, never further', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), fc.constantFrom<InchDenominator>(16, 32, 64), (value, denominator) => {
    const shown = parseLength(formatLength(mm(value), { unit: 'in', denominator }), 'in')
    expect(Math.abs(shown - value)).toBeLessThanOrEqual(25.4 / denominator / 2 + 1e-9)
  }))
})

it('writes fractions that cannot be reduced further', () => {
  fc.assert(fc.property(fc.integer({ min: 1, max: 12 * 64 }), (steps) => {
    const fraction = /(\d+)\/(\d+)/.exec(formatLength(mm((steps * 25.4) / 64), { unit: 'in', denominator: 64 }))
    if (!fraction) return
    expect(Number(fraction[1]) % 2, 'a numerator over a power of two is odd').toBe(1)
    expect(Number(fraction[1])).toBeLessThan(Number(fraction[2]))
  }))
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { uuidV7 } from '@/lib/interchange/uuid-v7'
import { uuid } from '@/lib/schemas/field'

const bytes = fc.uint8Array({ minLength: 10, maxLength: 10 })
/** Moments up to the year 10889, where 48 bits of milliseconds end. */
const moment = fc.integer({ min: 0, max: 2 ** 48 - 1 })

describe('an id', () => {
  it('is the example of RFC 9562, appendix A.6, made from its parts', () => {
    // unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F; the bits of version and variant are overwritten.
    expect(uuidV7(0x017f22e279b0, Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]))).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
  })

  it('is a UUID that the forms take, of version 7 and the RFC’s variant, whatever the random bytes', () => {
    fc.assert(fc.property(moment, bytes, (ms, random) => {
      const id = uuidV7(ms, random)
      return uuid.safeParse(id).success && id[14] === '7' && '89ab'.includes(id[19]!)
    }))
  })

  it('tells when it was made', () => {
    fc.assert(fc.property(moment, bytes, (ms, random) => Number.parseInt(uuidV7(ms, random).replace('-', '').slice(0, 12), 16) === ms))
  })

  it('sorts as text in the order of time', () => {
    fc.assert(fc.property(moment, moment, bytes, bytes, (a, b, one, two) => a === b || (uuidV7(a, one) < uuidV7(b, two)) === a < b))
  })

  it('differs when the random bytes differ, in all 74 bits that are free', () => {
    const zero = new Uint8Array(10)
    const ids = new Set([uuidV7(1, zero)])
    for (let bit = 0; bit < 80; bit += 1) ids.add(uuidV7(1, zero.with(bit >> 3, 1 << (bit & 7))))
    expect(ids.size).toBe(1 + 74)
  })

  it('does not use up or change the bytes it was given', () => {
    const random = Uint8Array.from({ length: 10 }, (_, index) => index + 200)
    uuidV7(1, random)
    expect([...random]).toEqual(Array.from({ length: 10 }, (_, index) => index + 200))
  })

  it('is not made of too few random bytes', () => {
    expect(() => uuidV7(1, new Uint8Array(9))).toThrow(RangeError)
  })

  it.each([-1, 2 ** 48, Number.NaN, Number.POSITIVE_INFINITY, 1.5])('is not made at a moment that does not fit: %d', (ms) => {
    expect(() => uuidV7(ms, new Uint8Array(10))).toThrow(RangeError)
  })
})

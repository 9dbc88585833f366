import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { uuidV7 } from '@/lib/interchange/uuid-v7'
import { isReadTwice } from '@/lib/scoring/second-read'

const share = fc.double({ min: 0, max: 1, noNaN: true })

/** Ids as a class makes them in one evening: a few seconds apart, their chance part counting up. */
const evening = Array.from({ length: 20_000 }, (_, index) =>
  uuidV7(1_790_000_000_000 + index * 7_000, Uint8Array.from({ length: 10 }, (_each, place) => (index >> (place * 4)) & 0xff)))

describe('a coupon read twice', () => {
  it('is no coupon at a share of 0, and every coupon at 1', () => {
    fc.assert(fc.property(fc.uuid(), (id) => {
      expect(isReadTwice(id, 0)).toBe(false)
      expect(isReadTwice(id, 1)).toBe(true)
    }))
  })

  it('is the same at every asking, however the id is written', () => {
    fc.assert(fc.property(fc.uuid(), share, (id, part) => {
      expect(isReadTwice(id.toUpperCase(), part)).toBe(isReadTwice(id, part))
    }))
  })

  it('stays one when the share grows', () => {
    fc.assert(fc.property(fc.uuid(), share, share, (id, one, other) => {
      const [less, more] = [Math.min(one, other), Math.max(one, other)]
      expect(isReadTwice(id, less) && !isReadTwice(id, more)).toBe(false)
    }))
  })

  it.each([0.02, 0.1, 0.5, 0.9])('is about a share of %d of many ids, and of every stretch of them', (part) => {
    expect(new Set(evening).size).toBe(evening.length)
    const among = (ids: readonly string[]): number => ids.filter((id) => isReadTwice(id, part)).length / ids.length
    // Four standard deviations of a count by chance.
    const near = (count: number): number => 4 * Math.sqrt((part * (1 - part)) / count)
    expect(Math.abs(among(evening) - part)).toBeLessThan(near(evening.length))
    for (let from = 0; from < evening.length; from += 2_000) expect(Math.abs(among(evening.slice(from, from + 2_000)) - part)).toBeLessThan(near(2_000))
  })

  it.each([-0.1, 1.1, Number.NaN, Infinity])('is not asked with a share of %d', (part) => {
    expect(() => isReadTwice('0192f0c4-0000-7000-8000-000000000000', part)).toThrow(RangeError)
  })
})

import { describe, expect, it } from 'vitest'
import { inPages } from '@/lib/reports/in-pages'
import { drawQr } from '@/lib/reports/qr-drawing'
import { readQr } from '../../support/read-qr'

describe('a QR symbol', () => {
  it.each([10, 25, 40, 60, 80, 100, 120, 150, 178, 200])('of %i letters reads back as what went in', (length) => {
    const text = 'https://weld.example.org/learn/0123456789abcdef/'.repeat(5).slice(0, length)
    expect(readQr(drawQr(text))).toBe(text)
  })

  it('is not read when one of its modules is lost', () => {
    const { size, path } = drawQr('https://weld.example.org')
    const runs = path.split('z').filter(Boolean)
    const low = runs.findLastIndex((run) => Number(/^M(\d+)/.exec(run)?.[1]) > size / 2)
    expect(() => readQr({ size, path: runs.filter((_, i) => i !== low).join('z') })).toThrow('Reed-Solomon')
  })

  it('keeps four modules of paper free around it, as ISO/IEC 18004 asks', () => {
    const { size, path } = drawQr('https://weld.example.org')
    const places = [...path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(([, x, y, width]) => [Number(x), Number(y), Number(x) + Number(width)] as const)
    expect(Math.min(...places.map(([x]) => x))).toBe(4)
    expect(Math.min(...places.map(([, y]) => y))).toBe(4)
    expect(Math.max(...places.map(([, , end]) => end))).toBe(size - 4)
  })

  it('is refused without a text', () => expect(() => drawQr('')).toThrow(RangeError))
})

describe('pages', () => {
  it('hold so many each, the last what is left', () => expect(inPages([1, 2, 3, 4, 5], 2)).toEqual([[1, 2], [3, 4], [5]]))
  it('are none for nothing', () => expect(inPages([], 2)).toEqual([]))
  it('cannot hold none', () => expect(() => inPages([1], 0)).toThrow(RangeError))
})

import { expect, it } from 'vitest'
import { isoPositionOf, isoPositionsQualified } from '@/lib/qualification/iso-positions'
import { coversWork, positionsQualified } from '@/lib/qualification/positions'

it('forgives case and spaces', () => {
  expect(positionsQualified(' 3g + 4G ')).toEqual(positionsQualified('3G+4G'))
})

it('adds up whatever tests were passed', () => {
  expect(positionsQualified('2G+4F')).toEqual({ groove: ['F', 'H'], fillet: ['F', 'H', 'OH'] })
  expect(positionsQualified('4G+3G')).toEqual(positionsQualified('3G+4G'))
})

it.each(['6G', '5G', 'G3', '', '3G+', 'PF'])('refuses %j, which the plate table does not list', test => {
  expect(() => positionsQualified(test)).toThrow(RangeError)
})

it('hands out a fresh answer, so nobody can spoil the table', () => {
  positionsQualified('3G').groove.push('OH')
  expect(positionsQualified('3G').groove).toEqual(['F', 'H', 'V'])
})

const work = (type: 'groove' | 'fillet', position: 'F' | 'H' | 'V' | 'OH', progression: 'up' | 'down' | null = null) => ({ type, position, progression })

it('keeps horizontal groove work from a welder with only an overhead groove test', () => {
  const overhead = [{ test: '4G', progression: null }]
  expect(coversWork(overhead, work('groove', 'H'))).toEqual({ covered: false, reasons: ['position-not-covered'] })
  expect(coversWork(overhead, work('fillet', 'H'))).toEqual({ covered: true, reasons: [] })
})

it.each([
  ['up', 'up', true, []],
  ['down', 'down', true, []],
  ['up', 'down', false, ['progression-differs']],
  ['down', 'up', false, ['progression-differs']],
  [null, 'up', false, ['progression-unknown']],
  ['up', null, false, ['progression-unknown']],
] as const)('a vertical test welded %s for vertical work welded %s: %s', (tested, wanted, covered, reasons) => {
  expect(coversWork([{ test: '3G', progression: tested }], work('groove', 'V', wanted))).toEqual({ covered, reasons })
})

it('asks no progression of flat work covered by a vertical test', () => {
  expect(coversWork([{ test: '3G', progression: null }], work('groove', 'F')).covered).toBe(true)
})

it('covers both ways when both were tested', () => {
  const both = [{ test: '3F', progression: 'up' }, { test: '3F', progression: 'down' }] as const
  expect(coversWork(both, work('fillet', 'V', 'down')).covered).toBe(true)
  expect(coversWork(both, work('fillet', 'V', 'up')).covered).toBe(true)
})

it('covers nothing without a test', () => {
  expect(coversWork([], work('fillet', 'F'))).toEqual({ covered: false, reasons: ['position-not-covered'] })
})

it('refuses an ISO position that does not exist or that the weld is never tested in', () => {
  expect(() => isoPositionsQualified('PX', 'butt')).toThrow(RangeError)
  expect(() => isoPositionsQualified('PB', 'butt')).toThrow(RangeError)
  expect(() => isoPositionsQualified('H-L045', 'fillet')).toThrow(RangeError)
})

it('names the source of every ISO row it used once', () => {
  expect(isoPositionsQualified('PA+PB', 'fillet').sources).toHaveLength(1)
  expect(isoPositionsQualified('PA+PD', 'fillet').sources).toHaveLength(2)
})

it('does not guess a progression when naming a vertical position', () => {
  expect(() => isoPositionOf('3G', null)).toThrow(RangeError)
  expect(() => isoPositionOf('6G', null)).toThrow(RangeError)
})

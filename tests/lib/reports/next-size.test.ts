import { expect, it } from 'vitest'
import { nextSizeToFill, sizesFilled } from '@/lib/reports/next-size'

const boxes = ['width', 'legA'] as const
const stations = (...rows: readonly [string, string][]) => rows.map(([width, legA]) => ({ width, legA }))

it('begins at the first empty box', () => {
  expect(nextSizeToFill(stations(['', ''], ['', '']), boxes, null)).toEqual({ station: 0, box: 'width' })
  expect(nextSizeToFill(stations(['7/16', ''], ['', '']), boxes, null)).toEqual({ station: 1, box: 'width' })
})

it('goes along the weld with one size, then on to the next size', () => {
  const rows = stations(['7/16', ''], ['7/16', ''], ['7/16', ''])
  expect(nextSizeToFill(rows, boxes, { station: 2, box: 'width' })).toEqual({ station: 0, box: 'legA' })
  expect(nextSizeToFill(rows, boxes, { station: 0, box: 'legA' })).toEqual({ station: 1, box: 'legA' })
})

it('jumps over boxes that hold something, and comes back for what was passed over', () => {
  expect(nextSizeToFill(stations(['1', '1'], ['', '1'], ['', '1']), boxes, { station: 1, box: 'width' })).toEqual({ station: 2, box: 'width' })
  expect(nextSizeToFill(stations(['', '1'], ['1', '1']), boxes, { station: 1, box: 'legA' })).toEqual({ station: 0, box: 'width' })
})

it('takes spaces for nothing', () => {
  expect(nextSizeToFill(stations([' ', '1']), boxes, null)).toEqual({ station: 0, box: 'width' })
})

it('is done when every other box holds something, and with no stations at all', () => {
  expect(nextSizeToFill(stations(['1', '2']), boxes, { station: 0, box: 'legA' })).toBeNull()
  expect(nextSizeToFill(stations(['1', '']), boxes, { station: 0, box: 'legA' })).toBeNull()
  expect(nextSizeToFill([], boxes, null)).toBeNull()
})

it('visits every box once and stops', () => {
  let rows = stations(['', ''], ['', ''], ['', ''])
  const visited: string[] = []
  for (let place = nextSizeToFill(rows, boxes, null); place !== null; place = nextSizeToFill(rows, boxes, place)) {
    const { station, box } = place
    visited.push(`${box} ${station}`)
    rows = rows.map((row, at) => (at === station ? { ...row, [box]: '1' } : row))
  }
  expect(visited).toEqual(['width 0', 'width 1', 'width 2', 'legA 0', 'legA 1', 'legA 2'])
  expect(sizesFilled(rows, boxes)).toEqual({ filled: 6, of: 6 })
})

it('counts what is filled', () => {
  expect(sizesFilled(stations(['1', ''], [' ', '2']), boxes)).toEqual({ filled: 2, of: 4 })
})

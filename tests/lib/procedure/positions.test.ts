import { expect, it } from 'vitest'
import { awsPositions, isoPosition, POSITION_TABLE, positionRows } from '@/lib/procedure/positions'

it('leads from every AWS row to its ISO code and back', () => {
  for (const row of POSITION_TABLE) {
    expect(isoPosition(row.aws, row.progression)).toBe(row.iso)
    if (row.iso !== null) expect(awsPositions(row.iso)).toContainEqual(row)
  }
})

it('asks which way a vertical is welded when that decides', () => {
  expect(() => isoPosition('3F', null)).toThrow(/welded up and another welded down/)
  expect(positionRows('3f').map((row) => row.welds)).toEqual([['V-up'], ['V-down']])
  expect(isoPosition('2G', null)).toBe('PC')
})

it('takes a progression on a position that has none for what it is: nothing to decide', () => {
  expect(positionRows('4F', 'up')).toHaveLength(1)
})

it.each(['7G', '', 'PA', '3'])('does not know the test position %j', (text) => {
  expect(() => positionRows(text)).toThrow(RangeError)
})

it('does not know a made-up ISO code', () => {
  expect(() => awsPositions('PK')).toThrow(RangeError)
  expect(awsPositions('pa').map((row) => row.aws)).toEqual(['1G', '1F'])
})

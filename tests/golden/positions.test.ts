// Outside source: AWS D1.1/D1.1M:2020, Table 6.10 "Welder and Welding Operator Qualification", plate rows, read in a stored copy
// of the table's text. The ISO rows: range summary of DIN EN ISO 9606-1:2013-12 (secondary) and, where marked, memory.
import { describe, expect, it } from 'vitest'
import { isoPositionOf, isoPositionsQualified } from '@/lib/qualification/iso-positions'
import { positionsQualified } from '@/lib/qualification/positions'

describe('plate tests by AWS D1.1/D1.1M:2020 Table 6.10', () => {
  it.each([
    ['1G', 'F', 'F H'],
    ['2G', 'F H', 'F H'],
    ['3G', 'F H V', 'F H V'],
    ['4G', 'F OH', 'F H OH'], // the row study pages get wrong: no horizontal groove, yet horizontal fillet
    ['3G+4G', 'F H V OH', 'F H V OH'],
    ['1F', '', 'F'],
    ['2F', '', 'F H'],
    ['3F', '', 'F H V'],
    ['4F', '', 'F H OH'],
    ['3F+4F', '', 'F H V OH'],
  ])('%s covers groove [%s] and fillet [%s]', (test, groove, fillet) => {
    expect(positionsQualified(test, 'us-structural')).toEqual({
      groove: groove.split(' ').filter(Boolean),
      fillet: fillet.split(' ').filter(Boolean),
    })
  })
})

describe('butt tests by ISO 9606-1 (range summary of the 2013 edition, secondary)', () => {
  it.each([
    ['PA', 'PA'], ['PC', 'PA PC'], ['PE', 'PA PC PE'], ['PF', 'PA PF'], ['PG', 'PG'],
    ['PH', 'PA PE PF PH'], ['PJ', 'PA PE PG PJ'],
    ['H-L045', 'PA PC PE PF PH H-L045'], ['J-L045', 'PA PC PE PG PJ J-L045'],
  ])('%s covers %s', (test, covered) => {
    expect(isoPositionsQualified(test, 'butt').positions).toEqual(covered.split(' '))
  })

  it('lets two pipe tests stand for the inclined pipe, and two plate tests not', () => {
    expect(isoPositionsQualified('PC+PH', 'butt', { pipe: true }).positions).toContain('H-L045')
    expect(isoPositionsQualified('PC+PJ', 'butt', { pipe: true }).positions).toContain('J-L045')
    expect(isoPositionsQualified('PC+PH', 'butt', { pipe: true }).positions).not.toContain('J-L045')
    expect(isoPositionsQualified('PC+PH', 'butt').positions).not.toContain('H-L045')
  })
})

describe('fillet tests by ISO 9606-1', () => {
  it.each([
    ['PA', 'PA', 'secondary'], ['PB', 'PA PB', 'secondary'], // range summary; PB also in a designation example
    // from memory from here on
    ['PC', 'PA PB PC', 'memory'], ['PD', 'PA PB PC PD PE', 'memory'], ['PE', 'PA PB PC PD PE', 'memory'],
    ['PF', 'PA PB PF', 'memory'], ['PG', 'PG', 'memory'],
    ['PH', 'PA PB PC PD PE PF PH', 'memory'], ['PJ', 'PA PB PC PD PE PG PJ', 'memory'],
  ])('%s covers %s (%s)', (test, covered, status) => {
    const { positions, sources } = isoPositionsQualified(test, 'fillet')
    expect(positions).toEqual(covered.split(' '))
    expect(sources.map(source => source.status)).toEqual([status])
  })
})

describe('position names, BS 499 and ISO 6947 sheet (secondary)', () => {
  it.each([
    ['1G', null, 'PA'], ['1F', null, 'PA'], ['2F', null, 'PB'], ['2G', null, 'PC'], ['4F', null, 'PD'], ['4G', null, 'PE'],
    ['3G', 'up', 'PF'], ['3F', 'up', 'PF'], ['3G', 'down', 'PG'], ['3F', 'down', 'PG'],
  ] as const)('%s welded %s is %s', (position, progression, iso) => {
    expect(isoPositionOf(position, progression)).toBe(iso)
  })
})

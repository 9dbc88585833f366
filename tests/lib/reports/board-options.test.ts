import { describe, expect, it } from 'vitest'
import { BOARD_DEFAULTS, boardAddress, boothShown, orderOf, readBoardOptions, sortBoard } from '@/lib/reports/board-options'

describe('the settings in an address', () => {
  it('are the defaults where it names none', () => {
    expect(readBoardOptions({})).toEqual(BOARD_DEFAULTS)
    expect(boardAddress('/board', BOARD_DEFAULTS)).toBe('/board')
  })
  it('come back as they went out', () => {
    const options = { sort: 'chance', process: 'GMAW', exercise: 'e1', fromBooth: 2, toBooth: 9, queue: 'booth', startBooth: 5, projector: false } as const
    const query = Object.fromEntries(new URL(boardAddress('/board', options), 'http://none').searchParams)
    expect(readBoardOptions(query)).toEqual(options)
  })
  it('count for nothing where they are wrong, and the first counts where one is named twice', () => {
    expect(readBoardOptions({ sort: 'worst', process: 'TIG', from: '-1', to: '2.5', queue: 'newest', start: '99999', show: 'all', exercise: '' })).toEqual(BOARD_DEFAULTS)
    expect(readBoardOptions({ from: ['3', '4'] }).fromBooth).toBe(3)
  })
  it('sort by chance only within one exercise, and on a projector only by booth', () => {
    expect(readBoardOptions({ sort: 'chance' }).sort).toBe('booth')
    expect(readBoardOptions({ sort: 'chance', exercise: 'e1' }).sort).toBe('chance')
    for (const sort of ['chance', 'name', 'last']) expect(readBoardOptions({ sort, exercise: 'e1', show: 'projector' }).sort).toBe('booth')
  })
  it('keep the projector while something else is changed', () => {
    const options = readBoardOptions({ show: 'projector', queue: 'booth', start: '4' })
    expect(boardAddress('/board', options, { exercise: 'e1' })).toBe('/board?exercise=e1&queue=booth&start=4&show=projector')
    expect(orderOf(options)).toEqual({ by: 'booth', from: 4 })
    expect(orderOf({ ...options, startBooth: null })).toEqual({ by: 'booth', from: 0 })
    expect(orderOf(BOARD_DEFAULTS)).toEqual({ by: 'oldest' })
  })
})

describe('the rows', () => {
  it('of some booths leave out the others and whoever has none', () => {
    const shown = (fromBooth: number | null, toBooth: number | null) => [1, 3, 5, null].filter((booth) => boothShown(booth, { ...BOARD_DEFAULTS, fromBooth, toBooth }))
    expect(shown(null, null)).toEqual([1, 3, 5, null])
    expect(shown(3, null)).toEqual([3, 5])
    expect(shown(null, 3)).toEqual([1, 3])
    expect(shown(3, 3)).toEqual([3])
  })
  it('come in the order asked for', () => {
    const row = (familyName: string, booth: number | null, day: number | null, chance: number | null) =>
      ({ familyName, givenName: 'A', booth, chance, lastCoupon: day === null ? null : new Date(Date.UTC(2026, 9, day)) })
    const rows = [row('Dunn', 2, 9, 0.4), row('Abara', null, 3, null), row('Cole', 1, null, 0.9), row('Berg', 3, 5, 0.1)]
    const names = (sort: Parameters<typeof sortBoard>[1]) => sortBoard(rows, sort).map(({ familyName }) => familyName)
    expect(names('booth')).toEqual(['Cole', 'Dunn', 'Berg', 'Abara'])
    expect(names('name')).toEqual(['Abara', 'Berg', 'Cole', 'Dunn'])
    expect(names('last')).toEqual(['Cole', 'Abara', 'Berg', 'Dunn'])
    expect(names('chance')).toEqual(['Berg', 'Dunn', 'Cole', 'Abara'])
  })
})

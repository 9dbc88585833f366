import { describe, expect, it } from 'vitest'
import { queueOrder } from '@/lib/reports/queue-order'

const row = (name: string, booth: number | null, minute: number) => ({ name, booth, since: new Date(minute * 60_000) })
const rows = [row('seven', 7, 1), row('two', 2, 5), row('none', null, 0), row('four late', 4, 9), row('four', 4, 3), row('nine', 9, 2)]
const names = (order: Parameters<typeof queueOrder>[1]) => queueOrder(rows, order).map(({ name }) => name)

describe('what waits', () => {
  it('comes longest waiting first', () => {
    expect(names({ by: 'oldest' })).toEqual(['none', 'seven', 'nine', 'four', 'two', 'four late'])
  })
  it('comes booth by booth on from the chosen one, then round again, and without a booth last', () => {
    expect(names({ by: 'booth', from: 4 })).toEqual(['four', 'four late', 'seven', 'nine', 'two', 'none'])
    expect(names({ by: 'booth', from: 5 })).toEqual(['seven', 'nine', 'two', 'four', 'four late', 'none'])
    expect(names({ by: 'booth', from: 10 })).toEqual(['two', 'four', 'four late', 'seven', 'nine', 'none'])
  })
  it('leaves the list it was given as it was', () => {
    names({ by: 'booth', from: 4 })
    expect(rows[0]?.name).toBe('seven')
  })
  it.each([Number.NaN, 2.5])('cannot start from booth %s', (from) => {
    expect(() => queueOrder(rows, { by: 'booth', from })).toThrow(new RangeError(`The booth to start from must be a whole number, not ${from}.`))
  })
})

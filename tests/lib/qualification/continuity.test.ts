import { expect, it } from 'vitest'
import { continuityDue, firstGap } from '@/lib/qualification/continuity'

const day = (text: string) => new Date(`${text}T00:00:00Z`)
const used = (text: string, process = 'FCAW-S') => ({ process, on: day(text) })

it('knows nothing of a process never used', () => {
  expect(continuityDue([], 'SMAW', day('2026-01-01'))).toBeNull()
  expect(continuityDue([used('2026-01-01', 'GMAW')], 'SMAW', day('2026-02-01'))).toBeNull()
})

it('takes the latest use, in whatever order they were written down', () => {
  const uses = [used('2026-03-01'), used('2026-05-20'), used('2025-11-02')]
  expect(continuityDue(uses, 'FCAW-S', day('2026-06-01'))?.lastUse).toEqual(day('2026-05-20'))
})

it('ignores uses that have not happened yet', () => {
  const uses = [used('2026-01-15'), used('2026-08-01')]
  expect(continuityDue(uses, 'FCAW-S', day('2026-07-20'))).toEqual({ lastUse: day('2026-01-15'), dueBy: day('2026-07-15'), lapsed: true })
  expect(continuityDue([used('2026-08-01')], 'FCAW-S', day('2026-07-20'))).toBeNull()
})

it('keeps self-shielded and gas-shielded wire apart, and forgives spelling', () => {
  expect(continuityDue([used('2026-01-15', 'FCAW-G')], 'FCAW-S', day('2026-02-01'))).toBeNull()
  expect(continuityDue([used('2026-01-15', ' fcaw-s ')], 'FCAW-S', day('2026-02-01'))).not.toBeNull()
})

it('counts days, not hours: late on the due day is still in time', () => {
  const morning = [{ process: 'SMAW', on: new Date('2026-01-15T06:00:00Z') }]
  expect(continuityDue(morning, 'SMAW', new Date('2026-07-15T23:00:00Z'))?.lapsed).toBe(false)
  expect(continuityDue(morning, 'SMAW', new Date('2026-07-16T00:30:00Z'))?.lapsed).toBe(true)
})

it('does not change the list it was given', () => {
  const uses = [used('2026-03-01'), used('2025-11-02')]
  continuityDue(uses, 'FCAW-S', day('2026-06-01'))
  expect(uses.map(use => use.on)).toEqual([day('2026-03-01'), day('2025-11-02')])
})

it('refuses a date that is not one', () => {
  expect(() => continuityDue([{ process: 'SMAW', on: new Date('soon') }], 'SMAW', day('2026-01-01'))).toThrow(RangeError)
  expect(() => continuityDue([], 'SMAW', new Date(NaN))).toThrow(RangeError)
})

it('finds no gap in a record kept every half year', () => {
  const uses = [used('2025-06-30'), used('2025-12-30')]
  expect(firstGap(day('2025-01-01'), uses, 'FCAW-S', day('2026-06-30'))).toBeNull()
})

it('finds the first gap even when the welder took the process up again later', () => {
  const uses = [used('2025-03-01'), used('2025-09-02'), used('2026-01-01')]
  expect(firstGap(day('2025-01-01'), uses, 'FCAW-S', day('2026-02-01'))).toEqual({ from: day('2025-03-01'), lapsedAfter: day('2025-09-01') })
})

it('counts from the qualification, not from uses before it', () => {
  const uses = [used('2020-01-01')]
  expect(firstGap(day('2025-01-01'), uses, 'FCAW-S', day('2025-07-01'))).toBeNull()
  expect(firstGap(day('2025-01-01'), uses, 'FCAW-S', day('2025-07-02'))).toEqual({ from: day('2025-01-01'), lapsedAfter: day('2025-07-01') })
})

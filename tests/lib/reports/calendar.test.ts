import { describe, expect, it } from 'vitest'
import { calendarDay, dayOfDate, localDate } from '@/lib/reports/calendar'

const DAY_MS = 24 * 3600 * 1000
const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS

describe('a calendar day', () => {
  it('is counted from 1970-01-01', () => {
    expect(calendarDay(new Date(0), 'UTC')).toBe(0)
    expect(calendarDay(new Date('2026-11-25T12:00:00Z'), 'UTC')).toBe(20782)
  })

  it.each([
    ['2026-11-20T03:30:00Z', 'America/Chicago', '2026-11-19'], ['2026-11-20T03:30:00Z', 'Europe/London', '2026-11-20'], ['2026-11-20T18:20:00Z', 'Asia/Kathmandu', '2026-11-21'],
    ['2026-11-20T18:14:59Z', 'Asia/Kathmandu', '2026-11-20'], ['2026-12-31T23:59:59Z', 'Pacific/Kiritimati', '2027-01-01'], ['2028-02-29T12:00:00Z', 'UTC', '2028-02-29'],
  ])('%s is in %s the %s', (moment, zone, date) => {
    expect(localDate(new Date(moment), zone)).toBe(date)
    expect(calendarDay(new Date(moment), zone)).toBe(dayOf(date))
  })

  it('changes at the place’s own midnight, when the clocks change too', () => {
    // 2026-03-08 and 2026-11-01: the clocks of Chicago change at 2 in the morning; those days have 23 and 25 hours.
    for (const [from, to, hours] of [['2026-03-08T06:00:00Z', '2026-03-09T05:00:00Z', 23], ['2026-11-01T05:00:00Z', '2026-11-02T06:00:00Z', 25]] as const) {
      const day = calendarDay(new Date(from), 'America/Chicago')
      expect((Date.parse(to) - Date.parse(from)) / 3_600_000).toBe(hours)
      expect([calendarDay(new Date(Date.parse(from) - 1), 'America/Chicago'), calendarDay(new Date(Date.parse(to) - 1), 'America/Chicago'), calendarDay(new Date(to), 'America/Chicago')]).toEqual([day - 1, day, day + 1])
    }
  })

  it('is one for a whole evening class that runs past midnight in London', () => {
    expect(calendarDay(new Date('2026-11-19T23:30:00Z'), 'America/Chicago')).toBe(calendarDay(new Date('2026-11-20T03:00:00Z'), 'America/Chicago'))
  })

  it('is not told for a zone nobody keeps', () => {
    expect(() => calendarDay(new Date(0), 'Mars/Olympus')).toThrow(RangeError)
  })
})

it('a date column is its own day, before 1970 too', () => {
  expect([dayOfDate(new Date('2026-11-25')), dayOfDate(new Date('1970-01-01')), dayOfDate(new Date('1969-12-31'))]).toEqual([20782, 0, -1])
})

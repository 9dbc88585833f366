// Outside source: AWS D1.1:2015 clause 4.2.3.1 as quoted on the AWS forum (secondary): good until the process has not been used for
// more than six months. AWS interpretation D1.1-06-I08b (confirmed): welding with the process, whatever the metal or code.
// The calendar behind "six months" is ours: same day of the month, or the month's last day.
import { describe, expect, it } from 'vitest'
import { continuityDue } from '@/lib/qualification/continuity'

const day = (text: string) => new Date(`${text}T00:00:00Z`)
const used = (text: string, process = 'FCAW-S') => ({ process, on: day(text) })

describe('six calendar months after the last use', () => {
  it.each([
    ['2026-01-15', '2026-07-15'],
    ['2025-08-31', '2026-02-28'],
    ['2027-08-31', '2028-02-29'], // a leap year
    ['2026-03-31', '2026-09-30'],
    ['2026-02-28', '2026-08-28'], // the end of a short month is not pulled to the end of a long one
    ['2025-12-31', '2026-06-30'],
    ['2026-07-04', '2027-01-04'],
  ])('used on %s, due by %s', (last, due) => {
    const answer = continuityDue([used(last)], 'FCAW-S', day(last))
    expect(answer).toEqual({ lastUse: day(last), dueBy: day(due), lapsed: false })
  })
})

it('holds on the due day and lapses the day after', () => {
  expect(continuityDue([used('2026-01-15')], 'FCAW-S', day('2026-07-15'))?.lapsed).toBe(false)
  expect(continuityDue([used('2026-01-15')], 'FCAW-S', day('2026-07-16'))?.lapsed).toBe(true)
})

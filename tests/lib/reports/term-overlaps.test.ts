import { expect, it } from 'vitest'
import { overlapping } from '@/lib/reports/term-overlaps'

const term = (startsOn: string, endsOn: string) => ({ startsOn: new Date(startsOn), endsOn: new Date(endsOn) })
const fall = term('2026-08-24', '2026-12-18')

it.each([
  ['one day at its end', term('2026-12-18', '2027-01-08'), 1],
  ['one day at its start', term('2026-06-01', '2026-08-24'), 1],
  ['all of it', term('2026-01-01', '2026-12-31'), 1],
  ['a part of it', term('2026-10-01', '2026-10-02'), 1],
  ['nothing, from the day after', term('2026-12-19', '2027-01-08'), 0],
  ['nothing, to the day before', term('2026-06-01', '2026-08-23'), 0],
])('another term that shares %s', (_what, other, count) => {
  expect(overlapping(fall, [other])).toHaveLength(count)
  expect(overlapping(other, [fall])).toHaveLength(count)
})

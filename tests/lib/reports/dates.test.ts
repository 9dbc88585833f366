import { describe, expect, it } from 'vitest'
import { dateText, momentText } from '@/lib/reports/dates'

/** The evening of the 24th in Chicago, the morning of the 25th in Kathmandu, where these tests run. */
const EVENING = new Date('2026-11-25T01:05:00Z')
/** Spaces that do not break are spaces to a reader. */
const plain = (text: string): string => text.replace(/\s/g, ' ')

describe('a date', () => {
  it('is that of the program’s place, in the reader’s language', () => {
    expect(plain(dateText(EVENING, 'en', 'America/Chicago'))).toBe('Nov 24, 2026')
    expect(plain(dateText(EVENING, 'en', 'Asia/Kathmandu'))).toBe('Nov 25, 2026')
    expect(plain(dateText(EVENING, 'es', 'America/Chicago'))).toBe('24 nov 2026')
  })

  it('with its time is the place’s clock', () => {
    expect(plain(momentText(EVENING, 'en', 'America/Chicago'))).toBe('Nov 24, 7:05 PM')
    expect(plain(momentText(EVENING, 'es', 'America/Chicago'))).toMatch(/^24 nov, 7:05 p\.\s?m\.$/)
  })

  it('is not told for a moment that is none, or a zone nobody keeps', () => {
    expect(() => dateText(new Date(Number.NaN), 'en', 'UTC')).toThrow(RangeError)
    expect(() => momentText(EVENING, 'en', 'Mars/Olympus')).toThrow(RangeError)
  })
})

const MS_PER_DAY = 24 * 3600 * 1000
const formats = new Map<string, Intl.DateTimeFormat>()

function formatFor(timeZone: string): Intl.DateTimeFormat {
  const made = formats.get(timeZone) ?? new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
  formats.set(timeZone, made)
  return made
}

/** The calendar date at the program's place, as YYYY-MM-DD. @throws RangeError for an unknown time zone */
export function localDate(at: Date, timeZone: string): string {
  return formatFor(timeZone).format(at)
}

/** The count of calendar days since 1970-01-01 at the program's place: two coupons of one evening share a day. */
export function calendarDay(at: Date, timeZone: string): number {
  return Math.round(Date.parse(`${localDate(at, timeZone)}T00:00:00Z`) / MS_PER_DAY)
}

/** The calendar day of a date column (a date without time, stored as midnight UTC). */
export function dayOfDate(date: Date): number {
  return Math.floor(date.getTime() / MS_PER_DAY)
}

import { localDate } from '@/lib/reports/calendar'

/** Where the invented school is; its classes keep this clock. */
export const TIME_ZONE = 'America/Chicago'

const MINUTE_MS = 60_000
const DAY_MS = 24 * 60 * MINUTE_MS

export const minutesLater = (at: Date, minutes: number): Date => new Date(at.getTime() + Math.round(minutes * MINUTE_MS))
export const minutesBetween = (from: Date, to: Date): number => (to.getTime() - from.getTime()) / MINUTE_MS

/** A calendar date as YYYY-MM-DD. */
export const dateOf = (at: Date): string => localDate(at, TIME_ZONE)
/** A date column's value: midnight UTC. */
export const dateColumn = (date: string): Date => new Date(`${date}T00:00:00Z`)
export const daysLater = (date: string, days: number): string => new Date(dateColumn(date).getTime() + days * DAY_MS).toISOString().slice(0, 10)
/** 0 is Sunday. */
export const weekdayOf = (date: string): number => dateColumn(date).getUTCDay()

const clock = new Intl.DateTimeFormat('en-GB', { timeZone: TIME_ZONE, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })

/** Minutes since midnight on the school's clock. */
export function minuteOfDay(at: Date): number {
  const [hours, minutes] = clock.format(at).split(':').map(Number)
  return (hours ?? 0) * 60 + (minutes ?? 0)
}

/** The moment when the school's clock shows `minute` on `date`. In an hour that the clock skips, the hour after it. */
export function atSchool(date: string, minute: number): Date {
  const wanted = dateColumn(date).getTime() + minute * MINUTE_MS
  let guess = wanted
  // The second round matters on the days when the clock changes.
  for (let round = 0; round < 2; round++) {
    const shown = dateColumn(dateOf(new Date(guess))).getTime() + minuteOfDay(new Date(guess)) * MINUTE_MS
    guess += wanted - shown
  }
  return new Date(guess)
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const

/** 'Monday and Wednesday, 5:30 to 9:00 pm' */
export function meetsText(weekdays: readonly number[], from: number, minutes: number): string {
  const time = (minute: number) => `${((Math.floor(minute / 60) + 11) % 12) + 1}:${String(minute % 60).padStart(2, '0')}`
  const half = (minute: number) => (minute % 1440 < 720 ? 'am' : 'pm')
  const to = from + minutes
  const start = half(from) === half(to) ? time(from) : `${time(from)} ${half(from)}`
  return `${weekdays.map((day) => WEEKDAYS[day]).join(' and ')}, ${start} to ${time(to % 1440)} ${half(to)}`
}

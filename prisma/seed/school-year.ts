import { atSchool, dateOf, daysLater, meetsText, minuteOfDay, minutesLater, weekdayOf } from './calendar'
import type { Process } from '@/lib/procedure/process'

export type TermKey = 'earlier' | 'current'
export type TermPlan = { readonly key: TermKey; readonly name: string; readonly startsOn: string; readonly endsOn: string; readonly breakWeek: string }

/** One meeting of a class. */
export type Evening = { readonly date: string; readonly startsAt: Date; readonly endsAt: Date }

const TERM_WEEKS = 17
const WEEKS_GONE = 11
const BREAK_WEEKS = 5
/** The week of the term, from 0, in which the school is closed. */
const CLOSED_WEEK = { earlier: 9, current: 6 } as const
/** A class meets for three and a half hours. */
const MEETING_MINUTES = 210

const mondayOf = (date: string): string => daysLater(date, -((weekdayOf(date) + 6) % 7))

/** Terms are named by the third of the year their middle falls in; two middles lie more than a third of a year apart. */
function termName(startsOn: string): string {
  const [year, month] = daysLater(startsOn, Math.floor((TERM_WEEKS * 7) / 2)).split('-').map(Number)
  return `${['Spring', 'Summer', 'Fall'][Math.floor(((month ?? 1) - 1) / 4)]} ${year}`
}

function term(key: TermKey, startsOn: string): TermPlan {
  return { key, name: termName(startsOn), startsOn, endsOn: daysLater(startsOn, TERM_WEEKS * 7 - 3), breakWeek: daysLater(startsOn, CLOSED_WEEK[key] * 7) }
}

/** The term that runs on the day, eleven weeks old, and the one before it, with five weeks of holidays between. */
export function termsAround(asOf: Date): Readonly<Record<TermKey, TermPlan>> {
  const current = daysLater(mondayOf(dateOf(startOfTonight(asOf))), -WEEKS_GONE * 7)
  return { earlier: term('earlier', daysLater(current, -(TERM_WEEKS + BREAK_WEEKS) * 7)), current: term('current', current) }
}

/** When the class that meets at this very moment began: at a full or half hour, about two hours ago. */
export function startOfTonight(asOf: Date): Date {
  const rough = minutesLater(asOf, -110)
  return new Date(minutesLater(rough, -(minuteOfDay(rough) % 30)).setUTCSeconds(0, 0))
}

export type Timetable = { readonly weekdays: readonly number[]; readonly fromMinute: number }

/** The self-shielded class is the one that meets now, whatever the day and the hour; the others keep their evenings. */
export function timetableOf(process: Process, asOf: Date): Timetable {
  const tonight = startOfTonight(asOf)
  const weekday = weekdayOf(dateOf(tonight))
  switch (process) {
    case 'FCAW-S': return { weekdays: [weekday, (weekday + 3) % 7].sort((a, b) => a - b), fromMinute: minuteOfDay(tonight) }
    case 'SMAW': return { weekdays: [1, 3], fromMinute: 17 * 60 + 30 }
    case 'FCAW-G': return { weekdays: [1, 4], fromMinute: 13 * 60 }
    case 'GMAW': return { weekdays: [2, 4], fromMinute: 17 * 60 + 30 }
  }
}

export const timetableText = ({ weekdays, fromMinute }: Timetable): string => meetsText(weekdays, fromMinute, MEETING_MINUTES)

/** The meetings of a class in a term that have begun, oldest first. */
export function eveningsOf({ weekdays, fromMinute }: Timetable, plan: TermPlan, asOf: Date): Evening[] {
  const evenings: Evening[] = []
  for (let date = plan.startsOn; date <= plan.endsOn; date = daysLater(date, 1)) {
    const closed = date >= plan.breakWeek && date < daysLater(plan.breakWeek, 7)
    if (closed || !weekdays.includes(weekdayOf(date))) continue
    const startsAt = atSchool(date, fromMinute)
    if (startsAt < asOf) evenings.push({ date, startsAt, endsAt: minutesLater(startsAt, MEETING_MINUTES) })
  }
  return evenings
}

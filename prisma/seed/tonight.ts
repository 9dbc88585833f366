import { minutesBetween, minutesLater } from './calendar'
import type { Pupil, School, SchoolClass } from './school'

/** How many coupons wait for the instructor when the seed is done. */
export const WAITING = 12

/** The evening that is going on: who is there, what each has logged so far, and what of it still waits. */
export type Tonight = {
  readonly classId: string
  readonly present: ReadonlySet<string>
  readonly couponsEach: number
  /** The last so many of each student's. */
  readonly waitingEach: number
  /** When a student's coupon was welded. */
  readonly slot: (pupil: Pupil, index: number) => Date
}

/** Nothing older than this was logged "in the last two hours". */
const WINDOW_MINUTES = 117
const LATEST_MINUTES = 4

export function tonightOf(school: School): Tonight {
  const here = school.classes.find((each) => each.process === 'FCAW-S' && each.term === 'current')
  const evening = here?.evenings.at(-1)
  if (!here || !evening) throw new RangeError('The self-shielded class must be meeting.')
  const enrolled = school.pupils.filter((pupil) => pupil.now === 'FCAW-S')
  const waitingEach = Math.ceil(WAITING / enrolled.length)
  const present = enrolled.slice(0, WAITING / waitingEach)
  if (present.length * waitingEach !== WAITING) throw new RangeError(`${WAITING} coupons cannot be shared by ${present.length} students.`)
  const couponsEach = waitingEach + 1
  const from = Math.max(minutesBetween(evening.startsAt, school.asOf) - WINDOW_MINUTES, 12)
  const step = (minutesBetween(evening.startsAt, school.asOf) - LATEST_MINUTES - from) / (couponsEach * present.length)
  return {
    classId: here.id,
    present: new Set(present.map(({ id }) => id)),
    couponsEach, waitingEach,
    // Booth by booth, then round again; the order of booths is mixed so that the queue is not simply 1, 2, 3.
    slot: (pupil, index) => minutesLater(evening.startsAt, from + step * (index * present.length + ((pupil.booth * 5) % present.length) + 0.5)),
  }
}

export const isTonight = (tonight: Tonight, schoolClass: SchoolClass, evening: SchoolClass['evenings'][number]): boolean =>
  tonight.classId === schoolClass.id && evening === schoolClass.evenings.at(-1)

import type { Process } from '@/lib/procedure/process'
import { minutesLater } from './calendar'
import { COURSE } from './course'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import type { Learner } from './learner'
import { movesOn, type Progress } from './progress'
import type { Pupil, School, SchoolClass } from './school'
import type { Evening } from './school-year'
import type { SetCourse } from './set-courses'
import { isTonight, type Tonight } from './tonight'

/** An evening a student belongs to. */
export type Visit = { readonly schoolClass: SchoolClass; readonly evening: Evening; readonly tonight: boolean }
/** A coupon to be welded. */
export type Plan = { readonly exercise: ExercisePlan; readonly at: Date; readonly waits: boolean }

/** An evening's work is inspected within this time of its end; evenings less than that ago are left out, so that nothing waits there. */
const INSPECTED_WITHIN_MINUTES = 45

/** A student's evenings in both terms, oldest first; those with a set course joined late. */
export function visitsOf(pupil: Pupil, school: School, tonight: Tonight, course: SetCourse | undefined): Visit[] {
  const evenings = (process: Process | null, term: SchoolClass['term']): Visit[] => {
    const schoolClass = school.classes.find((each) => each.process === process && each.term === term)
    if (!schoolClass) return []
    return schoolClass.evenings.map((evening) => ({ schoolClass, evening, tonight: isTonight(tonight, schoolClass, evening) }))
  }
  const isToCome = (visit: Visit): boolean =>
    visit.tonight ? tonight.present.has(pupil.id) : minutesLater(visit.evening.endsAt, INSPECTED_WITHIN_MINUTES) < school.asOf
  const visits = [...evenings(pupil.before, 'earlier'), ...evenings(pupil.now, 'current')].filter(isToCome)
  return course ? visits.slice(-(course.evenings + 1)) : visits
}

function tonightPlans(exercise: ExercisePlan, pupil: Pupil, tonight: Tonight): Plan[] {
  return Array.from({ length: tonight.couponsEach }, (_, index) => ({
    exercise, at: tonight.slot(pupil, index), waits: index >= tonight.couponsEach - tonight.waitingEach,
  }))
}

function oneAfterAnother(exercises: readonly ExercisePlan[], { evening }: Visit, dice: Dice): Plan[] {
  const plans: Plan[] = []
  let at = minutesLater(evening.startsAt, dice.between(16, 34))
  for (const exercise of exercises) {
    if (at > minutesLater(evening.endsAt, -8)) break
    plans.push({ exercise, at, waits: false })
    at = minutesLater(at, dice.between(17, 36) + 3 * exercise.passCount)
  }
  return plans
}

function exerciseOf(process: Process, key: string): ExercisePlan {
  const found = COURSE[process].find((exercise) => exercise.key === key)
  if (!found) throw new RangeError(`There is no exercise ${key}.`)
  return found
}

/** The set course, shared out evenly over the evenings before tonight. */
export function setPlans(course: SetCourse, index: number, visits: readonly Visit[], visit: Visit, pupil: Pupil, tonight: Tonight, dice: Dice): Plan[] {
  const exercise = (key: string): ExercisePlan => exerciseOf(visit.schoolClass.process, key)
  if (visit.tonight) return tonightPlans(exercise(course.tonight), pupil, tonight)
  const share = (part: number): number => Math.round((part * course.coupons.length) / (visits.length - 1))
  return oneAfterAnother(course.coupons.slice(share(index), share(index + 1)).map(exercise), visit, dice)
}

/** What a student chooses: the first exercise not yet done with, now and then an older one once more. */
export function freePlans(way: ReadonlyMap<string, Progress>, learner: Learner, visit: Visit, pupil: Pupil, tonight: Tonight, dice: Dice): Plan[] {
  const list = COURSE[visit.schoolClass.process]
  const isOpen = (exercise: ExercisePlan): boolean => {
    const progress = way.get(exercise.key)
    return !progress || !movesOn(progress, dice)
  }
  const begun = list.filter((exercise) => way.has(exercise.key))
  const current = list.find(isOpen) ?? dice.pick(list.slice(-4))
  const exercise = begun.length > 1 && dice.chance(0.12) ? dice.pick(begun) : current
  if (visit.tonight) return tonightPlans(exercise, pupil, tonight)
  if (!dice.chance(learner.attendance)) return []
  const count = Math.min(6, 1 + dice.poisson(learner.couponsPerEvening - 1))
  return oneAfterAnother(Array.from({ length: count }, () => exercise), visit, dice)
}

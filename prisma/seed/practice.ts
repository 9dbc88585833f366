import type { Process } from '@/lib/procedure/process'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { calendarDay } from '@/lib/reports/calendar'
import { dateColumn, dateOf, minutesLater, TIME_ZONE } from './calendar'
import { COURSE } from './course'
import { makeCoupon, type CouponEvent } from './coupon'
import { diceOf, type Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import { eyesOfStudent, type Inspector } from './eyes'
import { formTonight, learnerOf, skillFor, type Learner } from './learner'
import { begin, forecastOf, learnVerdict, levelTonight, movesOn, type Progress } from './progress'
import type { Rows } from './rows'
import { inTerm, type Pupil, type School, type SchoolClass } from './school'
import type { Evening } from './school-year'
import { SET_COURSES, type SetCourse } from './set-courses'
import { putsUpTest, takeTest } from './test-attempts'
import { isTonight, type Tonight } from './tonight'
import { typistOf } from './typing'

type Visit = { readonly schoolClass: SchoolClass; readonly evening: Evening; readonly tonight: boolean }
type Plan = { readonly exercise: ExercisePlan; readonly at: Date; readonly waits: boolean }

/** An evening's work is inspected within this time of its end; evenings less than that ago are left out, so that nothing waits there. */
const INSPECTED_WITHIN_MINUTES = 45

/** Writes down everything one student does in both terms. */
export function practise(pupil: Pupil, school: School, tonight: Tonight, inspectors: ReadonlyMap<string, Inspector>, rows: Rows): void {
  const dice = diceOf(`toeline/student/${pupil.signInName}`)
  const course = SET_COURSES[pupil.signInName]
  const learner: Learner = { ...learnerOf(dice), ...course?.learner }
  const typist = typistOf(dice, pupil.units === 'si' ? 'mm' : 'in', pupil.locale)
  const way = new Map<string, Progress>()
  const acknowledged = new Set<string>()

  const visits = visitsOf(pupil, school, tonight, course)
  enrol(pupil, school, visits, rows)
  for (const [index, visit] of visits.entries()) {
    const { schoolClass, evening } = visit
    const plans = course ? setPlans(course, index, visits.length, visit, pupil, tonight, dice) : freePlans(way, learner, visit, pupil, tonight, dice)
    const form = formTonight(dice)
    for (const plan of plans) {
      const progress = way.get(plan.exercise.key) ?? begin(plan.exercise)
      way.set(plan.exercise.key, progress)
      const day = calendarDay(plan.at, TIME_ZONE)
      const level = levelTonight(progress, way.values(), learner, day)
      const skill = skillFor(learner, level, form, dice)
      const exerciseId = school.exerciseId(plan.exercise.key)
      const acknowledgement = `${exerciseId} ${schoolClass.termId}`
      if (!acknowledged.has(acknowledgement)) {
        acknowledged.add(acknowledgement)
        rows.SafetyAcknowledgement.push({
          programId: school.programId, studentId: pupil.id, exerciseId, termId: schoolClass.termId,
          cautionsVersion: CAUTIONS_VERSION, acknowledgedAt: minutesLater(plan.at, -9),
        })
      }
      progress.coupons += 1
      progress.memory.practice += 1
      const practised = [...way.values()].reduce((sum, each) => sum + each.coupons, 0)
      const event: CouponEvent = {
        school, schoolClass, evening, pupil, skill, exerciseId, number: progress.coupons, at: plan.at, waits: plan.waits,
        ...inTerm(plan.exercise, schoolClass.term), self: eyesOfStudent(typist, practised, dice), instructor: inspectorOf(schoolClass, inspectors),
      }
      const inspected = makeCoupon(event, rows, dice)
      if (inspected) learnVerdict(progress, day, inspected)
    }
    if (!visit.tonight) testsAfter(plans, way, learner, form, visit, pupil, school, rows, dice)
  }
}

function inspectorOf({ instructorId }: SchoolClass, inspectors: ReadonlyMap<string, Inspector>): Inspector {
  const inspector = inspectors.get(instructorId)
  if (!inspector) throw new RangeError('A class has an instructor whose eyes are not known.')
  return inspector
}

function visitsOf(pupil: Pupil, school: School, tonight: Tonight, course: SetCourse | undefined): Visit[] {
  const attended = (process: Process | null, term: SchoolClass['term']): Visit[] => {
    const schoolClass = school.classes.find((each) => each.process === process && each.term === term)
    return (schoolClass?.evenings ?? []).flatMap((evening) => {
      if (!schoolClass) return []
      const now = isTonight(tonight, schoolClass, evening)
      const over = minutesLater(evening.endsAt, INSPECTED_WITHIN_MINUTES) < school.asOf
      if (now ? !tonight.present.has(pupil.id) : !over) return []
      return [{ schoolClass, evening, tonight: now }]
    })
  }
  const visits = [...attended(pupil.before, 'earlier'), ...attended(pupil.now, 'current')]
  return course ? visits.slice(-(course.evenings + 1)) : visits
}

function enrol(pupil: Pupil, school: School, visits: readonly Visit[], rows: Rows): void {
  for (const schoolClass of school.classes) {
    if (schoolClass.process !== (schoolClass.term === 'current' ? pupil.now : pupil.before)) continue
    const first = visits.find((visit) => visit.schoolClass === schoolClass)
    rows.Enrolment.push({
      programId: school.programId, classId: schoolClass.id, personId: pupil.id, booth: pupil.booth, withdrawnAt: null,
      joinedAt: minutesLater(first?.evening.startsAt ?? school.asOf, -20),
    })
  }
}

function exerciseOf(process: Process, key: string): ExercisePlan {
  const found = COURSE[process].find((exercise) => exercise.key === key)
  if (!found) throw new RangeError(`There is no exercise ${key}.`)
  return found
}

function tonightPlans(exercise: ExercisePlan, pupil: Pupil, tonight: Tonight): Plan[] {
  return Array.from({ length: tonight.couponsEach }, (_, index) => ({
    exercise, at: tonight.slot(pupil, index), waits: index >= tonight.couponsEach - tonight.waitingEach,
  }))
}

function timed(exercises: readonly ExercisePlan[], { evening }: Visit, dice: Dice): Plan[] {
  const plans: Plan[] = []
  let at = minutesLater(evening.startsAt, dice.between(16, 34))
  for (const exercise of exercises) {
    if (at > minutesLater(evening.endsAt, -8)) break
    plans.push({ exercise, at, waits: false })
    at = minutesLater(at, dice.between(17, 36) + 3 * exercise.passCount)
  }
  return plans
}

/** The set course, shared out evenly over the evenings before tonight. */
function setPlans(course: SetCourse, index: number, evenings: number, visit: Visit, pupil: Pupil, tonight: Tonight, dice: Dice): Plan[] {
  const exercise = (key: string): ExercisePlan => exerciseOf(visit.schoolClass.process, key)
  if (visit.tonight) return tonightPlans(exercise(course.tonight), pupil, tonight)
  const share = (part: number): number => Math.round((part * course.coupons.length) / (evenings - 1))
  return timed(course.coupons.slice(share(index), share(index + 1)).map(exercise), visit, dice)
}

/** What a student chooses: the first exercise not yet done with, now and then an older one once more. */
function freePlans(way: ReadonlyMap<string, Progress>, learner: Learner, visit: Visit, pupil: Pupil, tonight: Tonight, dice: Dice): Plan[] {
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
  return timed(Array.from({ length: count }, () => exercise), visit, dice)
}

function testsAfter(
  plans: readonly Plan[], way: ReadonlyMap<string, Progress>, learner: Learner, form: number, visit: Visit, pupil: Pupil, school: School, rows: Rows, dice: Dice,
): void {
  const { schoolClass, evening } = visit
  const last = plans.at(-1)
  if (!last) return
  // An evening may end past midnight: the test is of the same day as its last coupon.
  const day = calendarDay(last.at, TIME_ZONE)
  for (const key of new Set(plans.map(({ exercise }) => exercise.key))) {
    const progress = way.get(key)
    if (!progress) continue
    const model = forecastOf(progress, day)
    if (!putsUpTest(progress, model.forecast, dice)) continue
    const level = levelTonight(progress, way.values(), learner, day)
    const { parts, passed } = takeTest(progress, skillFor(learner, level, form, dice), dice)
    const createdAt = minutesLater(evening.endsAt, dice.between(5, 30))
    rows.TestAttempt.push({
      programId: school.programId, id: dice.id(createdAt), classId: schoolClass.id, studentId: pupil.id, exerciseId: school.exerciseId(key),
      exerciseVersion: inTerm(progress.exercise, schoolClass.term).version, witnessId: schoolClass.instructorId,
      testedOn: dateColumn(dateOf(last.at)), passed, parts, ...model, note: null, createdAt,
    })
    if (passed) progress.passed = true
    else progress.failedAt = progress.coupons
  }
}

import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { calendarDay } from '@/lib/reports/calendar'
import { dateColumn, dateOf, minutesLater, TIME_ZONE } from './calendar'
import { makeCoupon } from './coupon'
import { diceOf, type Dice } from './dice'
import { freePlans, setPlans, visitsOf, type Plan, type Visit } from './evening-plan'
import { eyesOfStudent, type Inspector } from './eyes'
import { formTonight, learnerOf, practiseOnce, skillFor, type Learner } from './learner'
import { begin, forecastOf, learnVerdict, levelTonight, type Progress } from './progress'
import type { Rows } from './rows'
import { inTerm, type Pupil, type School, type SchoolClass } from './school'
import { SET_COURSES } from './set-courses'
import { putsUpTest, takeTest } from './test-attempts'
import type { Tonight } from './tonight'
import { typistOf, type Typist } from './typing'

/** One student's time at the school, while it is being told. */
type Story = {
  readonly pupil: Pupil
  readonly school: School
  readonly inspectors: ReadonlyMap<string, Inspector>
  readonly rows: Rows
  readonly dice: Dice
  readonly learner: Learner
  readonly typist: Typist
  /** By key of the exercise. */
  readonly way: Map<string, Progress>
  /** Exercise and term of every confirmation of the cautions. */
  readonly confirmed: Set<string>
}

/** How much of their level people leave at the door of the test booth. */
const NERVES = 0.35

/** Writes down everything one student does in both terms. */
export function practise(pupil: Pupil, school: School, tonight: Tonight, inspectors: ReadonlyMap<string, Inspector>, rows: Rows): void {
  const dice = diceOf(`toeline/student/${pupil.signInName}`)
  const course = SET_COURSES[pupil.signInName]
  const story: Story = {
    pupil, school, inspectors, rows, dice,
    learner: { ...learnerOf(dice), ...course?.learner },
    typist: typistOf(dice, pupil.units === 'si' ? 'mm' : 'in', pupil.locale),
    way: new Map(), confirmed: new Set(),
  }
  const visits = visitsOf(pupil, school, tonight, course)
  enrol(story, visits)
  visits.forEach((visit, index) => {
    const plans = course
      ? setPlans(course, index, visits, visit, pupil, tonight, dice)
      : freePlans(story.way, story.learner, visit, pupil, tonight, dice)
    const form = formTonight(dice)
    for (const plan of plans) weldOne(story, visit, plan, form)
    if (!visit.tonight) testsAfter(story, visit, plans, form)
  })
}

function enrol({ pupil, school, rows }: Story, visits: readonly Visit[]): void {
  for (const schoolClass of school.classes) {
    if (schoolClass.process !== (schoolClass.term === 'current' ? pupil.now : pupil.before)) continue
    const first = visits.find((visit) => visit.schoolClass === schoolClass)
    rows.Enrolment.push({
      programId: school.programId, classId: schoolClass.id, personId: pupil.id, booth: pupil.booth, withdrawnAt: null,
      joinedAt: minutesLater(first?.evening.startsAt ?? school.asOf, -20),
    })
  }
}

function weldOne(story: Story, { schoolClass, evening }: Visit, { exercise, at, waits }: Plan, form: number): void {
  const { pupil, school, rows, dice, learner, way } = story
  const progress = way.get(exercise.key) ?? begin(exercise)
  way.set(exercise.key, progress)
  const day = calendarDay(at, TIME_ZONE)
  const skill = skillFor(learner, levelTonight(progress, way.values(), learner, day), form, dice)
  const exerciseId = school.exerciseId(exercise.key)
  confirmCautions(story, schoolClass, exerciseId, minutesLater(at, -9))
  progress.coupons += 1
  practiseOnce(progress.memory)
  const couponsSoFar = [...way.values()].reduce((sum, each) => sum + each.coupons, 0)
  const inspected = makeCoupon({
    school, schoolClass, evening, pupil, skill, exerciseId, number: progress.coupons, at, waits,
    ...inTerm(exercise, schoolClass.term), self: eyesOfStudent(story.typist, couponsSoFar, dice), instructor: inspectorOf(story, schoolClass), inspectors: story.inspectors.values(),
  }, rows, dice)
  if (inspected) learnVerdict(progress, day, inspected)
}

function inspectorOf({ inspectors }: Story, { instructorId }: SchoolClass): Inspector {
  const inspector = inspectors.get(instructorId)
  if (!inspector) throw new RangeError('A class has an instructor whose eyes are not known.')
  return inspector
}

function confirmCautions({ pupil, school, rows, confirmed }: Story, { termId }: SchoolClass, exerciseId: string, acknowledgedAt: Date): void {
  const key = `${exerciseId} ${termId}`
  if (confirmed.has(key)) return
  confirmed.add(key)
  rows.SafetyAcknowledgement.push({ programId: school.programId, studentId: pupil.id, exerciseId, termId, cautionsVersion: CAUTIONS_VERSION, acknowledgedAt })
}

/** Test plates that go up at the end of an evening, for what was practised in it. */
function testsAfter({ pupil, school, rows, dice, learner, way }: Story, { schoolClass, evening }: Visit, plans: readonly Plan[], form: number): void {
  const last = plans.at(-1)
  if (!last) return
  // An evening may end past midnight: the test is of the same day as its last coupon.
  const day = calendarDay(last.at, TIME_ZONE)
  for (const key of new Set(plans.map(({ exercise }) => exercise.key))) {
    const progress = way.get(key)
    if (!progress) continue
    const model = forecastOf(progress, day)
    if (!putsUpTest(progress, model.forecast, dice)) continue
    const level = levelTonight(progress, way.values(), learner, day) - NERVES
    const { parts, passed } = takeTest(progress, skillFor(learner, level, form, dice), dice)
    const createdAt = minutesLater(evening.endsAt, dice.between(5, 30))
    rows.TestAttempt.push({
      programId: school.programId, id: dice.id(createdAt), classId: schoolClass.id, studentId: pupil.id, exerciseId: school.exerciseId(key),
      exerciseVersion: inTerm(progress.exercise, schoolClass.term).version, witnessId: schoolClass.instructorId,
      testedOn: dateColumn(dateOf(last.at)), passed, parts, ...model, note: null, plateIdentity: null, wireIdentity: null, createdAt,
    })
    if (passed) progress.passed = true
    else progress.failedAt = progress.coupons
  }
}

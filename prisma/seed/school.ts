import type { Process } from '@/lib/procedure/process'
import { PROCESSES } from '@/lib/procedure/process'
import { allCriteria } from '@/lib/criteria/catalogue'
import { CODE_LETTERS } from '@/lib/schemas/person'
import { dateColumn, daysLater, minutesLater, TIME_ZONE } from './calendar'
import { CLASS_NAMES, COURSE, ROOMS } from './course'
import { diceOf, type Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import { COORDINATOR, INSTRUCTORS, students, type Invented, type Student } from './people'
import type { Rows } from './rows'
import type { ReadTwice } from './second-look'
import { eveningsOf, termsAround, timetableOf, timetableText, type Evening, type TermKey } from './school-year'

const SCHOOL = { name: 'Tamarack Fork Welding Center', slug: 'tamarack-fork' }
/** Teaching goes round: last term these two classes had each other's instructor. */
const TAUGHT_BEFORE: Partial<Record<Process, Process>> = { 'FCAW-S': 'FCAW-G', 'FCAW-G': 'FCAW-S' }
const CODE_DAYS = 12
/** The small school had most of its coupons read twice and has stopped: what tests grade there offers itself to nobody. */
const READ_TWICE = { full: { share: 0.1, waits: true }, small: { share: 0.8, waits: false } } as const satisfies Record<string, ReadTwice>
/** How many of a class's meetings the small school keeps, the latest; the class that meets now needs a few before tonight. */
const smallEvenings = (term: TermKey, process: Process): number => (term === 'earlier' ? 1 : process === 'FCAW-S' ? 4 : 3)

export type SchoolClass = {
  readonly id: string
  readonly termId: string
  readonly term: TermKey
  readonly process: Process
  readonly instructorId: string
  readonly evenings: readonly Evening[]
}
export type Pupil = Student & { readonly id: string; readonly booth: number }
export type PasswordHashes = Readonly<Record<'student' | 'instructor' | 'coordinator', string>>

export type School = {
  readonly programId: string
  readonly coordinatorId: string
  readonly readTwice: ReadTwice
  readonly asOf: Date
  readonly classes: readonly SchoolClass[]
  readonly pupils: readonly Pupil[]
  readonly exerciseId: (key: string) => string
}

/** The exercise as it stands in a term: its version, and the booth card of that version. */
export function inTerm(exercise: ExercisePlan, term: TermKey): { readonly exercise: ExercisePlan; readonly version: number } {
  if (!exercise.cardBefore) return { exercise, version: 1 }
  return term === 'current' ? { exercise, version: 2 } : { exercise: { ...exercise, boothCard: exercise.cardBefore }, version: 1 }
}

/** Founds the school: everything that is there before the first coupon. */
export function found(asOf: Date, small: boolean, hashes: PasswordHashes, rows: Rows): School {
  const dice = diceOf('toeline/school')
  const terms = termsAround(asOf)
  const createdAt = dateColumn(daysLater(terms.earlier.startsOn, -20))
  const programId = dice.id(createdAt)
  rows.Program.push({
    id: programId, ...SCHOOL, timeZone: TIME_ZONE, units: 'us', readinessThreshold: 0.65, minimumCoupons: 5, staleAfterDays: 45, secondReadShare: small ? 0 : READ_TWICE.full.share, createdAt,
  })
  rows.CriteriaSet.push(...allCriteria().map((set) => ({ programId, id: set.id, version: set.version, title: set.title, document: set, createdAt })))

  const enter = (person: Invented, role: keyof PasswordHashes, at: Date): string => {
    const id = dice.fork(person.signInName).id(at)
    rows.Person.push({
      programId, id, signInName: person.signInName, givenName: person.given, familyName: person.family, email: null, passwordHash: hashes[role],
      mustChangePassword: false, pinHash: null, oidcIssuer: null, oidcSubject: null, locale: person.locale, units: person.units, disabledAt: null, createdAt: at,
    })
    rows.Membership.push({ programId, personId: id, role, createdAt: at })
    return id
  }
  const coordinatorId = enter(COORDINATOR, 'coordinator', createdAt)
  const instructorIds = new Map(PROCESSES.map((process) => [process, enter(INSTRUCTORS[process], 'instructor', createdAt)]))

  const exerciseIds = addExercises(programId, createdAt, dateColumn(terms.current.startsOn), dice, rows)
  const exerciseId = (key: string): string => known(exerciseIds, key)

  const classes = (['earlier', 'current'] as const).flatMap((term) => {
    const { name, startsOn, endsOn } = terms[term]
    const termId = dice.id(createdAt)
    rows.Term.push({ programId, id: termId, name, startsOn: dateColumn(startsOn), endsOn: dateColumn(endsOn), createdAt })
    return PROCESSES.map((process): SchoolClass => {
      const id = dice.id(createdAt)
      const teacher = known(instructorIds, (term === 'earlier' && TAUGHT_BEFORE[process]) || process)
      const timetable = timetableOf(process, asOf)
      rows.Class.push({ programId, id, termId, name: CLASS_NAMES[process], room: ROOMS[process], meets: timetableText(timetable), createdAt, archivedAt: null })
      rows.ClassInstructor.push({ programId, classId: id, personId: teacher, createdAt })
      COURSE[process].forEach((exercise, index) => rows.ClassExercise.push({
        programId, classId: id, exerciseId: exerciseId(exercise.key), sequence: index + 1,
        opensAfterId: exercise.opensAfter === null ? null : exerciseId(exercise.opensAfter),
      }))
      if (term === 'current') addCode(programId, id, teacher, asOf, dice.fork(`code/${process}`), rows)
      const evenings = eveningsOf(timetable, terms[term], asOf)
      return { id, termId, term, process, instructorId: teacher, evenings: small ? evenings.slice(-smallEvenings(term, process)) : evenings }
    })
  })
  const booths = new Map<Process | null, number>()
  const pupils = students(small).map((student): Pupil => {
    const firstDay = terms[student.before ? 'earlier' : 'current'].startsOn
    const booth = (booths.get(student.now) ?? 0) + 1
    booths.set(student.now, booth)
    return { ...student, booth, id: enter(student, 'student', dateColumn(firstDay)) }
  })
  rows.AuditEvent.push({
    programId, id: dice.id(asOf), actorId: coordinatorId, action: 'program.seed', subjectType: 'program', subjectId: programId,
    before: null, after: { invented: true, size: small ? 'small' : 'full' }, at: asOf,
  })
  return { programId, coordinatorId, readTwice: READ_TWICE[small ? 'small' : 'full'], asOf, classes, pupils, exerciseId }
}

function known<K, V>(map: ReadonlyMap<K, V>, key: K): V {
  const value = map.get(key)
  if (value === undefined) throw new RangeError(`The school has no ${String(key)}.`)
  return value
}

function addCode(programId: string, classId: string, madeById: string, asOf: Date, dice: Dice, rows: Rows): void {
  const createdAt = minutesLater(asOf, -2 * 24 * 60)
  rows.ClassCode.push({
    programId, id: dice.id(createdAt), classId, madeById, createdAt, revokedAt: null, expiresAt: minutesLater(createdAt, CODE_DAYS * 24 * 60),
    code: Array.from({ length: 8 }, () => dice.pick([...CODE_LETTERS])).join(''),
  })
}

function addExercises(programId: string, createdAt: Date, retunedAt: Date, dice: Dice, rows: Rows): ReadonlyMap<string, string> {
  const ids = new Map<string, string>()
  for (const exercise of Object.values(COURSE).flat()) {
    const id = dice.id(createdAt)
    ids.set(exercise.key, id)
    const { key: _key, opensAfter: _opensAfter, difficulty: _difficulty, cardBefore, boothCard, criteria, ...facts } = exercise
    const version = (number: number, card: typeof boothCard, at: Date) => ({
      completePenetration: null, transverseToTension: null, stiffenerToWeb: null, ...facts,
      programId, exerciseId: id, version: number, boothCard: card, criteriaId: criteria.id, criteriaVersion: criteria.version, createdAt: at,
    })
    rows.Exercise.push({ programId, id, currentVersion: cardBefore ? 2 : 1, createdAt, archivedAt: null })
    if (cardBefore) rows.ExerciseVersion.push(version(1, cardBefore, createdAt), version(2, boothCard, retunedAt))
    else rows.ExerciseVersion.push(version(1, boothCard, createdAt))
  }
  return ids
}

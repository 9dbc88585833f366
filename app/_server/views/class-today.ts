import 'server-only'
import { LATELY_DAYS } from '@/lib/coaching/needs-you/recent-coupon'
import { needsYou, type StudentToday } from '@/lib/coaching/needs-you/needs-you'
import { nextUp } from '@/lib/readiness/next-up'
import { calendarDay, dayOfDate } from '@/lib/reports/calendar'
import { momentText } from '@/lib/reports/dates'
import { fullName } from '@/lib/reports/full-name'
import { reasonText } from '@/lib/reports/needs-you-words'
import { ruleName } from '@/lib/reports/rule-names'
import { shortTitle } from '@/lib/procedure/exercise'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import type { Viewer } from '../auth/viewer'
import { listAcknowledged, listPassedTests, listRecentPractice, type RecentPractice, type StudentExercise } from '../data/class-practice'
import type { ClassRecord, EnrolledStudent } from '../data/classes'
import { criteriaSet } from '../data/criteria'
import type { ClassExerciseRecord } from '../data/exercises'
import type { QueueEntry } from '../data/queue'
import type { SkillRecord } from '../data/skills'

/** One student of the list 'needs you today', with every reason as a sentence, most urgent first. */
export type NeedsRow = { readonly studentId: string; readonly name: string; readonly booth: number | null; readonly reasons: readonly string[] }

/** What the class page has read already. */
export type ClassNow = {
  readonly classRecord: ClassRecord
  readonly students: readonly EnrolledStudent[]
  readonly exercises: readonly ClassExerciseRecord[]
  readonly skills: readonly SkillRecord[]
  readonly queue: readonly QueueEntry[]
  readonly timeZone: string
}

const keyOf = ({ studentId, exerciseId }: StudentExercise): string => `${studentId} ${exerciseId}`

/** Who needs the viewer today, and why. The class must be one they teach: everything beside `now` is read in that scope. */
export async function classToday(viewer: Viewer, now: ClassNow, asOf: Date): Promise<NeedsRow[]> {
  const { classRecord, skills, timeZone } = now
  const today = calendarDay(asOf, timeZone)
  const lately = skills.filter(({ lastCouponAt }) => lastCouponAt && today - calendarDay(lastCouponAt, timeZone) <= LATELY_DAYS)
  const [recent, acknowledged, passed] = await Promise.all([
    listRecentPractice(viewer, lately), listAcknowledged(viewer, classRecord.id, classRecord.term.id, CAUTIONS_VERSION), listPassedTests(viewer, classRecord.id),
  ])
  const known: Known = {
    skills: new Map(skills.map((skill) => [keyOf(skill), skill])), recent: new Map(recent.map((each) => [keyOf(each), each])),
    acknowledged: new Set(acknowledged.map(keyOf)), passed: new Set(passed.map(keyOf)),
  }
  const students = now.students.map((student) => studentToday(student, now, known, today))
  return Promise.all(needsYou(students).map(async ({ student: { studentId }, reasons }) => {
    const student = now.students.find(({ id }) => id === studentId)
    const context = await contextOf(viewer, studentId, now, known)
    return {
      studentId, booth: student?.booth ?? null, name: student ? fullName(student) : '',
      reasons: reasons.map((reason) => reasonText(reason, context)),
    }
  }))
}

type Known = {
  readonly skills: ReadonlyMap<string, SkillRecord>
  readonly recent: ReadonlyMap<string, RecentPractice>
  readonly acknowledged: ReadonlySet<string>
  readonly passed: ReadonlySet<string>
}

const lookOf = (queue: readonly QueueEntry[], studentId: string) => queue.find((entry) => entry.kind === 'look' && entry.student.id === studentId)

function studentToday(student: EnrolledStudent, { classRecord, exercises, queue, timeZone }: ClassNow, known: Known, today: number): StudentToday {
  const rows = exercises.map(({ exercise }) => ({ exerciseId: exercise.id, key: keyOf({ studentId: student.id, exerciseId: exercise.id }) }))
    .map(({ exerciseId, key }) => ({ exerciseId, key, skill: known.skills.get(key) }))
  const lastCoupon = rows.reduce<Date | null>((latest, { skill }) => (skill?.lastCouponAt && (!latest || skill.lastCouponAt > latest) ? skill.lastCouponAt : latest), null)
  const termEnds = dayOfDate(classRecord.term.endsOn)
  const next = nextUp(rows)
  const look = lookOf(queue, student.id)
  return {
    studentId: student.id, booth: student.booth,
    look: look?.kind === 'look' ? { askedAt: look.since, exerciseId: look.exercise?.id ?? null } : null,
    unsigned: next && today <= termEnds && !known.acknowledged.has(next.key) ? { exerciseId: next.exerciseId, begun: (next.skill?.couponCount ?? 0) > 0 } : null,
    attendance: {
      today, termStarts: dayOfDate(classRecord.term.startsOn), termEnds, joined: calendarDay(student.joinedAt, timeZone),
      lastCoupon: lastCoupon && calendarDay(lastCoupon, timeZone),
    },
    // Once the term is over the students practise elsewhere, if at all, and that is for the instructor of that class.
    exercises: today > termEnds ? [] : rows.map(({ exerciseId, key, skill }) => ({ exerciseId, coupons: known.recent.get(key)?.coupons ?? [], advice: skill?.advice ?? null, tested: known.passed.has(key) })),
  }
}

async function contextOf(viewer: Viewer, studentId: string, { exercises, queue, timeZone }: ClassNow, known: Known) {
  const titles = new Map(exercises.map(({ exercise }) => [exercise.id, shortTitle(exercise)]))
  const names = new Map<string, Awaited<ReturnType<typeof criteriaSet>>>()
  for (const { exercise } of exercises) {
    const criteria = known.recent.get(keyOf({ studentId, exerciseId: exercise.id }))?.criteria
    if (criteria) names.set(exercise.id, await criteriaSet(viewer.programId, criteria.id, criteria.version))
  }
  const look = lookOf(queue, studentId)
  return {
    titleOf: (exerciseId: string) => titles.get(exerciseId) ?? 'an exercise of the class',
    ruleOf: (rule: string, exerciseId: string) => ruleName(rule, 'en', names.get(exerciseId)),
    chanceOf: (exerciseId: string) => {
      const skill = known.skills.get(keyOf({ studentId, exerciseId }))
      return skill && skill.probability !== null && skill.low !== null && skill.high !== null
        ? { probability: skill.probability, low: skill.low, high: skill.high, coupons: skill.couponsUsed } : null
    },
    timeText: (at: Date) => momentText(at, 'en', timeZone),
    look: look?.kind === 'look' ? { exercise: look.exercise?.title ?? null, note: look.note } : null,
  }
}

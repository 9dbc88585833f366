import type { Inspection } from '@/prisma/generated/client'
import { findingRow } from '@/app/_server/data/scorecards'
import { weld } from './bead'
import { minutesLater } from './calendar'
import { commentOn, noteIn, replyIn } from './comments'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import type { Inspector } from './eyes'
import { criteriaOf, inspect, type Inspected } from './inspect'
import { look, type Eye } from './look'
import type { Skill } from './learner'
import { passesOf } from './pass-settings'
import type { Rows } from './rows'
import { secondLook } from './second-look'
import type { Pupil, School, SchoolClass } from './school'
import type { Evening } from './school-year'

/** A coupon about to be welded. */
export type CouponEvent = {
  readonly school: School
  readonly schoolClass: SchoolClass
  readonly evening: Evening
  readonly pupil: Pupil
  readonly exercise: ExercisePlan
  readonly exerciseId: string
  readonly version: number
  readonly number: number
  readonly at: Date
  readonly skill: Skill
  readonly waits: boolean
  readonly self: Eye
  readonly instructor: Inspector
  /** All of the school's; one of them may read it a second time. */
  readonly inspectors: Iterable<Inspector>
}

/** One inspection in sixty is corrected the next day. */
const CORRECTED = 1 / 60

/** Welds, logs and inspects a coupon, and returns the instructor's inspection that stands; null while it waits. */
export function makeCoupon(event: CouponEvent, rows: Rows, dice: Dice): Inspected | null {
  const { school: { programId, asOf }, exercise, pupil, instructor, number, exerciseId, version, evening } = event
  const criteria = criteriaOf(exercise)
  const bead = weld(exercise, event.skill, dice)
  const receivedAt = minutesLater(event.at, dice.between(1, 4))
  const couponId = dice.id(receivedAt)

  const self = inspect(exercise, look(bead, exercise, criteria, event.self, dice), event.self)
  keep(rows, event, { couponId, inspectorId: pupil.id, kind: 'self', revision: 1, submittedAt: receivedAt, supersededAt: null }, self, dice)

  const looking = () => inspect(exercise, look(bead, exercise, criteria, instructor.eye, dice), instructor.eye)
  const inspectedAt = new Date(Math.min(minutesLater(receivedAt, dice.between(4, 40)).getTime(), minutesLater(asOf, -1).getTime()))
  let standing: Inspected | null = null
  let secondWaitingSince: Date | null = null
  if (!event.waits) {
    const correctedAt = minutesLater(evening.endsAt, 18 * 60 + dice.between(0, 120))
    const corrected = dice.chance(CORRECTED) && correctedAt < asOf
    const first = { couponId, inspectorId: instructor.id, kind: 'instructor' as const }
    if (corrected) {
      keep(rows, event, { ...first, revision: 1, submittedAt: inspectedAt, supersededAt: correctedAt }, looking(), dice)
      standing = looking()
      keep(rows, event, { ...first, revision: 2, submittedAt: correctedAt, supersededAt: null }, standing, dice)
    } else {
      standing = looking()
      keep(rows, event, { ...first, revision: 1, submittedAt: inspectedAt, supersededAt: null }, standing, dice)
    }
    talk(rows, event, couponId, standing, inspectedAt, dice)
    const second = secondLook({ couponId, bead, exercise, first: instructor, gradedAt: inspectedAt }, event.school.readTwice, event.inspectors, asOf)
    if (second?.found) keep(rows, event, { couponId, inspectorId: second.reader.id, kind: 'second', revision: 1, submittedAt: second.at, supersededAt: null }, second.found, second.dice)
    else if (second) secondWaitingSince = inspectedAt
  }

  rows.Coupon.push({
    programId, id: couponId, classId: event.schoolClass.id, studentId: pupil.id, exerciseId, exerciseVersion: version, number, booth: pupil.booth,
    weldedAt: event.at, receivedAt, note: dice.chance(0.08) ? noteIn(pupil.locale, dice) : null,
    waitingSince: event.waits ? receivedAt : null, takenById: null, takenAt: null, secondWaitingSince,
    verdict: standing?.judged.scorecard.verdict ?? null, mark: standing?.judged.scorecard.mark ?? null,
    selfVerdict: self.judged.scorecard.verdict, selfMark: self.judged.scorecard.mark,
  })
  rows.Pass.push(...passesOf(exercise, bead, { programId, couponId }, dice))
  return standing
}

function keep(rows: Rows, event: CouponEvent, about: Omit<Inspection, 'programId' | 'id' | 'readings'>, { readings, judged }: Inspected, dice: Dice): void {
  const { school: { programId }, exercise } = event
  const { scorecard, worstMargin, attributesGood } = judged
  const id = dice.id(about.submittedAt)
  rows.Inspection.push({ programId, id, ...about, readings })
  rows.Scorecard.push({
    programId, inspectionId: id, criteriaId: exercise.criteria.id, criteriaVersion: exercise.criteria.version, scoringVersion: scorecard.scoringVersion,
    verdict: scorecard.verdict, mark: scorecard.mark, worstMargin, attributesGood, createdAt: about.submittedAt,
  })
  rows.Finding.push(...scorecard.findings.map((finding) => findingRow(programId, id, finding)))
}

function talk(rows: Rows, event: CouponEvent, couponId: string, { judged }: Inspected, at: Date, dice: Dice): void {
  const { school: { programId, asOf }, pupil, instructor } = event
  if (!dice.chance(instructor.commentsOn)) return
  const say = (authorId: string, body: string, createdAt: Date) => rows.Comment.push({ programId, id: dice.id(createdAt), couponId, authorId, body, createdAt })
  say(instructor.id, commentOn(judged.scorecard, dice), at)
  const answeredAt = minutesLater(at, dice.between(3, 25))
  if (dice.chance(0.2) && answeredAt < asOf) say(pupil.id, replyIn(pupil.locale, dice), answeredAt)
}

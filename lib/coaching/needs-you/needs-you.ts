import type { Advice } from '../../readiness/decide'
import type { SelfTrust } from '../../readiness/self-trust'
import { gap, type Attendance, type Gap } from './gap'
import { noGain, type NoGain } from './no-gain'
import type { RecentCoupon } from './recent-coupon'
import { sameDefects, type SameDefects } from './same-defect'
import { selfFar } from './self-far'
import { heldUp, type Unsigned } from './unsigned'

/** What is known of a student in one exercise. */
export type ExercisePractice = {
  readonly exerciseId: string
  /** Oldest first; empty where the student has not practised lately. */
  readonly coupons: readonly RecentCoupon[]
  /** What readiness suggests today; null while there is no estimate. */
  readonly advice: Advice | null
  /** A test of it was passed. */
  readonly tested: boolean
}

/** What is known of a student when their class is looked over. */
export type StudentToday = {
  readonly studentId: string
  readonly booth: number | null
  readonly attendance: Attendance
  /** A request for a look that waits, since when, and at which exercise, when it said so. */
  readonly look: { readonly askedAt: Date; readonly exerciseId: string | null } | null
  /** Until its cautions are confirmed, nothing of it can be logged. */
  readonly unsigned: Unsigned | null
  readonly exercises: readonly ExercisePractice[]
}

/** Why a student needs the instructor. Put into words by lib/reports. */
export type Reason =
  | { readonly code: 'wants-a-look'; readonly askedAt: Date }
  | { readonly code: 'safety-unsigned'; readonly exerciseId: string }
  | ({ readonly code: 'same-defect'; readonly exerciseId: string } & SameDefects)
  | { readonly code: 'ready-for-test'; readonly exerciseId: string }
  | ({ readonly code: 'no-gain'; readonly exerciseId: string } & NoGain)
  | { readonly code: 'self-far'; readonly trust: SelfTrust }
  | ({ readonly code: 'gap' } & Gap)
  | { readonly code: 'safety-next'; readonly exerciseId: string }

/**
 * Most urgent first. Common practice, no source: who stands and waits comes before who cannot begin, who cannot begin before who repeats
 * a fault with every coupon, and those before what can wait until the round is done. Cautions of an exercise just reached come last.
 */
export const URGENCY = ['wants-a-look', 'safety-unsigned', 'same-defect', 'ready-for-test', 'no-gain', 'self-far', 'gap', 'safety-next'] as const satisfies readonly Reason['code'][]

/** Why one student needs the instructor today, most urgent first; empty when they do not. */
export function reasonsFor(student: StudentToday): Reason[] {
  const { look, unsigned, exercises, attendance } = student
  const absence = gap(attendance)
  const far = selfFar(exercises.flatMap(({ coupons }) => coupons))
  const reasons: Reason[] = [
    ...(look ? [{ code: 'wants-a-look' as const, askedAt: look.askedAt }] : []),
    ...(unsigned ? [{ code: heldUp(unsigned, look?.exerciseId ?? null, attendance) ? 'safety-unsigned' as const : 'safety-next' as const, exerciseId: unsigned.exerciseId }] : []),
    ...exercises.flatMap(practiceReasons),
    ...(far ? [{ code: 'self-far' as const, trust: far }] : []),
    ...(absence ? [{ code: 'gap' as const, ...absence }] : []),
  ]
  return reasons.sort((a, b) => urgencyOf(a) - urgencyOf(b))
}

function practiceReasons({ exerciseId, coupons, advice, tested }: ExercisePractice): Reason[] {
  if (tested) return []
  const same = sameDefects(coupons)
  const stuck = advice === 'test' ? null : noGain(coupons)
  return [
    ...(same ? [{ code: 'same-defect' as const, exerciseId, ...same }] : []),
    ...(advice === 'test' ? [{ code: 'ready-for-test' as const, exerciseId }] : []),
    ...(stuck ? [{ code: 'no-gain' as const, exerciseId, ...stuck }] : []),
  ]
}

const urgencyOf = ({ code }: Reason): number => URGENCY.indexOf(code)

/** A student with their reasons, most urgent first; never without one. */
export type NeedsYou = { readonly student: StudentToday; readonly reasons: readonly Reason[] }

/**
 * Who needs the instructor today, most urgent first. Equals: who asked for a look waits longest, else the one with more reasons, else in
 * the order of booths, those without one last.
 */
export function needsYou(students: readonly StudentToday[]): NeedsYou[] {
  return students
    .map((student) => ({ student, reasons: reasonsFor(student) }))
    .filter(({ reasons }) => reasons.length > 0)
    .sort((a, b) => firstOf(a) - firstOf(b) || asked(a) - asked(b) || b.reasons.length - a.reasons.length || boothOf(a) - boothOf(b))
}

const firstOf = ({ reasons }: NeedsYou): number => URGENCY.indexOf(reasons[0]?.code ?? 'gap')
const asked = ({ student }: NeedsYou): number => student.look?.askedAt.getTime() ?? 0
const boothOf = ({ student }: NeedsYou): number => student.booth ?? Number.MAX_SAFE_INTEGER

import type { Dice } from './dice'
import { FAULTS, MEASURES, STATIONS } from './measures'

export type Kind = 'steady' | 'slow' | 'plateau' | 'step'

/** How quickly a gap undoes practice: the share that can be lost, and its time constant in days after two days of grace. */
export type Forgetting = { readonly share: number; readonly days: number }

/** One made-up student: traits drawn once. */
export type Student = {
  readonly kind: Kind
  /** Coupons it takes for the first half of learning, and how sharply it bends. */
  readonly pace: number
  readonly bend: number
  /** Per measure: a factor on the beginner's deviation, and where it settles above a practised hand's. */
  readonly weakness: readonly number[]
  readonly settlesAbove: readonly number[]
  /** Step students: a wrong habit on one measure until this coupon. */
  readonly habit: { readonly measure: number; readonly size: number; readonly until: number } | null
  readonly clumsiness: number
}

/** What a student brings to the bench today. */
export type Form = { readonly practice: number; readonly made: number; readonly day: number; readonly warm: boolean }

/** A bead as it truly is: deviations per measure and station, and whether anything went wrong. */
export type Bead = { readonly deviations: readonly (readonly number[])[]; readonly faults: readonly boolean[] }

export function makeStudent(dice: Dice, kind: Kind): Student {
  const stuck = kind === 'plateau' ? dice.whole(0, MEASURES.length - 1) : -1
  return {
    kind,
    pace: dice.factor(0.4) * (kind === 'slow' ? 22 : 8),
    bend: dice.between(0.8, 1.4),
    weakness: MEASURES.map(() => dice.factor(0.35)),
    settlesAbove: MEASURES.map(({ limit }, i) => (i === stuck ? dice.between(0.5, 1.1) * limit : Math.abs(dice.normal(0, 0.08)) * limit)),
    habit: kind === 'step' ? { measure: dice.whole(0, MEASURES.length - 1), size: dice.between(0.5, 1.3), until: dice.whole(8, 30) } : null,
    clumsiness: dice.factor(0.5),
  }
}

/** The share of a beginner's troubles still there after so much practice: a power law of practice. */
function left(student: Student, practice: number): number {
  return (1 + practice / student.pace) ** -student.bend
}

/** Practice that a gap leaves. */
export function afterGap(practice: number, days: number, { share, days: constant }: Forgetting): number {
  return practice * (1 - share * (1 - Math.exp(-Math.max(0, days - 2) / constant)))
}

/**
 * How far each station of one measure is off. A good or bad day stretches deviation and spread alike; the first bead of a day is
 * worse; stations next to each other resemble each other; heat building up drives the deviation along the bead.
 */
export function deviationsOf(student: Student, form: Form, measure: number, dice: Dice): number[] {
  const { bias, spread } = MEASURES[measure]!
  const rest = left(student, form.practice)
  const strain = strainOf(form)
  const habit = student.habit?.measure === measure && form.made < student.habit.until ? student.habit.size : 0
  const settled = bias.settled + student.settlesAbove[measure]!
  const scatter = (spread.settled + (spread.first - spread.settled) * rest) * strain
  const centre = settled + (bias.first * student.weakness[measure]! - settled) * rest + habit + (strain - 1) * 0.6 + dice.normal(0, 0.7 * scatter)
  const drift = dice.normal(0, 0.3 * scatter)
  let ripple = dice.normal(0, 0.6 * scatter)
  return Array.from({ length: STATIONS }, (_, s) => {
    if (s > 0) ripple = 0.5 * ripple + dice.normal(0, 0.52 * scatter)
    return centre + drift * (s / (STATIONS - 1) - 0.5) * 2 + ripple
  })
}

export function faultsOf(student: Student, form: Form, dice: Dice): boolean[] {
  const rest = left(student, form.practice)
  return FAULTS.map(({ first, settled }) => dice.happens(Math.min(0.9, (settled + (first - settled) * rest) * student.clumsiness * strainOf(form))))
}

function strainOf({ day, warm }: Form): number {
  return day * (warm ? 1 : 1.12)
}

export function weld(student: Student, form: Form, dice: Dice): Bead {
  return { deviations: MEASURES.map((_, m) => deviationsOf(student, form, m, dice)), faults: faultsOf(student, form, dice) }
}

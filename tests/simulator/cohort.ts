import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'
import { diceOf, type Dice } from './dice'
import { grade, makeGrader, passesTruly, type Grader } from './grader'
import type { Scenario } from './scenarios'
import { afterGap, makeStudent, weld, type Form, type Kind, type Student } from './student'

/** A moment at which a test could be welded: after `coupons` coupons, on the day of the next, with how that test went. */
export type Moment = { readonly coupons: number; readonly day: number; readonly form: Form; readonly passed: boolean }

/** A student's graded practice, with a test at every moment from the first coupon on. */
export type Series = { readonly student: Student; readonly coupons: readonly PracticeCoupon[]; readonly moments: readonly Moment[] }

/** The seed draws the students; `graderSeed` draws who grades them, so that two cohorts can share graders. `length`: coupons each, 5 to 60 when absent. */
export function makeCohort(scenario: Scenario, students: number, seed: number, graderSeed = seed, length?: number): Series[] {
  const dice = diceOf(seed)
  const graderDice = diceOf(graderSeed)
  const graders = Array.from({ length: scenario.grading.graders }, () => makeGrader(graderDice, scenario.grading))
  return Array.from({ length: students }, () => practise(makeStudent(dice, drawKind(scenario, dice)), graders, scenario, length ?? dice.whole(5, 60), dice))
}

function drawKind({ kinds }: Scenario, dice: Dice): Kind {
  let at = dice.unit()
  for (const [kind, share] of kinds) {
    if (at < share) return kind
    at -= share
  }
  return kinds[0]![0]
}

function practise(student: Student, graders: readonly Grader[], scenario: Scenario, length: number, dice: Dice): Series {
  const coupons: PracticeCoupon[] = []
  const moments: Moment[] = []
  let date = 0
  let form: Form = { practice: 0, made: 0, day: dice.factor(scenario.dayToDay), warm: false }
  let leftToday = dice.whole(1, 4)
  const usual = graders[dice.whole(0, graders.length - 1)]!
  for (let made = 0; made < length; made++) {
    const bead = weld(student, form, dice)
    const grader = dice.happens(0.7) ? usual : graders[dice.whole(0, graders.length - 1)]!
    coupons.push(grade(bead, date, grader, scenario.grading, scenario.tighter, dice))
    form = { ...form, practice: form.practice + 1, made: made + 1, warm: true }
    leftToday--
    if (leftToday === 0) {
      const gap = drawGap(scenario, dice)
      date += gap
      form = { ...form, practice: afterGap(form.practice, gap, scenario.forgetting), day: dice.factor(scenario.dayToDay), warm: false }
      leftToday = dice.whole(1, 4)
    }
    moments.push({ coupons: made + 1, day: date, form, passed: passesTruly(student, form, scenario.tighter, dice) })
  }
  return { student, coupons, moments }
}

/** A day or two between lessons, a weekend, now and then a break. */
function drawGap({ breaks }: Scenario, dice: Dice): number {
  if (dice.happens(breaks)) return dice.whole(10, 45)
  return dice.happens(0.3) ? dice.whole(3, 4) : dice.whole(1, 2)
}

/** Beads welded to find a true chance: its standard error is at most 0.035. */
const TRUTH_DRAWS = 200

/** The true chance to pass at a moment: the share of many beads, welded in the same form, that an unbiased examiner passes. */
export function trueChance(student: Student, { form, coupons }: Moment, { tighter }: Scenario, seed: number): number {
  const dice = diceOf(seed + 7919 * coupons)
  let passed = 0
  for (let i = 0; i < TRUTH_DRAWS; i++) if (passesTruly(student, form, tighter, dice)) passed++
  return passed / TRUTH_DRAWS
}

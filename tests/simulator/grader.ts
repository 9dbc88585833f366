import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'
import type { Dice } from './dice'
import { MEASURES, marginOf } from './measures'
import { deviationsOf, faultsOf, type Bead, type Form, type Student } from './student'

/** A person with a gauge: reads each measure a little high or low, scatters, rounds to the gauge's step, and slips. */
export type Grader = { readonly bias: readonly number[]; readonly noise: number; readonly slips: number }

export type Grading = {
  readonly graders: number
  /** Mean and sd over graders of the bias, as a share of each measure's limit; above 0 is harsh. */
  readonly harshness: number
  readonly disagreement: number
  readonly noise: number
  readonly slips: number
  /** Share of inspections in which something is not measured. */
  readonly gaps: number
  readonly marginsKnown: boolean
}

const GAUGE_STEP = 0.2

export function makeGrader(dice: Dice, { harshness, disagreement, noise, slips }: Grading): Grader {
  return { bias: MEASURES.map(({ limit }) => dice.normal(harshness, disagreement) * limit), noise: noise * dice.factor(0.3), slips }
}

/** The coupon as graded. The verdict follows the readings; where something is not measured, or margins are not kept, it stands alone. */
export function grade(bead: Bead, day: number, grader: Grader, grading: Grading, tighter: number, dice: Dice): PracticeCoupon {
  const margins = MEASURES.map((measure, m) => {
    const readings = bead.deviations[m]!.map((true_) => {
      const read = true_ + grader.bias[m]! + dice.normal(0, grader.noise * measure.limit)
      return marginOf(measure, Math.round(read / GAUGE_STEP) * GAUGE_STEP) - tighter * measure.scale
    })
    return Math.min(...readings) / measure.scale
  })
  const attributesGood = bead.faults.every((fault) => (dice.happens(grader.slips) ? fault : !fault))
  const worstMargin = Math.min(...margins)
  const accepted = worstMargin >= -1e-9 && attributesGood
  return grading.marginsKnown && !dice.happens(grading.gaps) ? { day, accepted, worstMargin, attributesGood } : { day, accepted }
}

/** What an examiner without bias or slips says of one bead welded now. Stops at the first thing out of limits. */
export function passesTruly(student: Student, form: Form, tighter: number, dice: Dice): boolean {
  if (faultsOf(student, form, dice).some((fault) => fault)) return false
  return MEASURES.every((measure, m) =>
    deviationsOf(student, form, m, dice).every((deviation) => marginOf(measure, deviation) >= tighter * measure.scale))
}

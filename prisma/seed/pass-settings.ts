import type { AdvisedRange } from '@/lib/procedure/booth-card'
import type { Pass } from '@/prisma/generated/client'
import type { Bead } from './bead'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'

/** A setting somewhere in its advised range, sometimes past it, as a person reads it off a dial with steps of `step`; null where the card says nothing. */
function dialled(range: AdvisedRange | null, step: number, dice: Dice): number | null {
  if (range?.min == null || range.max == null) return null
  const spread = (range.max - range.min) / 3.5
  return Math.round((dice.normal((range.min + range.max) / 2, spread)) / step) * step
}

const IN_PER_MIN = 25.4 / 60

/** The passes of a coupon with their settings; some people leave some of it blank. */
export function passesOf(exercise: ExercisePlan, bead: Bead, key: Pick<Pass, 'programId' | 'couponId'>, dice: Dice): Pass[] {
  const { boothCard: card } = exercise
  const kept = dice.fork('kept')
  const wireFeed = dialled(card.wireFeedMmPerS, 5 * IN_PER_MIN, dice)
  const setting = {
    amps: kept.chance(exercise.process === 'SMAW' ? 0.95 : 0.5) ? dialled(card.amps, 5, dice) : null,
    volts: kept.chance(0.9) ? dialled(card.volts, 0.5, dice) : null,
    wireFeedMmPerS: kept.chance(0.9) ? wireFeed : null,
    contactTipToWorkMm: kept.chance(0.5) ? dialled(card.contactTipToWorkMm, 25.4 / 16, dice) : null,
    polarity: card.polarity,
    gas: card.gas,
  }
  const timed = kept.chance(0.85)
  return bead.arcSeconds.map((seconds, index) => ({
    ...key, sequence: index + 1, ...setting, arcSeconds: timed ? seconds : null, lengthMm: exercise.lengthMm,
  }))
}

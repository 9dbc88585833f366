import type { Indication, IndicationKind } from '@/lib/scoring/types'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import type { Skill } from './learner'

export type Faults = { readonly indications: readonly Indication[]; readonly cratersFilled: boolean; readonly fusionComplete: boolean }

/** The chance of a fault that is there or not: `even` is the skill at which it is as likely as not. */
const likelihood = (skill: number, even: number, slope: number): number => 1 / (1 + Math.exp(slope * (skill - even)))

/** Along the weld, away from its very ends. */
const somewhere = (lengthMm: number, dice: Dice): number => lengthMm * dice.between(0.04, 0.92)

function undercuts(exercise: ExercisePlan, skill: number, dice: Dice): Indication[] {
  const { lengthMm, position } = exercise
  const horizontal = position.startsWith('2')
  return Array.from({ length: dice.poisson(0.9 * Math.exp(-0.75 * skill)) }, () => {
    const atMm = somewhere(lengthMm, dice)
    return {
      kind: 'undercut', atMm, toe: dice.chance(horizontal ? 0.85 : 0.5) ? 'A' : 'B',
      lengthMm: Math.min(lengthMm - atMm, dice.logNormal(13, 0.5)),
      depthMm: dice.logNormal(0.5 * Math.exp(-0.25 * skill), 0.5),
    } satisfies Indication
  })
}

/** Pores come in clusters, from a draft or a wrong stick-out. */
function pores(exercise: ExercisePlan, skill: number, dice: Dice): Indication[] {
  if (!dice.chance(Math.min(0.8, 0.095 * Math.exp(-0.8 * skill)))) return []
  const about = somewhere(exercise.lengthMm, dice)
  const many = dice.chance(0.12) ? 9 : 1.3
  return Array.from({ length: 1 + dice.poisson(many) }, () => ({
    kind: 'pore', atMm: Math.min(exercise.lengthMm, Math.max(0, about + dice.normal(0, 8))), diameterMm: dice.logNormal(1.3, 0.4),
  }) satisfies Indication)
}

/** Faults that only have a place: a lump at a restart, slag left on, a strike beside the weld. */
function seldom(kind: IndicationKind, chance: number, exercise: ExercisePlan, dice: Dice): Indication[] {
  return dice.chance(chance) ? [{ kind, atMm: somewhere(exercise.lengthMm, dice) }] : []
}

export function faultsOf(exercise: ExercisePlan, skill: Skill, dice: Dice): Faults {
  const cratersFilled = !dice.chance(likelihood(skill.crater, -2.2, 1.3))
  const fusionComplete = !dice.chance(likelihood(skill.fusion, -2.7, 1.3))
  const end = exercise.lengthMm
  return {
    cratersFilled,
    fusionComplete,
    indications: [
      ...undercuts(exercise, skill.undercut, dice),
      ...pores(exercise, skill.gas, dice),
      ...seldom('overlap', likelihood(skill.profile, -2.7, 1.3), exercise, dice),
      ...seldom('poor-restart', likelihood(skill.restart, -2.8, 1.3), exercise, dice),
      ...seldom(exercise.process === 'GMAW' ? 'spatter' : dice.chance(0.6) ? 'slag' : 'spatter', likelihood(skill.cleaning, -2.7, 1.3), exercise, dice),
      ...seldom('arc-strike', likelihood(skill.cleaning, -3.4, 1.3), exercise, dice),
      ...(!fusionComplete ? seldom('lack-of-fusion', 0.7, exercise, dice) : []),
      ...(!cratersFilled && dice.chance(0.35) ? [{ kind: dice.chance(0.15) ? 'crater-crack' : 'crater-pipe', atMm: end * dice.between(0.97, 1) } satisfies Indication] : []),
    ],
  }
}

import { stationPlaces } from '@/lib/procedure/exercise'
import type { Indication } from '@/lib/scoring/types'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import { faultsOf } from './faults'
import type { Skill } from './learner'

export type TrueStation = {
  readonly atMm: number
  readonly widthMm: number
  /** Fillets: the legs and how far the face bulges. */
  readonly legAMm: number | null
  readonly legBMm: number | null
  readonly convexityMm: number | null
  /** Grooves: how far the face stands above the plate. */
  readonly reinforcementMm: number | null
}

/** A weld as it is, before anyone has looked at it. */
export type Bead = {
  readonly stations: readonly TrueStation[]
  readonly indications: readonly Indication[]
  readonly cratersFilled: boolean
  readonly fusionComplete: boolean
  /** Seconds the arc burned in each pass. */
  readonly arcSeconds: readonly number[]
}

/** Fillets are welded a little over size: a code knows no upper limit and a short leg fails. */
const OVERSIZE_MM = 1.15
const ROOT_OPENING_MM = 6.35
const STRINGER_FACTOR = 5.5

/** Errors halve for about every 1.3 of skill. */
const shrunk = (size: number, skill: number): number => size * Math.exp(-0.53 * skill)

/** One reading after another along the weld: each leans on the one before it, as a hand's drift does. */
function drift(count: number, sd: number, dice: Dice): number[] {
  const lean = 0.5
  let last = dice.normal(0, sd)
  return Array.from({ length: count }, () => (last = lean * last + dice.normal(0, sd * Math.sqrt(1 - lean * lean))))
}

/** The shop rule asks for a width; everything else about size follows from it. */
const isShopRule = (exercise: ExercisePlan): boolean => exercise.criteria.id === 'shop-bead'
const shopWidth = (exercise: ExercisePlan): number => STRINGER_FACTOR * (exercise.electrodeDiameterMm ?? 0)

function filletStations(exercise: ExercisePlan, skill: Skill, dice: Dice): TrueStation[] {
  const nominal = exercise.nominalLegMm ?? 0
  const aim = isShopRule(exercise) ? shopWidth(exercise) / Math.SQRT2 : nominal + OVERSIZE_MM
  /** How far the leg may stray before a rule is broken: half the band, or down to nominal. */
  const room = isShopRule(exercise) ? (exercise.electrodeDiameterMm ?? 0) / 2 / Math.SQRT2 : OVERSIZE_MM
  const places = stationPlaces(exercise.lengthMm, exercise.stationCount)
  const off = dice.normal(isShopRule(exercise) ? 0.1 * room : -0.1 * room, shrunk(0.43 * room, skill.size))
  const wander = drift(places.length, shrunk(0.38 * room, skill.evenness), dice)
  // Metal sags: the lower leg of a horizontal fillet outgrows the upper one.
  const sag = exercise.position === '2F' || exercise.position === '4F' ? 0.45 : 0
  const lean = dice.normal(shrunk(sag, skill.balance), shrunk(0.45, skill.balance))
  const crown = dice.logNormal(shrunk(0.85, skill.profile * 0.8), 0.35)
  return places.map((atMm, index) => {
    const leg = aim + off + (wander[index] ?? 0)
    const legAMm = Math.max(1.5, leg - lean / 2 + dice.normal(0, 0.08))
    const legBMm = Math.max(1.5, leg + lean / 2 + dice.normal(0, 0.08))
    return {
      atMm, legAMm, legBMm, widthMm: Math.hypot(legAMm, legBMm) * dice.normal(1, 0.008),
      convexityMm: Math.max(0, crown * dice.normal(1, 0.2)), reinforcementMm: null,
    }
  })
}

function grooveStations(exercise: ExercisePlan, skill: Skill, dice: Dice): TrueStation[] {
  const places = stationPlaces(exercise.lengthMm, exercise.stationCount)
  const aim = isShopRule(exercise) ? shopWidth(exercise) : ROOT_OPENING_MM + 0.83 * exercise.plateThicknessMm + 3
  const room = (exercise.electrodeDiameterMm ?? 2) / 2
  const off = dice.normal(0.1 * room, shrunk(0.42 * room, skill.size))
  const wander = drift(places.length, shrunk(0.34 * room, skill.evenness), dice)
  // Beginners pile the cover pass up.
  const height = dice.normal(1.5 + shrunk(0.5, skill.profile), shrunk(0.45, skill.profile))
  const waves = drift(places.length, shrunk(0.3, skill.profile), dice)
  return places.map((atMm, index) => ({
    atMm, legAMm: null, legBMm: null, convexityMm: null,
    widthMm: Math.max(3, aim + off + (wander[index] ?? 0)),
    reinforcementMm: Math.max(0, height + (waves[index] ?? 0)),
  }))
}

function arcTimes(exercise: ExercisePlan, skill: Skill, dice: Dice): number[] {
  const { min, max } = exercise.boothCard.travelSpeedMmPerS ?? { min: null, max: null }
  const usual = ((min ?? 3) + (max ?? 5)) / 2
  return Array.from({ length: exercise.passCount }, () => Math.round(exercise.lengthMm / (usual * Math.max(0.5, dice.normal(1, shrunk(0.12, skill.evenness))))))
}

/** Welds a coupon. */
export function weld(exercise: ExercisePlan, skill: Skill, dice: Dice): Bead {
  const stations = exercise.weldType === 'fillet' ? filletStations(exercise, skill, dice) : grooveStations(exercise, skill, dice)
  return { stations, ...faultsOf(exercise, skill, dice), arcSeconds: arcTimes(exercise, skill, dice) }
}

import type { AdvisedRange } from '../procedure/booth-card'
import type { ExerciseFacts, Joint } from '../procedure/exercise'
import type { Polarity, Process } from '../procedure/process'
import type { Source } from '../source'
import { formatForReader } from '../units/display'
import { litresPerMinute, parseGasFlow } from '../units/gas-flow'
import { fromInches, MM_PER_INCH } from '../units/length'

/** An exercise a class can start from. */
export type LibraryExercise = {
  /** Names it within the library. */
  readonly key: string
  /** What it is good for, in one line. */
  readonly about: string
  readonly facts: ExerciseFacts
}

/** Where the settings of the library come from. */
export const LIBRARY_SOURCE: Source = {
  title: 'Common practice', clause: null, status: 'common-practice', note: 'Starting points from memory; no document stands behind them. Tune them to the wire maker’s sheet.',
}
const STARTING_POINT = 'Starting point; tune to the wire maker’s sheet.'

type Pair = readonly [low: number, high: number]

/** Settings as shops here say them: inches, in/min, amperes, volts, degrees, seconds. */
export type CardPlan = {
  readonly polarity: Polarity
  readonly amps: Pair
  readonly volts?: Pair
  readonly feed?: Pair
  readonly stickOut?: Pair
  readonly travel: Pair
  readonly gas?: 'C1' | 'M21'
  readonly work: Pair
  readonly angle: Pair
  readonly direction: 'drag' | 'push'
  readonly pause?: Pair
  readonly note: string
}

/** Sizes in inches. A fillet names its leg; a groove has none. */
export type LibraryPlan = {
  readonly key: string
  readonly about: string
  readonly process: Process
  readonly rod: string
  readonly size: number
  readonly joint: Joint
  readonly position: string
  readonly progression?: 'up' | 'down'
  readonly plate: number
  readonly leg?: number
  readonly passes?: number
  readonly criteria?: string
  readonly card: CardPlan
}

const round = (value: number): number => Math.round(value * 1e4) / 1e4
const range = (pair: Pair | undefined, perUnit = 1): AdvisedRange | null => (pair === undefined ? null : { min: round(pair[0] * perUnit), max: round(pair[1] * perUnit) })
const PER_MINUTE = MM_PER_INCH / 60
const GAS_FLOW: AdvisedRange = { min: round(litresPerMinute(parseGasFlow('35', 'cfh'))), max: round(litresPerMinute(parseGasFlow('45', 'cfh'))) }
const inches = (size: number): string => formatForReader(fromInches(size), 'in')

/** A plan as the facts of an exercise: eight inches long with eight stations for a groove, six with six for a fillet. */
export function libraryExercise(plan: LibraryPlan): LibraryExercise {
  const { card, leg, progression = null } = plan
  const stations = leg === undefined ? 8 : 6
  return {
    key: plan.key, about: plan.about,
    facts: {
      title: `${[plan.position, progression].filter(Boolean).join(' ')}, ${plan.joint} joint, ${inches(plan.plate)} plate, ${inches(plan.size)} ${plan.rod}`,
      process: plan.process, joint: plan.joint, weldType: leg === undefined ? 'groove' : 'fillet', position: plan.position, progression,
      plateThicknessMm: fromInches(plan.plate), material: 'ASTM A36', electrodeClass: plan.rod, electrodeDiameterMm: fromInches(plan.size),
      nominalLegMm: leg === undefined ? null : fromInches(leg), lengthMm: fromInches(stations), passCount: plan.passes ?? 1, stationCount: stations, gauge: 'in32',
      completePenetration: leg === undefined ? true : null, transverseToTension: null, stiffenerToWeb: null,
      boothCard: {
        polarity: card.polarity, amps: range(card.amps), volts: range(card.volts), wireFeedMmPerS: range(card.feed, PER_MINUTE),
        contactTipToWorkMm: range(card.stickOut, MM_PER_INCH), travelSpeedMmPerS: range(card.travel, PER_MINUTE), gas: card.gas ?? null,
        gasFlowLPerMin: card.gas ? GAS_FLOW : null, workAngleDeg: range(card.work), travelAngleDeg: range(card.angle), travelDirection: card.direction,
        sidePauseSeconds: range(card.pause), note: `${card.note} ${STARTING_POINT}`,
      },
      criteria: { id: plan.criteria ?? (leg === undefined ? 'qualification-visual.us' : 'structural-static.us'), version: 1 },
    },
  }
}

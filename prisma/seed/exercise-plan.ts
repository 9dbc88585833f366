import type { BoothCard } from '@/lib/procedure/booth-card'
import type { ExerciseFacts, Joint } from '@/lib/procedure/exercise'
import type { Process } from '@/lib/procedure/process'
import { formatForReader } from '@/lib/units/display'
import { fromInches } from '@/lib/units/length'
import type { GaugeUnit } from '@/lib/units/gauge-steps'
import { card, type CardInput } from './booth-cards'

export type ExercisePlan = ExerciseFacts & {
  /** Names the exercise in the seed and its tests. */
  readonly key: string
  /** Key of the exercise that must be ready first. */
  readonly opensAfter: string | null
  /** How much lower a student's skill starts here than on the first exercise, in units of the worst standardised margin. */
  readonly difficulty: number
  /** The booth card before it was retuned for the current term, where it was: the exercise then has two versions. */
  readonly cardBefore: BoothCard | null
}

type Shape = {
  readonly key: string
  readonly opensAfter: string | null
  readonly difficulty: number
  readonly joint: Joint
  readonly position: string
  readonly progression?: 'up' | 'down'
  /** Sizes in inches. */
  readonly plate: number
  readonly wire: number
  readonly electrode: string
  readonly length: number
  readonly passes: number
  readonly stations: number
  readonly gauge?: GaugeUnit
  readonly card: CardInput
  readonly cardBefore?: CardInput
}
type JudgedBy = 'shop-bead' | 'structural-static.us' | 'qualification-visual.us'
type FilletShape = Shape & { readonly leg: number; readonly judgedBy: Exclude<JudgedBy, 'qualification-visual.us'> }
type GrooveShape = Shape & { readonly judgedBy: Exclude<JudgedBy, 'structural-static.us'> }

/** How much easier or harder it is for the invented hands to meet a set of criteria; tuned so that pass rates look alike. */
const STRICTNESS: Readonly<Record<JudgedBy, number>> = { 'shop-bead': -0.45, 'structural-static.us': 0.25, 'qualification-visual.us': 0.3 }

function titleOf({ joint, position, progression, plate, wire, electrode }: Shape): string {
  const going = progression === undefined ? '' : ` ${progression}`
  const size = (inches: number) => formatForReader(fromInches(inches), 'in')
  return `${position}${going}, ${joint} joint, ${size(plate)} plate, ${size(wire)} ${electrode}`
}

function plan(process: Process, shape: Shape & { judgedBy: JudgedBy }, weld: Pick<ExerciseFacts, 'weldType' | 'nominalLegMm'>): ExercisePlan {
  return {
    ...weld,
    key: shape.key, opensAfter: shape.opensAfter, difficulty: shape.difficulty + STRICTNESS[shape.judgedBy],
    title: titleOf(shape),
    process,
    joint: shape.joint, position: shape.position, progression: shape.progression ?? null,
    plateThicknessMm: fromInches(shape.plate),
    material: 'ASTM A36',
    electrodeClass: shape.electrode,
    electrodeDiameterMm: fromInches(shape.wire),
    lengthMm: fromInches(shape.length),
    passCount: shape.passes, stationCount: shape.stations, gauge: shape.gauge ?? 'in32',
    boothCard: card(shape.card),
    cardBefore: shape.cardBefore ? card(shape.cardBefore) : null,
    criteria: { id: shape.judgedBy, version: 1 },
  }
}

export const fillet = (process: Process, shape: FilletShape): ExercisePlan =>
  plan(process, shape, { weldType: 'fillet', nominalLegMm: fromInches(shape.leg) })

export const groove = (process: Process, shape: GrooveShape): ExercisePlan =>
  plan(process, shape, { weldType: 'groove', nominalLegMm: null })

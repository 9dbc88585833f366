import type { GaugeUnit } from '../units/gauge-steps'
import type { BoothCard } from './booth-card'
import type { Process } from './process'

/** Joint types of AWS A3.0. */
export const JOINTS = ['lap', 'tee', 'corner', 'butt', 'edge'] as const
export type Joint = (typeof JOINTS)[number]

/** The facts of one version of an exercise. Lengths in millimetres; null is "not given". */
export type ExerciseFacts = {
  readonly title: string
  readonly process: Process
  readonly joint: Joint
  readonly weldType: 'fillet' | 'groove'
  /** Test position: '1F' … '4F', '1G' … '4G'. */
  readonly position: string
  readonly progression: 'up' | 'down' | null
  readonly plateThicknessMm: number
  /** Base metal as the mill certificate names it. */
  readonly material: string
  /** Classification of the wire or rod, as lib/consumables reads it. */
  readonly electrodeClass: string
  readonly electrodeDiameterMm: number | null
  readonly nominalLegMm: number | null
  readonly lengthMm: number
  /** Facts of the joint some rules turn on. null or absent: nobody said, and the rules read it as not so. */
  readonly completePenetration?: boolean | null
  readonly transverseToTension?: boolean | null
  readonly stiffenerToWeb?: boolean | null
  readonly passCount: number
  /** How many stations are measured on every coupon, so that the worst of them means the same each time. */
  readonly stationCount: number
  readonly gauge: GaugeUnit
  readonly boothCard: BoothCard
  readonly criteria: { readonly id: string; readonly version: number }
}

/** Where the stations lie: evenly spaced, each in the middle of its own share of the length. */
export function stationPlaces(lengthMm: number, count: number): number[] {
  if (!(lengthMm > 0) || !Number.isInteger(count) || count < 1) {
    throw new RangeError('Stations need a weld longer than zero and a whole count of at least one.')
  }
  return Array.from({ length: count }, (_, index) => ((index + 0.5) * lengthMm) / count)
}

/** The few words a board's column has room for: '3F up lap'. */
export function shortTitle(exercise: { readonly position: string; readonly progression: string | null; readonly joint: string }): string {
  return [exercise.position, exercise.progression, exercise.joint].filter(Boolean).join(' ')
}

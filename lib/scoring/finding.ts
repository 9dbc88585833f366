import { marginScale } from './margin-scale'
import type { Rule } from '../criteria/types'
import type { NotApplicableReason, NotMeasuredReason } from './reason'
import { TOLERANCE } from './tolerance'
import type { Finding } from './types'

export type Place = NonNullable<Finding['where']>
type Limits = Finding['limit']

export const NO_LIMIT: Limits = Object.freeze({ min: null, max: null })

/** Everything a rule found out about a weld it could judge. */
export type Judgement = {
  readonly unit: Finding['unit']
  readonly measured: number
  readonly min: number | null
  readonly max: number | null
  /** Distance to the limit, in the unit; 0 and up is inside. */
  readonly margin: number
  readonly where: Place | null
  /** The gauge's step when the measured value is a reading of it, else null: nothing seen is no close call, nor is a count. */
  readonly resolution: number | null
  readonly extent?: Finding['extent'] | undefined
  readonly toe?: Finding['toe'] | undefined
}

/** True when a margin is outside the limit by more than rounding. */
export const isOutside = (margin: number): boolean => margin < -TOLERANCE

/** A margin this close to the limit is on it. */
const settle = (margin: number): number => (margin <= TOLERANCE && margin >= -TOLERANCE ? 0 : margin)

type Draft = { -readonly [K in keyof Finding]: Finding[K] }

export function judged(rule: Rule, judgement: Judgement): Finding {
  const { unit, measured, min, max, where, resolution, extent, toe } = judgement
  const margin = settle(judgement.margin)
  const finding: Draft = {
    rule: rule.id,
    verdict: margin < 0 ? 'reject' : 'accept',
    measured,
    limit: { min, max },
    unit,
    margin,
    closeCall: resolution !== null && Math.abs(margin) <= resolution + TOLERANCE,
    where,
    source: rule.source,
  }
  if (rule.readiness.as === 'margin') finding.standardMargin = margin / marginScale(rule.readiness.scale, finding.limit)
  if (extent) finding.extent = extent
  if (toe) finding.toe = toe
  return finding
}

function unjudged(rule: Rule, verdict: 'not-measured' | 'not-applicable', unit: Finding['unit'], limit: Limits, where: Place | null, reason: string): Finding {
  return { rule: rule.id, verdict, measured: null, limit, unit, margin: null, closeCall: false, where, source: rule.source, reason }
}

export function notMeasured(rule: Rule, unit: Finding['unit'], reason: NotMeasuredReason, limit = NO_LIMIT, where: Place | null = null): Finding {
  return unjudged(rule, 'not-measured', unit, limit, where, reason)
}

export function notApplicable(rule: Rule, unit: Finding['unit'], reason: NotApplicableReason): Finding {
  return unjudged(rule, 'not-applicable', unit, NO_LIMIT, null, reason)
}

/** Looked for and not seen, under a limit that hangs on a width nobody read: accepted, with no margin to tell. */
export function noneFound(rule: Rule, limit: Limits): Finding {
  return { rule: rule.id, verdict: 'accept', measured: 0, limit, unit: 'mm', margin: null, closeCall: false, where: null, source: rule.source }
}

export const placeOf = (fromMm: number, toMm: number): Place => ({ fromMm, toMm })

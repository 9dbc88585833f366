import type { Condition, Rule } from '../criteria/types'
import type { Facts } from './facts'
import type { NotApplicableReason } from './reason'
import { TOLERANCE } from './tolerance'

type Thickness = NonNullable<Condition['thickness']>

function inRange(mm: number, range: Thickness): boolean {
  return (range.from === undefined || mm >= range.from - TOLERANCE)
    && (range.above === undefined || mm > range.above + TOLERANCE)
    && (range.upTo === undefined || mm <= range.upTo + TOLERANCE)
    && (range.below === undefined || mm < range.below - TOLERANCE)
}

const differs = (wanted: boolean | undefined, actual: boolean): boolean => wanted !== undefined && wanted !== actual

/** What in a condition does not hold: null when all holds, 'unknown' when only an unknown thickness could tell. */
function failing(condition: Condition, weld: Facts): NotApplicableReason | 'unknown' | null {
  if (condition.weld !== undefined && (condition.weld === 'fillet') !== weld.fillet) return condition.weld === 'fillet' ? 'fillet-only' : 'groove-only'
  if (differs(condition.completePenetration, weld.completePenetration)
    || differs(condition.transverseToTension, weld.transverseToTension)
    || differs(condition.stiffenerToWeb, weld.stiffenerToWeb)) return 'other-service'
  if (condition.thickness === undefined) return null
  if (weld.thicknessMm === null) return 'unknown'
  return inRange(weld.thicknessMm, condition.thickness) ? null : 'other-thickness'
}

/** Why a rule is not for this weld: null when it is, 'unknown' when the plate's thickness would decide and is not known. */
export function notFor(rule: Rule, weld: Facts): NotApplicableReason | 'unknown' | null {
  const inside = rule.when === undefined ? null : failing(rule.when, weld)
  if (inside !== null && inside !== 'unknown') return inside
  if (rule.unless !== undefined) {
    const outside = failing(rule.unless, weld)
    if (outside === null) return 'other-service'
    if (outside === 'unknown') return 'unknown'
  }
  return inside
}

import type { Limit, RuleOf } from '../../criteria/types'
import type { Evidence } from '../evidence'
import { reasonWithout, type Widths } from '../facts'
import { isOutside, judged, notApplicable, notMeasured, placeOf } from '../finding'
import { isWidth, limitFor, mostAllowed, unknownIn, variesAlong } from '../limit'
import type { Station } from '../types'
import type { Judge } from './judge'
import { atMost, neverRead, readingAt, reasonWithoutReading, unitOfReading } from './reading'

type Worst = { station: Station; value: number; min: number | null; max: number | null; margin: number }

/** Worse is a smaller margin. Stations come in order, so the first along the weld stays; at one place the smaller reading does. */
function worse(margin: number, station: Station, value: number, than: Worst | null): boolean {
  if (than === null || margin !== than.margin) return than === null || margin < than.margin
  return station.atMm === than.station.atMm && value < than.value
}

/** Every station's reading between two limits, either of which may be open. */
export function readingRange(rule: RuleOf<'reading-range'>): Judge {
  const { reading } = rule
  const unit = unitOfReading(reading)
  const most = rule.max === null ? Infinity : mostAllowed(rule.max)
  const varies = variesAlong(rule.min) || variesAlong(rule.max)
  const minAt = (evidence: Evidence, at: Widths | null) => (rule.min === null ? null : limitFor(rule.min, evidence.weld, at))
  const maxAt = (evidence: Evidence, at: Widths | null) => (rule.max === null ? null : limitFor(rule.max, evidence.weld, at))

  return (evidence) => {
    const { stations, weld } = evidence
    if (rule.optional === true && neverRead(stations, reading)) return notApplicable(rule, unit, 'not-recorded')
    let min = minAt(evidence, null)
    let max = maxAt(evidence, null)
    let worst: Worst | null = null
    let unread: Station | null = null
    let unlimited: { limit: Limit; station: Station } | null = null

    for (const station of stations) {
      if (varies) {
        min = minAt(evidence, station)
        max = maxAt(evidence, station)
      }
      const value = readingAt(station, reading)
      if (value === null) unread ??= station
      if (min === null && rule.min !== null) unlimited ??= { limit: rule.min, station }
      if (max === null && rule.max !== null) unlimited ??= { limit: rule.max, station }
      // A reading that is not whole, or a limit that is not known, can still show that the weld is outside.
      const shown = value ?? atMost(station, reading)
      const above = min === null ? Infinity : shown - min
      const below = value === null ? Infinity : (max ?? most) - value
      const margin = Math.min(above, below)
      if (value === null && !isOutside(margin)) continue
      if (worse(margin, station, shown, worst)) worst = { station, value: shown, min, max: max ?? (isOutside(below) ? most : null), margin }
    }

    if (worst === null || !isOutside(worst.margin)) {
      const limit = varies ? undefined : { min, max }
      if (stations.length === 0) return notMeasured(rule, unit, 'no-stations', limit)
      if (unlimited !== null) {
        const { limit: unknown, station } = unlimited
        const quantity = unknownIn(unknown, weld, station)
        const where = isWidth(quantity) ? placeOf(station.atMm, station.atMm) : null
        return notMeasured(rule, unit, reasonWithout(quantity, weld), limit, where)
      }
      if (unread !== null) return notMeasured(rule, unit, reasonWithoutReading(reading), limit, placeOf(unread.atMm, unread.atMm))
    }
    if (worst === null) return notMeasured(rule, unit, 'no-stations')
    const at = worst.station.atMm
    return judged(rule, {
      unit, measured: worst.value, min: worst.min, max: worst.max, margin: worst.margin,
      // The gauge's step is a length: an angle within it of its limit is no close call.
      where: placeOf(at, at), resolution: unit === 'mm' ? evidence.gaugeResolutionMm : null,
    })
  }
}

import type { Limit, RuleOf } from '../../criteria/types'
import type { Evidence } from '../evidence'
import { reasonWithout } from '../facts'
import { isOutside, judged, notApplicable, notMeasured, placeOf } from '../finding'
import { limitFor, mostAllowed, unknownIn } from '../limit'
import type { Station } from '../types'
import type { Judge } from './judge'
import { atMost, neverRead, readingAt, reasonWithoutReading } from './reading'

type Worst = { station: Station; value: number; min: number | null; max: number | null; margin: number }

const dependsOnWidth = (limit: Limit | null): boolean =>
  limit !== null && ((limit.form === 'linear' && limit.of === 'width') || (limit.form === 'table' && limit.by === 'width'))

/** Worse is a smaller margin. Stations come in order, so the first along the weld stays; at one place the smaller reading does. */
function worse(margin: number, station: Station, value: number, than: Worst | null): boolean {
  if (than === null || margin !== than.margin) return than === null || margin < than.margin
  return station.atMm === than.station.atMm && value < than.value
}

/** Every station's reading between two limits, either of which may be open. */
export function readingRange(rule: RuleOf<'reading-range'>): Judge {
  const { reading } = rule
  const most = rule.max === null ? Infinity : mostAllowed(rule.max)
  const varies = dependsOnWidth(rule.min) || dependsOnWidth(rule.max)
  const minAt = (evidence: Evidence, width: number | null) => (rule.min === null ? null : limitFor(rule.min, evidence.weld, width))
  const maxAt = (evidence: Evidence, width: number | null) => (rule.max === null ? null : limitFor(rule.max, evidence.weld, width))

  return (evidence) => {
    const { stations, weld } = evidence
    if (rule.optional === true && neverRead(stations, reading)) return notApplicable(rule, 'mm', 'not-recorded')
    let min = minAt(evidence, null)
    let max = maxAt(evidence, null)
    let worst: Worst | null = null
    let unread: Station | null = null
    let unlimited: { limit: Limit; station: Station | null } | null = null

    for (const station of stations) {
      const width = station.widthMm ?? null
      if (varies) {
        min = minAt(evidence, width)
        max = maxAt(evidence, width)
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
      if (stations.length === 0) return notMeasured(rule, 'mm', 'no-stations', limit)
      if (unlimited !== null) {
        const { limit: unknown, station } = unlimited
        const quantity = unknownIn(unknown, weld, station?.widthMm ?? null)
        const where = quantity === 'width' && station !== null ? placeOf(station.atMm, station.atMm) : null
        return notMeasured(rule, 'mm', reasonWithout(quantity, weld), limit, where)
      }
      if (unread !== null) return notMeasured(rule, 'mm', reasonWithoutReading(reading), limit, placeOf(unread.atMm, unread.atMm))
    }
    if (worst === null) return notMeasured(rule, 'mm', 'no-stations')
    const at = worst.station.atMm
    return judged(rule, {
      unit: 'mm', measured: worst.value, min: worst.min, max: worst.max, margin: worst.margin,
      where: placeOf(at, at), resolution: evidence.gaugeResolutionMm,
    })
  }
}

import type { RuleOf } from '../../criteria/types'
import { reasonWithout } from '../facts'
import { isOutside, judged, notMeasured, placeOf } from '../finding'
import { limitFor, mostAllowed, unknownIn } from '../limit'
import type { Station } from '../types'
import type { Judge } from './judge'
import { readingAt, reasonWithoutReading } from './reading'

/** Largest less smallest reading of the weld. The place runs from one of the two to the other. */
export function readingSpread(rule: RuleOf<'reading-spread'>): Judge {
  const most = mostAllowed(rule.max)
  return ({ stations, weld, gaugeResolutionMm }) => {
    const known = limitFor(rule.max, weld, null)
    let low: { station: Station; value: number } | null = null
    let high: { station: Station; value: number } | null = null
    let unread: Station | null = null
    for (const station of stations) {
      const value = readingAt(station, rule.reading)
      if (value === null) {
        unread ??= station
        continue
      }
      if (low === null || value < low.value) low = { station, value }
      if (high === null || value > high.value) high = { station, value }
    }
    const spread = low === null || high === null ? 0 : high.value - low.value
    const margin = (known ?? most) - spread
    if (!isOutside(margin) || low === null || high === null) {
      const limit = { min: null, max: known }
      if (stations.length === 0) return notMeasured(rule, 'mm', 'no-stations', limit)
      if (known === null) return notMeasured(rule, 'mm', reasonWithout(unknownIn(rule.max, weld, null), weld), limit)
      if (unread !== null || low === null || high === null) {
        const where = unread === null ? null : placeOf(unread.atMm, unread.atMm)
        return notMeasured(rule, 'mm', reasonWithoutReading(rule.reading), limit, where)
      }
      if (stations.length === 1) return notMeasured(rule, 'mm', 'one-station', limit)
    }
    const [from, to] = [low.station.atMm, high.station.atMm]
    return judged(rule, {
      unit: 'mm', measured: spread, min: null, max: known ?? most, margin,
      where: placeOf(Math.min(from, to), Math.max(from, to)), resolution: gaugeResolutionMm,
    })
  }
}

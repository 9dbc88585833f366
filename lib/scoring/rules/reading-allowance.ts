import type { RuleOf } from '../../criteria/types'
import type { Evidence } from '../evidence'
import { reasonWithout } from '../facts'
import { isOutside, judged, notApplicable, notMeasured, placeOf } from '../finding'
import { limitFor, unknownIn } from '../limit'
import type { Finding, Station } from '../types'
import type { Span } from '../windows/longest-in-window'
import { stretches } from '../windows/stretches'
import { mostBeyond, sustainedSize } from '../windows/sustained-size'
import type { Judge } from './judge'
import { atMost, neverRead, readingAt, reasonWithoutReading } from './reading'
import { roomIn } from './room'

type ReadingAllowance = RuleOf<'reading-allowance'>

/** The stretch a station stands for: its reading, and as its size how far that is past nominal. */
type Stretch = Span & { readonly reading: number }
type Read = { readonly spans: readonly Stretch[]; readonly deepest: Stretch | null; readonly unread: Station | null }

/**
 * How far each station's reading is past nominal (below nominal is a negative number past), over the stretch it stands for.
 * Stations at one place count once, by the worse.
 */
function pastNominal(rule: ReadingAllowance, nominal: number, evidence: Evidence): Read {
  const { stations, weld } = evidence
  const bounds = stretches(stations, weld.lengthMm)
  const spans: Stretch[] = []
  let deepest: Read['deepest'] = null
  let unread: Station | null = null
  for (let index = 0; index < stations.length; index++) {
    const station = stations[index] as Station
    const whole = readingAt(station, rule.reading)
    if (whole === null) unread ??= station
    const value = whole ?? atMost(station, rule.reading)
    if (value === Infinity) continue
    const size = rule.side === 'below' ? nominal - value : value - nominal
    if (whole === null && size <= 0) continue
    const span = { fromMm: bounds[2 * index] as number, toMm: bounds[2 * index + 1] as number, size, reading: value }
    const last = spans.at(-1)
    if (last !== undefined && last.fromMm === span.fromMm && last.toMm === span.toMm) {
      if (size > last.size) spans[spans.length - 1] = span
    } else spans.push(span)
    if (deepest === null || size > deepest.size) deepest = span
  }
  return { spans, deepest, unread }
}

/** The limit on a reading that may go so far past nominal. */
function limitPast(rule: ReadingAllowance, nominal: number, by: number): Finding['limit'] {
  return rule.side === 'below' ? { min: nominal - by, max: null } : { min: null, max: nominal + by }
}

/**
 * Legs and throats: every station on the right side of nominal, and past it by a limited amount over a limited length.
 *
 * Two distances decide, both in the reading's unit: from the worst station to the furthest a reading may go, and from the sustained
 * reading (what the weld keeps up outside the allowed length) to nominal. The lesser is the margin.
 */
export function readingAllowance(rule: ReadingAllowance): Judge {
  return (evidence) => {
    const { stations, weld } = evidence
    if (rule.optional === true && neverRead(stations, rule.reading)) return notApplicable(rule, 'mm', 'not-recorded')
    const nominal = limitFor(rule.nominal, weld, null)
    const beyond = limitFor(rule.beyond, weld, null)
    if (nominal === null || beyond === null) {
      return notMeasured(rule, 'mm', reasonWithout(unknownIn(nominal === null ? rule.nominal : rule.beyond, weld, null), weld))
    }
    if (stations.length === 0) return notMeasured(rule, 'mm', 'no-stations', limitPast(rule, nominal, 0))

    const { spans, deepest, unread } = pastNominal(rule, nominal, evidence)
    const room = roomIn(rule.over, weld.lengthMm)
    const sustained = spans.length === 0 ? -Infinity : sustainedSize(spans, room, weld.lengthMm)
    const marginBeyond = deepest === null ? Infinity : beyond - deepest.size
    const margin = Math.min(marginBeyond, -sustained)
    if (deepest === null || (unread !== null && !isOutside(margin))) {
      const at = unread?.atMm ?? 0
      return notMeasured(rule, 'mm', reasonWithoutReading(rule.reading), limitPast(rule, nominal, 0), placeOf(at, at))
    }

    const used = mostBeyond(spans, 0, room, weld.lengthMm)
    const extent = used.lengthMm > 0 ? { measuredMm: used.lengthMm, maxMm: room.allowedMm, windowMm: room.windowMm } : undefined
    const bySustained = -sustained <= marginBeyond
    const decided = bySustained ? (spans.find((span) => span.size === sustained) ?? deepest) : deepest
    const { min, max } = limitPast(rule, nominal, bySustained ? 0 : beyond)
    return judged(rule, {
      unit: 'mm', measured: decided.reading, min, max, margin,
      where: placeOf(decided.fromMm, decided.toMm), resolution: evidence.gaugeResolutionMm, extent,
    })
  }
}

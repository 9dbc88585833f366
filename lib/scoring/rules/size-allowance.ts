import type { RuleOf } from '../../criteria/types'
import { seenOf, type Evidence } from '../evidence'
import { reasonWithout } from '../facts'
import { isOutside, judged, noneFound, notMeasured, placeOf } from '../finding'
import { limitFor, mostAllowed, unknownIn } from '../limit'
import { TOLERANCE } from '../tolerance'
import type { Finding, Indication } from '../types'
import type { Span } from '../windows/longest-in-window'
import { mostBeyond, sustainedSize, type Room } from '../windows/sustained-size'
import { placeOfIndication } from './absent'
import { allLookedFor, kindsOf, type Judge, type Kinds } from './judge'
import { largestOf } from './largest-size'
import { roomIn } from './room'
import { lackOnlyWidths, reasonWithoutSize, sizeOf, widthsFor } from './size'

type SizeAllowance = RuleOf<'size-allowance'>

/** The indications with a size, and the first that needs a length to be judged and has none. */
function spansOf(rule: SizeAllowance, kinds: Kinds, everyday: number, evidence: Evidence): { spans: Span[]; unmeasured: Indication | null } {
  const spans: Span[] = []
  let unmeasured: Indication | null = null
  for (const index of kinds.indexes) {
    for (const indication of seenOf(evidence, index)) {
      const size = sizeOf(indication, rule.size)
      if (size === null || size <= 0) continue
      const hasLength = indication.lengthMm !== undefined && indication.lengthMm !== null
      if (!hasLength && size > everyday + TOLERANCE) unmeasured ??= indication
      const { fromMm, toMm } = placeOfIndication(indication, evidence.weld.lengthMm)
      spans.push({ fromMm, toMm, size })
    }
  }
  return { spans, unmeasured }
}

function extentOf(spans: readonly Span[], everyday: number, room: Room, weldMm: number): { extent: Finding['extent']; windowFromMm: number } | null {
  const { lengthMm, fromMm } = mostBeyond(spans, everyday, room, weldMm)
  return lengthMm > 0 ? { extent: { measuredMm: lengthMm, maxMm: room.allowedMm, windowMm: room.windowMm }, windowFromMm: fromMm } : null
}

/**
 * The everyday limit in any length, and a larger one over a limited length.
 *
 * Two distances decide: from the largest size to the larger limit, and from the sustained size to the everyday limit. The lesser is
 * the margin, and its pair is what the finding shows. Both only shrink when something gets deeper, longer or more.
 */
export function sizeAllowance(rule: SizeAllowance): Judge {
  const kinds = kindsOf(rule.of)
  const mostEveryday = rule.max === null ? 0 : mostAllowed(rule.max)
  const mostOver = mostAllowed(rule.allowed.max)
  const limits = [rule.max, rule.allowed.max]
  const widthsOf = widthsFor(limits)
  return (evidence) => {
    const { weld } = evidence
    const widths = widthsOf(evidence.stations)
    const knownEveryday = rule.max === null ? 0 : limitFor(rule.max, weld, widths)
    const knownOver = limitFor(rule.allowed.max, weld, widths)
    const everyday = knownEveryday ?? mostEveryday
    const over = knownOver ?? mostOver
    const largest = largestOf(kinds, rule.size, evidence)
    const { spans, unmeasured } = spansOf(rule, kinds, everyday, evidence)
    const room = roomIn(rule.allowed.over, weld.lengthMm)
    const sustained = spans.length === 0 ? -Infinity : sustainedSize(spans, room, weld.lengthMm)
    const marginOver = over - largest.mm
    const marginEveryday = everyday - sustained
    const margin = Math.min(marginOver, marginEveryday)

    if (!isOutside(margin)) {
      const limit = { min: null, max: knownEveryday }
      const unknown = knownEveryday === null ? rule.max : knownOver === null ? rule.allowed.max : null
      const nothingSeen = largest.indication === null && largest.unsized === null && allLookedFor(kinds, evidence)
      if (unknown !== null && nothingSeen && lackOnlyWidths(limits, weld)) return noneFound(rule, limit)
      if (unknown !== null) return notMeasured(rule, 'mm', reasonWithout(unknownIn(unknown, weld, widths), weld), limit)
      if (largest.unsized !== null) return notMeasured(rule, 'mm', reasonWithoutSize(rule.size), limit, placeOfIndication(largest.unsized, weld.lengthMm))
      if (unmeasured !== null) return notMeasured(rule, 'mm', 'indication-without-length', limit, placeOfIndication(unmeasured, weld.lengthMm))
      if (!allLookedFor(kinds, evidence)) return notMeasured(rule, 'mm', 'not-looked-for', limit)
    }

    const used = spans.length === 0 ? null : extentOf(spans, everyday, room, weld.lengthMm)
    const resolution = largest.indication === null ? null : evidence.gaugeResolutionMm
    if (marginEveryday <= marginOver) {
      const whole = room.windowMm >= weld.lengthMm || used === null
      const longest = spans.find((span) => span.size === sustained)
      const where = whole
        ? placeOf(longest?.fromMm ?? 0, longest?.toMm ?? weld.lengthMm)
        : placeOf(used.windowFromMm, used.windowFromMm + room.windowMm)
      return judged(rule, { unit: 'mm', measured: sustained, min: null, max: everyday, margin, where, resolution, extent: used?.extent, toe: onlyToe(kinds, evidence) })
    }
    return judged(rule, {
      unit: 'mm', measured: largest.mm, min: null, max: over, margin,
      where: largest.indication === null ? null : placeOfIndication(largest.indication, weld.lengthMm),
      resolution, extent: used?.extent, toe: largest.indication?.toe,
    })
  }
}

/** The toe all these indications are on, when they are on one. */
function onlyToe(kinds: Kinds, evidence: Evidence): Finding['toe'] {
  let toe: Finding['toe']
  for (const index of kinds.indexes) {
    for (const indication of seenOf(evidence, index)) {
      if (!indication.toe || (toe !== undefined && toe !== indication.toe)) return undefined
      toe = indication.toe
    }
  }
  return toe
}

import type { RuleOf } from '../../criteria/types'
import { seenOf, type Evidence } from '../evidence'
import { reasonWithout } from '../facts'
import { isOutside, judged, noneFound, notMeasured } from '../finding'
import { limitFor, mostAllowed, unknownIn } from '../limit'
import type { Indication } from '../types'
import { placeOfIndication } from './absent'
import { allLookedFor, kindsOf, type Judge, type Kinds } from './judge'
import { lackOnlyWidths, reasonWithoutSize, sizeOf, widthsFor } from './size'

export type Largest = { readonly mm: number; readonly indication: Indication | null; readonly unsized: Indication | null }

/** The largest indication of these kinds, the first along the weld among equals; and the first that has no size. */
export function largestOf(kinds: Kinds, size: Parameters<typeof sizeOf>[1], evidence: Evidence): Largest {
  let mm = 0
  let indication: Indication | null = null
  let unsized: Indication | null = null
  for (const index of kinds.indexes) {
    for (const one of seenOf(evidence, index)) {
      const value = sizeOf(one, size)
      if (value === null) unsized = unsized === null || one.atMm < unsized.atMm ? one : unsized
      else if (indication === null || value > mm || (value === mm && one.atMm < indication.atMm)) {
        mm = value
        indication = one
      }
    }
  }
  return { mm, indication, unsized }
}

/** The largest indication against a limit. */
export function largestSize(rule: RuleOf<'largest-size'>): Judge {
  const kinds = kindsOf(rule.of)
  const most = mostAllowed(rule.max)
  const widthsOf = widthsFor([rule.max])
  return (evidence) => {
    const weldMm = evidence.weld.lengthMm
    const widths = widthsOf(evidence.stations)
    const known = limitFor(rule.max, evidence.weld, widths)
    const max = known ?? most
    const { mm, indication, unsized } = largestOf(kinds, rule.size, evidence)
    if (!isOutside(max - mm)) {
      const limit = { min: null, max: known }
      const nothingSeen = indication === null && unsized === null && allLookedFor(kinds, evidence)
      if (known === null && nothingSeen && lackOnlyWidths([rule.max], evidence.weld)) return noneFound(rule, limit)
      if (known === null) return notMeasured(rule, 'mm', reasonWithout(unknownIn(rule.max, evidence.weld, widths), evidence.weld), limit)
      if (unsized !== null) return notMeasured(rule, 'mm', reasonWithoutSize(rule.size), limit, placeOfIndication(unsized, weldMm))
      if (!allLookedFor(kinds, evidence)) return notMeasured(rule, 'mm', 'not-looked-for', limit)
    }
    return judged(rule, {
      unit: 'mm', measured: mm, min: null, max, margin: max - mm,
      where: indication === null ? null : placeOfIndication(indication, weldMm),
      resolution: indication === null ? null : evidence.gaugeResolutionMm,
      toe: indication?.toe,
    })
  }
}

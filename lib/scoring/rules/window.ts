import type { RuleOf } from '../../criteria/types'
import { seenOf, type Evidence } from '../evidence'
import { reasonWithout } from '../facts'
import { isOutside, judged, noneFound, notMeasured, placeOf } from '../finding'
import { limitFor, mostAllowed, unknownIn } from '../limit'
import { TOLERANCE } from '../tolerance'
import type { Indication } from '../types'
import { heaviestWindow } from '../windows/heaviest-window'
import { placeOfIndication } from './absent'
import { allLookedFor, kindsOf, type Judge, type Kinds } from './judge'
import { lackOnlyWidths, reasonWithoutSize, sizeOf, widthsFor } from './size'

/** All indications of these kinds in order along the weld. */
function inOrder(kinds: Kinds, evidence: Evidence): readonly Indication[] {
  const [only, ...others] = kinds.indexes
  if (only === undefined) return []
  if (others.length === 0) return seenOf(evidence, only)
  return kinds.indexes.flatMap((index) => [...seenOf(evidence, index)]).sort((a, b) => a.atMm - b.atMm)
}

/** Sizes added up in any window. An indication counts where its centre lies, which for pores is the place recorded. */
export function windowSum(rule: RuleOf<'window-sum'>): Judge {
  const kinds = kindsOf(rule.of)
  const most = mostAllowed(rule.max)
  const widthsOf = widthsFor([rule.max])
  return (evidence) => {
    const widths = widthsOf(evidence.stations)
    const known = limitFor(rule.max, evidence.weld, widths)
    const places: number[] = []
    const sizes: number[] = []
    let unsized: Indication | null = null
    for (const indication of inOrder(kinds, evidence)) {
      const size = sizeOf(indication, rule.size)
      if (size === null) unsized ??= indication
      else if (size >= rule.countFromMm - TOLERANCE) {
        places.push(indication.atMm)
        sizes.push(size)
      }
    }
    const { sum, fromMm, toMm } = heaviestWindow(places, sizes, rule.windowMm)
    const max = known ?? most
    if (!isOutside(max - sum)) {
      const limit = { min: null, max: known }
      const nothingSeen = inOrder(kinds, evidence).length === 0 && allLookedFor(kinds, evidence)
      if (known === null && nothingSeen && lackOnlyWidths([rule.max], evidence.weld)) return noneFound(rule, limit)
      if (known === null) return notMeasured(rule, 'mm', reasonWithout(unknownIn(rule.max, evidence.weld, widths), evidence.weld), limit)
      if (unsized !== null) return notMeasured(rule, 'mm', reasonWithoutSize(rule.size), limit, placeOfIndication(unsized, evidence.weld.lengthMm))
      if (!allLookedFor(kinds, evidence)) return notMeasured(rule, 'mm', 'not-looked-for', limit)
    }
    return judged(rule, {
      unit: 'mm', measured: sum, min: null, max, margin: max - sum,
      where: sum > 0 ? placeOf(fromMm, toMm) : null, resolution: sum > 0 ? evidence.gaugeResolutionMm : null,
    })
  }
}

/** How many in any window. */
export function windowCount(rule: RuleOf<'window-count'>): Judge {
  const kinds = kindsOf(rule.of)
  return (evidence) => {
    const places = inOrder(kinds, evidence).map((indication) => indication.atMm)
    const { sum, fromMm, toMm } = heaviestWindow(places, places.map(() => 1), rule.windowMm)
    if (sum <= rule.max && !allLookedFor(kinds, evidence)) return notMeasured(rule, 'count', 'not-looked-for', { min: null, max: rule.max })
    return judged(rule, {
      unit: 'count', measured: sum, min: null, max: rule.max, margin: rule.max - sum,
      where: sum > 0 ? placeOf(fromMm, toMm) : null, resolution: null,
    })
  }
}

/** Length of the indications over the length of the weld. */
export function lengthShare(rule: RuleOf<'length-share'>): Judge {
  const kinds = kindsOf(rule.of)
  return (evidence) => {
    const weldMm = evidence.weld.lengthMm
    let length = 0
    let longest: Indication | null = null
    let unmeasured: Indication | null = null
    for (const indication of inOrder(kinds, evidence)) {
      if (indication.lengthMm === undefined || indication.lengthMm === null) {
        unmeasured ??= indication
        continue
      }
      const { fromMm, toMm } = placeOfIndication(indication, weldMm)
      length += toMm - fromMm
      if (longest === null || indication.lengthMm > (longest.lengthMm ?? 0)) longest = indication
    }
    const share = length / weldMm
    const limit = { min: null, max: rule.max }
    if (!isOutside(rule.max - share)) {
      if (unmeasured !== null) return notMeasured(rule, 'ratio', 'indication-without-length', limit, placeOfIndication(unmeasured, weldMm))
      if (!allLookedFor(kinds, evidence)) return notMeasured(rule, 'ratio', 'not-looked-for', limit)
    }
    return judged(rule, {
      unit: 'ratio', measured: share, min: null, max: rule.max, margin: rule.max - share,
      where: longest === null ? null : placeOfIndication(longest, weldMm), resolution: null,
    })
  }
}

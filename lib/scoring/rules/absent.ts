import type { RuleOf } from '../../criteria/types'
import { seenOf, type Evidence } from '../evidence'
import { judged, notMeasured, placeOf, type Place } from '../finding'
import type { NotMeasuredReason } from '../reason'
import type { Finding, Indication } from '../types'
import { allLookedFor, kindsOf, type Judge, type Kinds } from './judge'

const NONE_ALLOWED = { min: null, max: 0 } as const

export function placeOfIndication(indication: Indication, weldMm: number): Place {
  return placeOf(indication.atMm, Math.min(indication.atMm + (indication.lengthMm ?? 0), weldMm))
}

/** How many were seen, and the first of them along the weld. */
function count(kinds: Kinds, evidence: Evidence): { number: number; first: Indication | null } {
  let number = 0
  let first: Indication | null = null
  for (const index of kinds.indexes) {
    const list = seenOf(evidence, index)
    const head = list[0]
    if (head === undefined) continue
    number += list.length
    if (first === null || head.atMm < first.atMm) first = head
  }
  return { number, first }
}

function faults(rule: RuleOf<'absent'> | RuleOf<'attribute'>, number: number, first: Indication | null, weldMm: number): Finding {
  const where = first === null ? null : placeOfIndication(first, weldMm)
  return judged(rule, { unit: 'count', measured: number, min: null, max: 0, margin: number === 0 ? 0 : -number, where, resolution: null })
}

const open = (rule: RuleOf<'absent'> | RuleOf<'attribute'>, reason: NotMeasuredReason): Finding => notMeasured(rule, 'count', reason, NONE_ALLOWED)

/** None may be seen; every kind must have been looked for. */
export function absent(rule: RuleOf<'absent'>): Judge {
  const wanted = kindsOf(rule.of)
  const rejecting = kindsOf([...rule.of, ...(rule.ifSeen ?? [])])
  return (evidence) => {
    const { number, first } = count(rejecting, evidence)
    if (number === 0 && !allLookedFor(wanted, evidence)) return open(rule, 'not-looked-for')
    return faults(rule, number, first, evidence.weld.lengthMm)
  }
}

/** A yes/no answer that must be yes. A "no" counts as one fault, beside any indication that says the same. */
export function attribute(rule: RuleOf<'attribute'>): Judge {
  const wanted = kindsOf(rule.of)
  const rejecting = kindsOf([...rule.of, ...(rule.ifSeen ?? [])])
  return (evidence) => {
    const answer = evidence[rule.answer]
    const { number, first } = count(rejecting, evidence)
    const total = number + (answer === false ? 1 : 0)
    if (total === 0 && answer === null) return open(rule, 'no-answer')
    if (total === 0 && !allLookedFor(wanted, evidence)) return open(rule, 'not-looked-for')
    return faults(rule, total, first, evidence.weld.lengthMm)
  }
}

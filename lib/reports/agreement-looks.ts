import type { FindingVerdict, Verdict } from '../scoring/types'
import type { WidthAt } from './width-differences'

/**
 * One person's look at a coupon, as far as two looks are compared. Verdicts are those computed from the readings: where an instructor
 * decided otherwise, that says nothing about what they saw.
 */
export type ReadLook = {
  readonly readerId: string
  readonly verdict: Verdict
  /** By the rule's name in the trade, so that a defect is the same in every criteria set. */
  readonly rules: ReadonlyMap<string, FindingVerdict>
  readonly widths: readonly WidthAt[]
}

/** A coupon that two people read, neither knowing what the other saw. */
export type TwoLooks = { readonly couponId: string; readonly first: ReadLook; readonly second: ReadLook }

/** The whole coupon, beside its rules. */
export const WHOLE_COUPON = null
/** What is compared: a rule by its name, or the whole coupon. */
export type Subject = string | typeof WHOLE_COUPON

/** Of several findings that go by one name the one that counts: a rejection, then a gap, then an acceptance. */
const WEIGHT: Readonly<Record<FindingVerdict, number>> = { reject: 3, 'not-measured': 2, accept: 1, 'not-applicable': 0 }

/** A look's findings by the name of their rule. */
export function rulesByName(findings: readonly { readonly rule: string; readonly verdict: FindingVerdict }[], nameOf: (rule: string) => string): ReadonlyMap<string, FindingVerdict> {
  const byName = new Map<string, FindingVerdict>()
  for (const { rule, verdict } of findings) {
    const name = nameOf(rule)
    const before = byName.get(name)
    if (before === undefined || WEIGHT[verdict] > WEIGHT[before]) byName.set(name, verdict)
  }
  return byName
}

/** The looks with the named reader's first; those of others are left out. */
export function asSeenBy(readerId: string, looks: readonly TwoLooks[]): TwoLooks[] {
  return looks.flatMap((each) => {
    if (each.first.readerId === readerId) return each
    return each.second.readerId === readerId ? { couponId: each.couponId, first: each.second, second: each.first } : []
  })
}

/** Every name that occurs among the rules. */
export const ruleNamesOf = (looks: readonly TwoLooks[]): string[] =>
  [...new Set(looks.flatMap(({ first, second }) => [...first.rules.keys(), ...second.rules.keys()]))].sort((a, b) => a.localeCompare(b, 'en'))

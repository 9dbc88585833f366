import type { Rule } from '../criteria/types'
import type { Finding, Inspection, Scorecard, Weld } from '../scoring/types'
import { severityOf, symptomOf, type Symptom } from './symptom'

/** A rule worth talking about on this coupon. `aim`: mend what was rejected, or hold what is only just inside. */
export type Concern = { readonly finding: Finding; readonly symptom: Symptom; readonly aim: 'mend' | 'hold'; readonly seenBefore: { times: number; of: number } }

/** How many of the latest earlier coupons count as history. */
export const HISTORY_COUPONS = 5

type Input = {
  readonly weld: Weld
  readonly inspection: Inspection
  readonly scorecard: Scorecard
  readonly history: readonly Scorecard[]
  readonly rules: readonly Rule[]
}

/**
 * What matters most on this coupon, first.
 *
 * Where rules rejected: the gravest symptom first (see `severityOf`); among equals the one farthest outside its limit, counted in
 * limits (twice the limit is 1 beyond), plus the share of recent coupons that the same rule rejected; then in the set's order.
 * Where none rejected: how close to its limit each reading came, closest first. A rule with nothing to measure, such as
 * "no cracks", has no distance to its limit and is left out; so is one that used none of its allowance.
 * Rules that show the same symptom are told once, by the first of them.
 */
export function concerns(input: Input): Concern[] {
  const rejected = input.scorecard.findings.filter(finding => finding.verdict === 'reject')
  const found = rejected.length > 0
    ? ranked(rejected, input, 'mend', (finding, symptom) =>
        [-severityOf(symptom), -(outside(finding) + repeatShare(finding, input))])
    : ranked(input.scorecard.findings, input, 'hold', finding => {
        const close = closeness(finding, input)
        return close === null ? null : [close]
      })
  return found.filter((one, index) => found.findIndex(other => other.symptom === one.symptom) === index)
}

function ranked(findings: readonly Finding[], input: Input, aim: Concern['aim'], keys: (finding: Finding, symptom: Symptom) => readonly number[] | null): Concern[] {
  return findings
    .flatMap(finding => {
      const symptom = symptomOf(finding, input.weld, input.inspection, ruleOf(finding, input.rules))
      const sortKeys = symptom === null ? null : keys(finding, symptom)
      if (symptom === null || sortKeys === null) return []
      return [{ sortKeys, concern: { finding, symptom, aim, seenBefore: seenBefore(finding, input.history) } }]
    })
    .sort((a, b) => compare(a.sortKeys, b.sortKeys))
    .map(({ concern }) => concern)
}

function compare(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((key, i) => key !== b[i])
  return index < 0 ? 0 : (a[index] ?? 0) - (b[index] ?? 0)
}

/** How far outside, in limits (of a band: in the end that was passed); each thing seen where none is allowed counts as one. */
function outside({ measured, margin, limit: { min, max } }: Finding): number {
  if (margin === null || measured === null) return 0
  const passed = min !== null && measured < min ? min : max
  return passed === null || passed <= 0 ? measured : Math.max(0, -margin / passed)
}

/** Share of the limit still free; in a band, of the way from its middle to its end. Null where there is no distance to a limit. */
function roomLeft({ verdict, measured, margin, limit: { min, max } }: Finding): number | null {
  if (verdict !== 'accept' || measured === null || margin === null) return null
  const scale = min !== null && max !== null ? (max - min) / 2 : max ?? min ?? 0
  return scale > 0 ? margin / scale : null
}

/**
 * Distance to the limit in a unit that rules of different kinds share: the scale by which the set standardises margins, where the
 * set is at hand; else the share of the limit still free.
 */
function closeness(finding: Finding, { rules }: Input): number | null {
  const room = roomLeft(finding)
  if (room === null || room >= 1 || finding.margin === null) return null
  if (rules.length === 0) return room
  const readiness = ruleOf(finding, rules)?.readiness
  return readiness?.as === 'margin' ? finding.margin / readiness.scale : null
}

const ruleOf = (finding: Finding, rules: readonly Rule[]): Rule | undefined => rules.find(rule => rule.id === finding.rule)

function seenBefore(finding: Finding, history: readonly Scorecard[]): Concern['seenBefore'] {
  const recent = history.slice(-HISTORY_COUPONS)
  return { times: recent.filter(card => card.findings.some(one => one.rule === finding.rule && one.verdict === 'reject')).length, of: recent.length }
}

function repeatShare(finding: Finding, { history }: Input): number {
  const { times, of } = seenBefore(finding, history)
  return of === 0 ? 0 : times / of
}

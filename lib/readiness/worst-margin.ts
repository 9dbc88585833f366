import type { Rule } from '../criteria/types'
import { marginScale } from '../scoring/margin-scale'
import type { Finding, Scorecard } from '../scoring/types'
import { expectedWorst } from './expected-worst'
import { GRID, GRID_LOW } from './grid'

/** What the filter needs of a rule: how it speaks, by its margin over a scale (in the finding's unit) or as yes or no. */
export type RuleEvidence = Pick<Rule, 'id' | 'readiness'>

/**
 * The number of stations the exercise fixes, the number this inspection used, and the spread of readings within one bead
 * (sd in the finding's unit) of each rule that takes its worst station. Rules not named are not corrected.
 */
export type StationCount = {
  readonly fixed: number
  readonly used: number
  readonly withinBeadSd: Readonly<Record<string, number>>
}

/** What the filter reads from a scorecard. null where it was not measured or no rule asks. */
export type CouponEvidence = {
  /** The smallest margin over scale, above 0 inside, held within the filter's grid. */
  readonly worstMargin: number | null
  readonly worstRule: string | null
  /** All yes/no rules passed. */
  readonly attributesGood: boolean | null
  /** A rule could not be judged: margins are withheld, because an unread rule may hold the worst of them. */
  readonly incomplete: boolean
}

/**
 * The worst standardised margin of an inspection and whether its yes/no rules passed.
 *
 * A margin rule that was judged without a margin counts as yes or no. The worst of n stations moves with n, so when `stations`
 * says the count was not the fixed one, each named rule's margin is moved by the difference of the expected worst × its within-bead sd.
 * Margins past the ends of the filter's grid are held at its ends: the filter cannot tell them apart, and would take them for slips of the pen.
 *
 * @throws RangeError when a finding's rule is not in `criteria`, a scale is not above 0, or the station counts are not counts
 */
export function worstMargin(scorecard: Scorecard, criteria: { readonly rules: readonly RuleEvidence[] }, stations?: StationCount): CouponEvidence {
  const applicable = scorecard.findings.filter((finding) => finding.verdict !== 'not-applicable')
  if (applicable.length === 0 || applicable.some((finding) => finding.verdict === 'not-measured')) {
    return { worstMargin: null, worstRule: null, attributesGood: null, incomplete: true }
  }
  const evidence = new Map(criteria.rules.map((rule) => [rule.id, rule.readiness]))
  const shift = stations ? expectedWorst(stations.used) - expectedWorst(stations.fixed) : 0

  let worst: { margin: number; rule: string } | null = null
  let attributesGood: boolean | null = null
  for (const finding of applicable) {
    const readiness = evidence.get(finding.rule)
    if (!readiness) throw new RangeError(`The rule "${finding.rule}" is not in the criteria: the scorecard belongs to other criteria.`)
    const margin = readiness.as === 'margin' ? standardised(finding, readiness.scale, shift * withinBeadSd(finding.rule, stations)) : null
    if (margin === null) attributesGood = (attributesGood ?? true) && finding.verdict === 'accept'
    else if (worst === null || margin < worst.margin) worst = { margin, rule: finding.rule }
  }
  return { worstMargin: worst?.margin ?? null, worstRule: worst?.rule ?? null, attributesGood, incomplete: false }
}

function standardised({ margin, rule, limit }: Finding, scale: number, correction: number): number | null {
  if (!(scale > 0 && scale < Infinity)) throw new RangeError(`The rule "${rule}" needs a readiness scale above 0, not ${scale}.`)
  if (margin === null) return null
  if (!Number.isFinite(margin)) throw new RangeError(`The rule "${rule}" has a margin that is not a finite number.`)
  return Math.min(GRID.at(-1)!, Math.max(GRID_LOW, (margin + correction) / marginScale(scale, limit)))
}

function withinBeadSd(rule: string, stations: StationCount | undefined): number {
  const sd = stations?.withinBeadSd[rule] ?? 0
  if (!(sd >= 0 && sd < Infinity)) throw new RangeError(`The within-bead spread of "${rule}" must be 0 or more, not ${sd}.`)
  return sd
}

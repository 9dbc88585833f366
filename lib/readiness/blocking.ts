import type { Rule } from '../criteria/types'
import type { IndicationKind, Scorecard } from '../scoring/types'

/** Seen once, these are talked over and mended before a test, whatever the chance. Common practice, no source. */
const BLOCKING: readonly IndicationKind[] = ['crack', 'crater-crack', 'lack-of-fusion']

/**
 * The rules on cracks and fusion that a scorecard rejects. Of the latest judged coupon: a finding that holds the test back,
 * open until a later coupon passes it.
 */
export function blockingRules(scorecard: Scorecard, criteria: { readonly rules: readonly Rule[] }): readonly string[] {
  const watched = new Set(criteria.rules.filter(isBlocking).map((rule) => rule.id))
  return scorecard.findings.filter((finding) => finding.verdict === 'reject' && watched.has(finding.rule)).map((finding) => finding.rule)
}

function isBlocking(rule: Rule): boolean {
  if (rule.kind === 'attribute' && rule.answer === 'fusionComplete') return true
  return (rule.kind === 'absent' || rule.kind === 'attribute') && rule.of.some((kind) => BLOCKING.includes(kind))
}

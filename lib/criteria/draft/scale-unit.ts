import { COUNTED_KINDS, type Reading, type RuleKind } from '../types'

/** What the margin of a rule, and so its scale for readiness, is measured in; 'none' for kinds that count and have no margin. */
export function scaleUnit(rule: { readonly kind: RuleKind; readonly reading?: Reading }): 'length' | 'angle' | 'share' | 'none' {
  if (COUNTED_KINDS.has(rule.kind)) return 'none'
  if (rule.kind === 'length-share') return 'share'
  return rule.kind === 'reading-range' && rule.reading === 'toe-angle' ? 'angle' : 'length'
}

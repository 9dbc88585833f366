import type { RuleOf } from '../../criteria/types'
import { notApplicable } from '../finding'
import type { Judge } from './judge'

/** Named by the standard, not judged by the set. */
export function notJudged(rule: RuleOf<'not-judged'>): Judge {
  return () => notApplicable(rule, 'count', rule.reason)
}

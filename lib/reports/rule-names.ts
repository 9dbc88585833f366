import type { CriteriaSet, Rule } from '../criteria/types'
import { kindNames } from '../language/kind-names'
import { readingNames, ruleNames } from '../language/rules'
import type { Locale } from '../language/say'

/**
 * The short trade name of a rule, for a table's row. A rule of a program's own set that goes by an id of its own is named after what
 * it looks at; with no `criteria` to look that up in, by its id.
 */
export function ruleName(rule: string, locale: Locale, criteria?: CriteriaSet): string {
  const names: Readonly<Record<string, string>> = ruleNames[locale]
  if (Object.hasOwn(names, rule) && names[rule] !== undefined) return names[rule]
  const own = criteria?.rules.find(one => one.id === rule)
  return own === undefined ? rule : nameByCheck(own, locale)
}

function nameByCheck(rule: Rule, locale: Locale): string {
  switch (rule.kind) {
    case 'reading-range':
    case 'reading-allowance':
    case 'reading-spread': return readingNames[locale][rule.reading]
    case 'attribute': return ruleNames[locale][rule.answer === 'cratersFilled' ? 'crater' : 'fusion']
    case 'not-judged': return rule.id
    default: return rule.of.map(kind => kindNames[locale][kind]).join(', ')
  }
}

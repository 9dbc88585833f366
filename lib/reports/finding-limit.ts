import type { Rule } from '../criteria/types'
import { findings } from '../language/findings'
import { say, type Locale } from '../language/say'
import { factsOf } from '../scoring/facts'
import { limitFor } from '../scoring/limit'
import type { Finding, Weld } from '../scoring/types'
import { formatForReader } from '../units/display'

export type LimitReader = { readonly locale: Locale; readonly units: 'in' | 'mm'; readonly weld?: Weld }

type WithAllowance = Extract<Rule, { kind: 'size-allowance' | 'reading-allowance' }>

/** A length of weld that a rule names: '25 mm', '2 in'. */
export const ruleLength = (mm: number, units: 'in' | 'mm'): string => formatForReader(mm, units).replace(/\.0 mm$/, ' mm')

export const percent = (ratio: number): string => `${Number((ratio * 100).toFixed(1))} %`

/** A size of a finding, in its unit; lengths in the reader's. */
export function sizeText(value: number, unit: Finding['unit'], units: 'in' | 'mm'): string {
  switch (unit) {
    case 'mm': return formatForReader(value, units)
    case 'count': return String(value)
    case 'ratio': return percent(value)
    case 'degree': return `${Number(value.toFixed(2))}°`
  }
}

/**
 * What a rule allows, without a capital or a full stop: "at most 1/32 in is allowed beyond 2 in in any 12 in".
 *
 * @param rule the rule that judged; null, or `exact` false, leaves out windows and allowances
 * @param nothingSeen shows the limit that holds everywhere, whichever of two the finding was nearest to
 */
export function limitPhrase(finding: Finding, rule: Rule | null, exact: boolean, nothingSeen: boolean, reader: LimitReader): string {
  const { locale, units, weld } = reader
  if (rule?.kind === 'attribute') return say(findings, locale, rule.answer === 'cratersFilled' ? 'filled-must' : 'fused-must')
  const allowing = rule?.kind === 'size-allowance' || rule?.kind === 'reading-allowance' ? rule : null
  const everyday = allowing === null ? null : everydayLimit(allowing, weld)
  const limit = nothingSeen && everyday !== null ? { min: null, max: everyday } : finding.limit
  const text = (value: number): string => sizeText(value, finding.unit, units)
  const allowance = allowing === null || everyday === null ? '' : allowancePhrase(finding, limit, allowing, everyday, exact, reader)

  if (limit.min !== null && limit.max !== null) return say(findings, locale, 'band', { min: text(limit.min), max: text(limit.max) })
  if (limit.min !== null) return `${say(findings, locale, 'least', { min: text(limit.min) })}${allowance}`
  if (limit.max === null || limit.max === 0) return `${say(findings, locale, 'none')}${allowance}`
  if (exact && (rule?.kind === 'window-sum' || rule?.kind === 'window-count')) {
    return say(findings, locale, rule.kind === 'window-sum' ? 'sum-in-window' : 'most-in-window', { max: text(limit.max), window: ruleLength(rule.windowMm, units) })
  }
  return `${say(findings, locale, 'most', { max: text(limit.max) })}${allowance}`
}

/** Where more is allowed over a limited length: how long, beside the everyday limit; that it is the end, beside the other one. */
function allowancePhrase(finding: Finding, limit: Finding['limit'], rule: WithAllowance, everyday: number, exact: boolean, reader: LimitReader): string {
  const { locale, units } = reader
  const shown = limit.min ?? limit.max
  if (shown !== null && Math.abs(everyday - shown) > 1e-6) return say(findings, locale, 'however-short')
  const room = roomOf(finding, rule, exact, reader.weld)
  if (room === null) return ''
  const kind = limit.min === null ? 'beyond' : 'less'
  if (room.of === 'window') {
    return say(findings, locale, `${kind}-window`, { length: ruleLength(room.lengthMm, units), window: ruleLength(room.windowMm, units) })
  }
  return say(findings, locale, `${kind}-weld`, { length: room.of === 'share' ? percent(room.share) : ruleLength(room.lengthMm, units) })
}

/** The limit that holds everywhere, in mm; null when it takes a weld to know and there is none. */
function everydayLimit(rule: WithAllowance, weld: Weld | undefined): number | null {
  const limit = rule.kind === 'size-allowance' ? rule.max : rule.nominal
  if (limit === null) return 0
  if (limit.form === 'fixed') return limit.mm
  if (limit.form === 'angle') return limit.degrees
  return weld === undefined ? null : limitFor(limit, factsOf(weld), null)
}

type RoomTold =
  | { readonly of: 'share'; readonly share: number }
  | { readonly of: 'weld'; readonly lengthMm: number }
  | { readonly of: 'window'; readonly lengthMm: number; readonly windowMm: number }

/** How much length the allowance gives. The finding knows best; else the set says, for a weld longer than its window. */
function roomOf({ extent }: Finding, rule: WithAllowance, exact: boolean, weld: Weld | undefined): RoomTold | null {
  const over = rule.kind === 'size-allowance' ? rule.allowed.over : rule.over
  if (extent !== undefined) {
    if (over.per === 'weld') return { of: 'share', share: extent.maxMm / extent.windowMm }
    const whole = weld !== undefined && extent.windowMm >= weld.lengthMm
    return whole ? { of: 'weld', lengthMm: extent.maxMm } : { of: 'window', lengthMm: extent.maxMm, windowMm: extent.windowMm }
  }
  if (!exact) return null
  return over.per === 'weld' ? { of: 'share', share: over.share } : { of: 'window', lengthMm: over.lengthMm, windowMm: over.windowMm }
}

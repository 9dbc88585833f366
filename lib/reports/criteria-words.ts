import { lengthText, shareText } from '../criteria/draft/typed-values'
import { unitOf } from '../criteria/draft/to-draft'
import { scaleUnit } from '../criteria/draft/scale-unit'
import type { Allowance, Condition, CriteriaSet, Limit, Rule, Size } from '../criteria/types'
import { kindNames } from '../language/kind-names'
import { readingNames } from '../language/rules'
import { scorecardWords } from '../language/scorecard'
import { say } from '../language/say'
import type { IndicationKind } from '../scoring/types'
import type { SourceStatus } from '../source'
import type { LengthUnit } from '../units/length'
import { citation } from './citation'
import { percent } from './finding-limit'
import { quantityNames } from './quantity-names'
import { ruleName } from './rule-names'

/** A rule as staff read it, without a weld before them. Lengths in the set's own unit: 1/32 in and 1 mm are different limits. */
export type RuleInWords = {
  readonly id: string
  readonly name: string
  /** What it allows: 'Undercut: depth at most 1/32 in.' */
  readonly allows: string
  /** The welds it is for: 'Fillet welds only.' null: all. */
  readonly welds: string | null
  readonly source: string
  readonly note: string | null
  readonly status: SourceStatus
  readonly statusWord: string
  /** Its share of the mark: '10 of 105'. */
  readonly weight: string
  /** How it speaks to readiness. */
  readonly readiness: string
}

export type CriteriaInWords = {
  readonly title: string
  readonly edition: string
  readonly units: LengthUnit
  readonly passMark: number
  readonly rules: readonly RuleInWords[]
  readonly fromMemory: boolean
}

/** A set of criteria in plain English, rule by rule. */
export function criteriaInWords(set: CriteriaSet): CriteriaInWords {
  const units = unitOf(set.system)
  // Rules that share an id are one rule that reads differently for other welds: its weight counts once.
  const total = [...new Map(set.rules.map((rule) => [rule.id, rule.weight])).values()].reduce((sum, weight) => sum + weight, 0)
  return {
    title: set.title, edition: set.edition, units, passMark: set.passMark,
    rules: set.rules.map((rule, index) => ruleInWords(rule, set, units, total, set.rules.slice(0, index).some(({ id }) => id === rule.id))),
    fromMemory: set.rules.some(({ source }) => source.status === 'memory'),
  }
}

/** @param later a rule before it has its id: it holds where that one does not */
function ruleInWords(rule: Rule, set: CriteriaSet, units: LengthUnit, total: number, later: boolean): RuleInWords {
  return {
    id: rule.id, name: ruleName(rule.id, 'en', set), allows: allowsText(rule, units), welds: weldsText(rule, units) ?? (later ? 'For all other welds.' : null),
    source: citation(rule.source, 'en'), note: rule.source.note ?? null, status: rule.source.status, statusWord: say(scorecardWords, 'en', rule.source.status),
    weight: `${Number(rule.weight.toFixed(2))} of ${Number(total.toFixed(2))}`, readiness: readinessText(rule, units),
  }
}

const SIZES: Readonly<Record<Size, string>> = { depth: 'depth', diameter: 'diameter', height: 'height', largest: 'largest size' }

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const listOf = (kinds: readonly IndicationKind[]): string => kinds.map((kind) => kindNames.en[kind].toLowerCase()).join(', ')

/** What a rule allows, in a sentence or two. */
export function allowsText(rule: Rule, units: LengthUnit): string {
  const limit = (value: Limit): string => limitText(value, units)
  const reading = 'reading' in rule ? readingNames.en[rule.reading] : ''
  switch (rule.kind) {
    case 'absent': return `None allowed: ${listOf(rule.of)}.${seenText(rule.ifSeen)}`
    case 'attribute': {
      const against = rule.of.length > 0 ? ` None allowed: ${listOf(rule.of)}.` : ''
      return `${rule.answer === 'cratersFilled' ? 'Every crater must be filled.' : 'Fusion must be complete.'}${against}${seenText(rule.ifSeen)}`
    }
    case 'largest-size': return `${capital(listOf(rule.of))}: ${SIZES[rule.size]} at most ${limit(rule.max)}.`
    case 'size-allowance': {
      const everywhere = rule.max === null ? 'none allowed' : `${SIZES[rule.size]} at most ${limit(rule.max)}`
      return `${capital(listOf(rule.of))}: ${everywhere}, but ${rule.max === null ? `${SIZES[rule.size]} ` : ''}up to ${limit(rule.allowed.max)}${pause(rule.allowed.max)} over ${overText(rule.allowed.over, units)}.`
    }
    case 'reading-range': return `${reading} ${rangeText(rule.min, rule.max, limit)} at every station.${optionalText(rule)}`
    case 'reading-spread': return `${reading}: largest and smallest differ by at most ${limit(rule.max)}.`
    case 'reading-allowance': {
      const [least, past] = rule.side === 'below' ? ['at least', 'short of it'] : ['at most', 'past it']
      return `${reading} ${least} ${limit(rule.nominal)} at every station, but ${past} by up to ${limit(rule.beyond)}${pause(rule.beyond)} over ${overText(rule.over, units)}.${optionalText(rule)}`
    }
    case 'window-sum': {
      const from = rule.countFromMm > 0 ? ` of ${lengthText(rule.countFromMm, units)} and more` : ''
      return `${capital(listOf(rule.of))}: the ${SIZES[rule.size]}s${from} add up to at most ${limit(rule.max)} in any ${lengthText(rule.windowMm, units)}.`
    }
    case 'window-count': return `${capital(listOf(rule.of))}: at most ${rule.max} in any ${lengthText(rule.windowMm, units)}.`
    case 'length-share': return `${capital(listOf(rule.of))}: over at most ${percent(rule.max)} of the weld’s length, both toes added up.`
    case 'not-judged': return rule.reason === 'permitted' ? 'Permitted: not judged.' : 'Left to the application: not judged.'
  }
}

/** A table ends in an aside, and what follows needs a pause. */
const pause = (limit: Limit): string => (limit.form === 'table' && limit.steps.length > 1 ? ',' : '')

const seenText = (kinds: readonly IndicationKind[] | undefined): string => (kinds && kinds.length > 0 ? ` Where seen, these reject too: ${listOf(kinds)}.` : '')
const optionalText = (rule: { readonly optional?: boolean }): string => (rule.optional ? ' Judged only where somebody measured it.' : '')

function rangeText(min: Limit | null, max: Limit | null, limit: (value: Limit) => string): string {
  if (min !== null && max !== null) return `from ${limit(min)} to ${limit(max)}`
  return min !== null ? `at least ${limit(min)}` : max !== null ? `at most ${limit(max)}` : 'of any size'
}

/** A limit in words: '1/32 in', '5 times the electrode’s diameter', '0.1 times the weld’s width there plus 1 mm, at most 3 mm'. */
export function limitText(limit: Limit, units: LengthUnit): string {
  switch (limit.form) {
    case 'fixed': return lengthText(limit.mm, units)
    case 'angle': return `${limit.degrees}°`
    case 'linear': {
      const part = limit.k === 0 ? null : limit.k === 1 ? quantityNames[limit.of] : `${limit.k} times ${quantityNames[limit.of]}`
      const more = limit.c === 0 && part !== null ? null : `${part === null ? '' : limit.c < 0 ? 'less ' : 'plus '}${lengthText(Math.abs(limit.c), units)}`
      const cap = limit.cap === null ? '' : `, ${limit.plus ? 'that no more than' : 'at most'} ${lengthText(limit.cap, units)}`
      return `${limit.plus ? `${quantityNames[limit.plus]} and on top of it ` : ''}${[part, more].filter(Boolean).join(' ')}${cap}`
    }
    case 'table': {
      const rows = limit.steps.map(({ mm, upTo, below }) => {
        const end = upTo !== undefined ? ` (up to ${lengthText(upTo, units)})` : below !== undefined ? ` (under ${lengthText(below, units)})` : ' (beyond that)'
        return `${lengthText(mm, units)}${limit.steps.length === 1 ? '' : end}`
      })
      const last = rows.pop() ?? ''
      return rows.length === 0 ? last : `${rows.join(', ')} or ${last}, depending on ${quantityNames[limit.by]}`
    }
  }
}

function overText(over: Allowance, units: LengthUnit): string {
  if (over.per === 'weld') return `${percent(over.share)} of the weld`
  const shorter = over.shareIfShorter === undefined ? '' : ` (${percent(over.shareIfShorter)} of a shorter weld)`
  return `${lengthText(over.lengthMm, units)} in any ${lengthText(over.windowMm, units)}${shorter}`
}

function weldsText({ when, unless }: Rule, units: LengthUnit): string | null {
  const only = when && conditionText(when, units)
  const not = unless && conditionText(unless, units)
  return [only && `Only for ${only}.`, not && `Not for ${not}.`].filter(Boolean).join(' ') || null
}

function conditionText(condition: Condition, units: LengthUnit): string {
  const { from, above, upTo, below } = condition.thickness ?? {}
  const text = (word: string, mm: number | undefined): string | null => (mm === undefined ? null : `${word} ${lengthText(mm, units)}`)
  const plate = [text('from', from), text('over', above), text('up to', upTo), text('under', below)].filter(Boolean).join(' ')
  const flag = (value: boolean | undefined, yes: string, no: string): string | null => (value === undefined ? null : value ? yes : no)
  return [
    condition.weld && `${condition.weld} welds`,
    plate && `plate ${plate} thick`,
    flag(condition.completePenetration, 'complete penetration', 'less than complete penetration'),
    flag(condition.transverseToTension, 'welds across the tension', 'welds along the tension or without it'),
    flag(condition.stiffenerToWeb, 'stiffeners joined to a web', 'welds other than of stiffeners to a web'),
  ].filter(Boolean).join(', ')
}

function readinessText({ kind, readiness, ...rule }: Rule, units: LengthUnit): string {
  if (readiness.as === 'attribute') return 'Readiness reads it as yes or no.'
  const unit = scaleUnit({ kind, ...('reading' in rule && { reading: rule.reading }) })
  const scale = unit === 'angle' ? `${readiness.scale}°` : unit === 'share' ? shareText(readiness.scale) : lengthText(readiness.scale, units)
  return `Readiness reads its margin in steps of ${scale}.`
}

import type { LengthUnit } from '../../units/length'
import { formatAngle, degrees } from '../../units/angle'
import type { Allowance, Condition, CriteriaSet, Limit, Rule } from '../types'
import { blankAllowance, blankCondition, blankLimit, blankRule, type DraftAllowance, type DraftCondition, type DraftCriteria, type DraftLimit, type DraftRule, type YesNo } from './draft'
import { scaleUnit } from './scale-unit'
import { lengthText, numberText, shareText } from './typed-values'

/** Lengths of a set are typed and shown in its own column's unit. */
export const unitOf = (system: 'us' | 'si'): LengthUnit => (system === 'us' ? 'in' : 'mm')

/** A set as a draft to go on from. Reading it back gives the same rules. */
export function draftOf(set: CriteriaSet): DraftCriteria {
  const units = unitOf(set.system)
  return {
    base: { id: set.id, version: set.version }, title: set.title, edition: set.edition, system: set.system, passMark: numberText(set.passMark),
    rules: set.rules.map((rule, index) => draftRule(rule, String(index + 1), units)),
  }
}

function draftRule(rule: Rule, key: string, units: LengthUnit): DraftRule {
  const { source, readiness } = rule
  return {
    ...blankRule(rule.kind, key, rule.id),
    ...checkOf(rule, units),
    when: draftCondition(rule.when, units), unless: draftCondition(rule.unless, units),
    source: { title: source.title, clause: source.clause ?? '', status: source.status, note: source.note ?? '' },
    weight: numberText(rule.weight),
    readiness: readiness.as,
    scale: readiness.as === 'margin' ? scaleText(readiness.scale, rule, units) : '',
  }
}

function scaleText(scale: number, rule: Rule, units: LengthUnit): string {
  switch (scaleUnit(rule)) {
    case 'length': return lengthText(scale, units)
    case 'angle': return formatAngle(degrees(scale), 0)
    case 'share': return shareText(scale)
    case 'none': return ''
  }
}

/** The boxes of a rule's own kind. */
function checkOf(rule: Rule, units: LengthUnit): Partial<DraftRule> {
  const limit = (value: Limit | null): DraftLimit => draftLimit(value, units)
  switch (rule.kind) {
    case 'absent': return { of: rule.of, ifSeen: rule.ifSeen ?? [] }
    case 'attribute': return { answer: rule.answer, of: rule.of, ifSeen: rule.ifSeen ?? [] }
    case 'largest-size': return { of: rule.of, size: rule.size, max: limit(rule.max) }
    case 'size-allowance':
      return { of: rule.of, size: rule.size, max: limit(rule.max), allowed: limit(rule.allowed.max), over: draftAllowance(rule.allowed.over, units) }
    case 'reading-range': return { reading: rule.reading, min: limit(rule.min), max: limit(rule.max), optional: rule.optional ?? false }
    case 'reading-spread': return { reading: rule.reading, max: limit(rule.max) }
    case 'reading-allowance':
      return {
        reading: rule.reading, side: rule.side, nominal: limit(rule.nominal), beyond: limit(rule.beyond), over: draftAllowance(rule.over, units), optional: rule.optional ?? false,
      }
    case 'window-sum':
      return { of: rule.of, size: rule.size, countFrom: lengthText(rule.countFromMm, units), window: lengthText(rule.windowMm, units), max: limit(rule.max) }
    case 'window-count': return { of: rule.of, window: lengthText(rule.windowMm, units), count: numberText(rule.max) }
    case 'length-share': return { of: rule.of, share: shareText(rule.max) }
    case 'not-judged': return { reason: rule.reason }
  }
}

function draftLimit(limit: Limit | null, units: LengthUnit): DraftLimit {
  switch (limit?.form) {
    case undefined: return blankLimit('none')
    case 'fixed': return { ...blankLimit('fixed'), value: lengthText(limit.mm, units) }
    case 'angle': return { ...blankLimit('angle'), value: `${limit.degrees}°` }
    case 'linear':
      return {
        ...blankLimit('linear'), of: limit.of, k: numberText(limit.k), c: lengthText(limit.c, units),
        cap: limit.cap === null ? '' : lengthText(limit.cap, units), plus: limit.plus ?? '',
      }
    case 'table':
      return {
        ...blankLimit('table'), by: limit.by,
        steps: limit.steps.map(({ mm, upTo, below }) => {
          const end = upTo !== undefined ? 'upTo' : below !== undefined ? 'below' : ''
          const at = upTo ?? below
          return { end, at: at === undefined ? '' : lengthText(at, units), value: lengthText(mm, units) }
        }),
      }
  }
}

const draftAllowance = (over: Allowance, units: LengthUnit): DraftAllowance => (over.per === 'weld'
  ? { ...blankAllowance, per: 'weld', share: shareText(over.share) }
  : {
    ...blankAllowance, per: 'window', length: lengthText(over.lengthMm, units), window: lengthText(over.windowMm, units),
    shareIfShorter: over.shareIfShorter === undefined ? '' : shareText(over.shareIfShorter),
  })

function draftCondition(condition: Condition | undefined, units: LengthUnit): DraftCondition {
  if (condition === undefined) return blankCondition
  const { from, above, upTo, below } = condition.thickness ?? {}
  const length = (mm: number | undefined): string => (mm === undefined ? '' : lengthText(mm, units))
  return {
    weld: condition.weld ?? '', low: length(from ?? above), lowKind: above === undefined ? 'from' : 'above', high: length(upTo ?? below), highKind: below === undefined ? 'upTo' : 'below',
    completePenetration: yesNo(condition.completePenetration), transverseToTension: yesNo(condition.transverseToTension), stiffenerToWeb: yesNo(condition.stiffenerToWeb),
  }
}

const yesNo = (flag: boolean | undefined): YesNo => (flag === undefined ? '' : flag ? 'yes' : 'no')

import { toeSide } from '../coaching/toe-side'
import type { CriteriaSet, Rule } from '../criteria/types'
import { findings, readingPhrases, reasons } from '../language/findings'
import { kindNames } from '../language/kind-names'
import { readingNames } from '../language/rules'
import { say, type Locale } from '../language/say'
import type { Finding, IndicationKind, Inspection, Weld } from '../scoring/types'
import { formatBesideLimit, formatForReader } from '../units/display'
import { limitPhrase, ruleLength, sizeText } from './finding-limit'
import { ruleBehind, ruleLike } from './finding-subject'
import { ruleName } from './rule-names'
import { placeText } from './ruler'

export type FindingReader = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  /** Names the toes, and decides which of two limits a finding shows. */
  readonly weld?: Weld
  /** Gives the gauge's step, and tells which kinds were seen and whether both toes are concerned. */
  readonly inspection?: Inspection
  /** The set that judged. Without it the sentence leaves out windows and allowances, and a program's own rules go by their ids. */
  readonly criteria?: CriteriaSet
}

type Told = FindingReader & {
  readonly finding: Finding
  readonly rule: Rule | null
  /** The rule is the one that judged, not only one like it. */
  readonly exact: boolean
  readonly name: string
  /** The rule looks for something, looked, and there was none. */
  readonly nothingSeen: boolean
}

/**
 * What a finding means, in a sentence or two: what was read and where, in the reader's units, and what is allowed.
 * "Undercut 0.035 in deep for 4 in on the lower toe, 2 in from the start; at most 1/32 in is allowed beyond 2 in in any 12 in."
 */
export function explainFinding(finding: Finding, reader: FindingReader): string {
  const exact = reader.criteria === undefined ? null : ruleBehind(finding, reader.criteria, reader.weld)
  const rule = exact ?? ruleLike(finding)
  const told: Told = {
    ...reader, finding, rule, exact: exact !== null, name: ruleName(finding.rule, reader.locale, reader.criteria),
    nothingSeen: finding.measured === 0 && finding.extent === undefined && rule !== null && 'of' in rule,
  }
  switch (finding.verdict) {
    case 'not-measured': return notMeasured(told)
    case 'not-applicable': return say(findings, told.locale, 'not-applicable', { name: told.name, reason: reasonText(told) })
    default: return [judged(told), ...closeCall(told)].join(' ')
  }
}

function judged(told: Told): string {
  if (told.rule?.kind === 'attribute' && told.finding.verdict === 'accept') return `${subject(told)}.`
  // Nothing seen under a limit that hangs on a width nobody read: there is no limit to tell.
  if (told.nothingSeen && told.finding.margin === null) return `${subject(told)}.`
  return `${whatWasFound(told)}; ${whatIsAllowed(told)}.`
}

function notMeasured(told: Told): string {
  const { finding: { limit }, locale, name } = told
  const text = say(findings, locale, 'not-measured', { name, reason: reasonText(told), place: place(told) })
  const unknown = limit.min === null && limit.max === null
  return unknown ? text : `${text} ${say(findings, locale, 'allowed', { limit: whatIsAllowed(told) })}`
}

function reasonText({ finding, locale }: Told): string {
  const known: Readonly<Record<string, string>> = reasons[locale]
  const code = finding.reason
  return (code !== undefined && Object.hasOwn(known, code) ? known[code] : undefined) ?? reasons[locale].other
}

function closeCall({ finding, locale, units, inspection }: Told): string[] {
  if (!finding.closeCall) return []
  const step = inspection?.gaugeResolutionMm
  return [step === undefined ? say(findings, locale, 'close') : say(findings, locale, 'close-step', { step: formatForReader(step, units) })]
}

const whatIsAllowed = ({ finding, rule, exact, nothingSeen, ...reader }: Told): string => limitPhrase(finding, rule, exact, nothingSeen, reader)

function whatWasFound(told: Told): string {
  if (told.nothingSeen) return subject(told)
  const within = told.finding.verdict === 'accept' ? say(findings, told.locale, 'within') : ''
  return `${subject(told)}${howLong(told)}${toe(told)}${place(told)}${within}`
}

function subject(told: Told): string {
  const { finding, rule, locale, nothingSeen } = told
  const reading = readingText(told)
  if (rule?.kind === 'attribute') return say(findings, locale, answer(rule, finding.verdict === 'accept'))
  const name = rule !== null && 'of' in rule ? kinds(rule.of, told) : told.name
  if (nothingSeen) return say(findings, locale, 'none-found', { name })
  switch (rule?.kind) {
    case 'reading-range':
    case 'reading-allowance': return say(readingPhrases, locale, rule.reading, { reading })
    case 'reading-spread': return say(findings, locale, 'spread', { name: readingNames[locale][rule.reading], reading })
    case 'largest-size':
    case 'size-allowance': return usesAllowanceOnly(told)
      ? say(findings, locale, 'only-allowance', { name, length: along(finding.extent?.measuredMm ?? 0, null, told) })
      : say(findings, locale, `size-${rule.size}`, { name, reading })
    case 'window-sum': return say(findings, locale, 'sum', { name, reading })
    case 'window-count': return told.exact
      ? say(findings, locale, 'count', { name, count: reading, window: ruleLength(rule.windowMm, told.units) })
      : say(findings, locale, 'count-no-window', { name, count: reading })
    case 'length-share': return say(findings, locale, 'share', { name, reading })
    default: return finding.unit === 'count' ? say(findings, locale, 'faults', { name, count: reading }) : say(findings, locale, 'size-largest', { name, reading })
  }
}

/** Beyond the stretch where more is allowed there is none at all. */
const usesAllowanceOnly = ({ finding }: Told): boolean => finding.measured === 0 && finding.extent !== undefined

function answer(rule: Extract<Rule, { kind: 'attribute' }>, yes: boolean) {
  if (rule.answer === 'cratersFilled') return yes ? 'filled-yes' : 'filled-no'
  return yes ? 'fused-yes' : 'fused-no'
}

/** What the rule is about; of several kinds, those seen. A crater crack is a crack. */
function kinds(of: readonly IndicationKind[], { locale, inspection, nothingSeen }: Told): string {
  const seen = nothingSeen ? [] : of.filter(kind => inspection?.indications.some(one => one.kind === kind) ?? false)
  const told = seen.length > 0 ? seen : of.filter(kind => kind !== 'crater-crack' || !of.includes('crack'))
  const [first = '', ...rest] = told.map(kind => kindNames[locale][kind])
  return [first, ...rest.map(word => word.toLowerCase())].join(', ')
}

function readingText({ finding, units }: Told): string {
  const { measured, limit, unit } = finding
  if (measured === null) return ''
  if (unit !== 'mm') return sizeText(measured, unit, units)
  const beside = limit.min !== null && measured < limit.min ? limit.min : limit.max ?? limit.min
  return beside === null ? formatForReader(measured, units) : formatBesideLimit(measured, beside, units)
}

/** A length along the weld, as coarse as places are, unless that would make it look like the most allowed. */
function along(mm: number, mostMm: number | null, { units }: Told): string {
  const text = placeText(mm, units)
  return mostMm !== null && text === placeText(mostMm, units) ? formatBesideLimit(mm, mostMm, units) : text
}

/** How long the fault is: what is beyond the everyday limit in the worst window, or the one indication itself. Null: not told. */
function lengthOf(told: Told): number | null {
  const { finding, rule } = told
  if (usesAllowanceOnly(told)) return null
  const sized = rule?.kind === 'largest-size' || rule?.kind === 'size-allowance'
  const own = sized && finding.where !== null ? finding.where.toMm - finding.where.fromMm : 0
  const mm = finding.extent?.measuredMm ?? own
  return mm > 0 ? mm : null
}

function howLong(told: Told): string {
  const mm = lengthOf(told)
  return mm === null ? '' : say(findings, told.locale, 'for', { length: along(mm, told.finding.extent?.maxMm ?? null, told) })
}

function toe({ finding, rule, locale, weld, inspection }: Told): string {
  if (finding.toe !== undefined) return say(findings, locale, weld === undefined ? `toe-${finding.toe}` : `toe-${toeSide(weld.position, finding.toe)}`)
  if (rule?.kind !== 'size-allowance') return ''
  const toes = new Set(inspection?.indications.filter(one => rule.of.includes(one.kind)).map(one => one.toe))
  return toes.has('A') && toes.has('B') ? say(findings, locale, 'toe-both') : ''
}

/** One place for a point, or for a stretch whose length was told already; else both ends of the stretch. */
function place(told: Told): string {
  const { finding: { where }, rule, locale, units } = told
  if (where === null) return ''
  const [start, from, to] = [placeText(0, units), placeText(where.fromMm, units), placeText(where.toMm, units)]
  if (from === to && rule?.kind === 'reading-spread') return ''
  const lengthTold = Math.abs((lengthOf(told) ?? -1) - (where.toMm - where.fromMm)) < 0.5
  if (from === to || lengthTold) return from === start ? say(findings, locale, 'at-start') : say(findings, locale, 'at', { at: from })
  return from === start ? say(findings, locale, 'from-start', { to }) : say(findings, locale, 'between', { from, to })
}

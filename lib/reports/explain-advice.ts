import type { Evidence, Setting } from '../coaching/evidence'
import type { Advice } from '../coaching/what-to-change'
import type { CriteriaSet } from '../criteria/types'
import { causes, remedies, symptoms } from '../language/coaching'
import { advice as words } from '../language/coaching-evidence'
import { say, type Locale } from '../language/say'
import { amps, formatAmps } from '../units/current'
import { formatBesideLimit, formatForReader } from '../units/display'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'
import { ruleName } from './rule-names'
import { placeText } from './ruler'

export type AdviceReader = { readonly locale: Locale; readonly units: 'in' | 'mm'; readonly criteria?: CriteriaSet }

/** A piece of advice in words. The note goes with it wherever it is shown. */
export type AdviceText = { readonly headline: string; readonly because: string; readonly remedy: string; readonly note: string }

/** Advice as a learner reads it: what is wrong and what may be to blame, what that rests on, and what to try next. */
export function explainAdvice(advice: Advice, reader: AdviceReader): AdviceText {
  const { locale } = reader
  return {
    headline: headline(advice, reader),
    because: because(advice, reader),
    remedy: remedies[locale][advice.remedy],
    note: say(words, locale, 'note'),
  }
}

function headline({ aim, rule, symptom, cause, likelihood }: Advice, { locale, criteria }: AdviceReader): string {
  const named = { cause: causes[locale][cause], symptom: symptoms[locale][symptom], rule: ruleName(rule, locale, criteria) }
  return say(words, locale, aim === 'mend' ? likelihood : `hold-${likelihood}`, named)
}

function because({ evidence, alsoExplains }: Advice, reader: AdviceReader): string {
  const { locale, criteria } = reader
  const points = evidence.some(one => one.code !== 'seen-before')
  const others = [...new Set(alsoExplains.map(rule => ruleName(rule, locale, criteria)))].join(', ')
  return [
    ...(points ? [] : [say(words, locale, 'nothing-points')]),
    ...evidence.map(one => explainEvidence(one, reader)),
    ...(others === '' ? [] : [say(words, locale, 'also-explains', { rules: others })]),
  ].join(' ')
}

/** One thing written down about the coupon, as a sentence. */
export function explainEvidence(one: Evidence, { locale, units }: AdviceReader): string {
  const length = (mm: number): string => formatForReader(mm, units)
  const place = (mm: number): string => placeText(mm, units)
  const tell = (key: keyof (typeof words)['en'], values: Readonly<Record<string, string | number>> = {}): string => say(words, locale, key, values)
  const pass = (number: number | null): string => (number === null ? '' : tell('on-pass', { pass: number }))
  switch (one.code) {
    case 'above-card':
    case 'below-card': return tell(one.code, {
      setting: tell(one.setting), pass: pass(one.pass), value: settingText(one.setting, one.value, units), range: rangeText(one, locale, units),
    })
    case 'polarity-differs':
    case 'gas-differs': return tell(one.code, { pass: pass(one.pass), used: one.used, card: one.card })
    case 'bead-narrow':
    case 'bead-wide': return tell(one.code, { width: formatBesideLimit(one.widthMm, one.limitMm, units), limit: length(one.limitMm) })
    case 'narrower-last-third':
    case 'wider-last-third': return tell(one.code, { last: length(one.lastMm), before: length(one.beforeMm) })
    case 'widths-vary': return tell(one.code, { smallest: length(one.smallestMm), largest: length(one.largestMm) })
    case 'legs-differ': return tell(`legs-differ-${one.longer}`, { long: length(one.longMm), short: length(one.shortMm) })
    case 'undercut-one-toe': return tell(`undercut-${one.toe}`)
    case 'undercut-both-toes': return tell(one.code)
    case 'pores-near-start': return tell(one.code, { within: place(one.withinMm), count: one.count, total: one.total })
    case 'pores-spread': return tell(one.code, { count: one.count, from: place(one.fromMm), to: place(one.toMm) })
    case 'at-restart': return tell(one.code, { at: place(one.atMm) })
    case 'at-end': return tell(one.code, { from: place(one.fromMm) })
    case 'slag-seen':
    case 'spatter-seen': return tell(one.code, { count: one.count })
    case 'seen-before': return tell(one.code, { times: one.times, of: one.of })
  }
}

function rangeText({ setting, min, max }: Extract<Evidence, { code: 'above-card' | 'below-card' }>, locale: Locale, units: 'in' | 'mm'): string {
  const text = (value: number): string => settingText(setting, value, units)
  if (min !== null && max !== null) return say(words, locale, 'range-both', { min: text(min), max: text(max) })
  if (min !== null) return say(words, locale, 'range-min', { min: text(min) })
  return max === null ? '' : say(words, locale, 'range-max', { max: text(max) })
}

/** Speeds go with the unit of length: inches a minute, or millimetres a second along the joint and metres a minute of wire. */
function settingText(setting: Setting, value: number, units: 'in' | 'mm'): string {
  switch (setting) {
    case 'travel-speed': return formatTravelSpeed(travelSpeedMmPerS(value), { unit: units === 'in' ? 'in/min' : 'mm/s', digits: 1 })
    case 'stick-out': return formatForReader(value, units)
    case 'volts': return formatVolts(volts(value))
    case 'amps': return formatAmps(amps(value))
    case 'wire-feed': return units === 'in'
      ? formatWireFeedSpeed(wireFeedMmPerS(value), { unit: 'in/min', digits: 0 })
      : formatWireFeedSpeed(wireFeedMmPerS(value), { unit: 'm/min', digits: 1 })
  }
}

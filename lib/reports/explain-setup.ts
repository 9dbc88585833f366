import type { SetupCheck } from '../consumables/setup-checks'
import { setup } from '../language/setup'
import { say, type Locale } from '../language/say'
import { formatAmps, amps } from '../units/current'
import { formatForReader } from '../units/display'
import { MM_PER_INCH, type LengthUnit } from '../units/length'
import { fixed } from '../units/quantity'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'

/** A value as text; `more` decimals than usual, to tell a reading from a limit that would read the same. */
type Format = (value: number, more?: number) => string

/**
 * A set-up check as one or two sentences in the reader's language and units.
 *
 * @throws RangeError when the check lacks a value its sentence needs
 */
export function explainSetup(finding: SetupCheck, locale: Locale, units: LengthUnit): string {
  const { values } = finding
  const length: Format = (value, more = 0) => (more === 0 ? formatForReader(value, units) : `${fixed(units === 'in' ? value / MM_PER_INCH : value, more + 1)} ${units}`)
  const inRange = (format: Format): Record<string, string> => ({ ran: apartFromLimits(finding, format), range: rangeText(finding, format, locale) })
  switch (finding.check) {
    case 'process': return say(setup, locale, 'process', values)
    case 'polarity': return say(setup, locale, 'polarity', { ...values, set: polarityText(text(finding, 'set'), locale), right: polarityText(text(finding, 'right'), locale) })
    case 'gas-on-self-shielded': return say(setup, locale, 'gasOnSelfShielded', values)
    case 'gas-on-stick': return say(setup, locale, 'gasOnStick', values)
    case 'gas-missing': return say(setup, locale, 'gasMissing', values)
    case 'gas-of-another-class': return say(setup, locale, 'gasOfAnotherClass', { ...values, right: text(finding, 'right').split('/').join(say(setup, locale, 'or')) })
    case 'position': return say(setup, locale, 'position', values)
    case 'progression': return say(setup, locale, values.progression === 'up' ? 'progressionUp' : 'progressionDown', values)
    case 'single-pass-wire': return say(setup, locale, 'singlePassWire', values)
    case 'plate-too-thick': return say(setup, locale, 'plateTooThick', { ...values, max: length(number(finding, 'maxMm')), thickness: length(number(finding, 'thicknessMm')) })
    case 'stick-out': return say(setup, locale, 'stickOut', { set: length(number(finding, 'setMm')), range: rangeText(finding, length, locale) })
    case 'polarity-off-card': return say(setup, locale, 'polarityOffCard', { ran: polarityText(text(finding, 'ran'), locale), card: polarityText(text(finding, 'card'), locale) })
    case 'gas-off-card': return say(setup, locale, 'gasOffCard', values)
    case 'amps-off-card': return say(setup, locale, 'ampsOffCard', inRange((value, more = 0) => formatAmps(amps(value), more)))
    case 'volts-off-card': return say(setup, locale, 'voltsOffCard', inRange((value, more = 0) => formatVolts(volts(value), 1 + more)))
    case 'wire-feed-off-card': return say(setup, locale, 'wireFeedOffCard', inRange((value, more = 0) => formatWireFeedSpeed(wireFeedMmPerS(value), units === 'in' ? { unit: 'in/min', digits: more } : { unit: 'm/min', digits: 1 + more })))
    case 'contact-tip-off-card': return say(setup, locale, 'contactTipOffCard', inRange(length))
    case 'travel-speed-off-card': return say(setup, locale, 'travelSpeedOffCard', inRange((value, more = 0) => formatTravelSpeed(travelSpeedMmPerS(value), { unit: units === 'in' ? 'in/min' : 'mm/s', digits: 1 + more })))
  }
}

/** What was run, with as many decimals as it takes not to read like the limit it is outside of. */
function apartFromLimits(finding: SetupCheck, format: Format): string {
  const ran = number(finding, 'ran')
  const limits = [finding.values.min, finding.values.max].filter((each): each is number => typeof each === 'number')
  for (let more = 0; more < 6; more += 1) {
    const written = format(ran, more)
    if (limits.every((limit) => format(limit) !== written && format(limit, more) !== written)) return written
  }
  return format(ran)
}

function rangeText(finding: SetupCheck, format: Format, locale: Locale): string {
  const [min, max] = [finding.values.min, finding.values.max]
  if (typeof min === 'number' && typeof max === 'number') return say(setup, locale, 'between', { min: format(min), max: format(max) })
  if (typeof min === 'number') return say(setup, locale, 'atLeast', { min: format(min) })
  return say(setup, locale, 'atMost', { max: format(number(finding, 'max')) })
}

/** 'DCEP/AC' as 'DC, electrode positive or AC'. */
function polarityText(codes: string, locale: Locale): string {
  return codes.split('/').map((code) => say(setup, locale, code === 'DCEP' ? 'dcep' : code === 'DCEN' ? 'dcen' : 'ac')).join(say(setup, locale, 'or'))
}

function number(finding: SetupCheck, name: string): number {
  const value = finding.values[name]
  if (typeof value !== 'number') throw new RangeError(`The check "${finding.check}" lacks the number ${name}.`)
  return value
}

function text(finding: SetupCheck, name: string): string {
  const value = finding.values[name]
  if (typeof value !== 'string') throw new RangeError(`The check "${finding.check}" lacks the text ${name}.`)
  return value
}

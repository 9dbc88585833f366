import type { SetupCheck } from '../consumables/setup-checks'
import { setup } from '../language/setup'
import { say, type Locale } from '../language/say'
import { formatAmps, amps } from '../units/current'
import { formatForReader } from '../units/display'
import type { LengthUnit } from '../units/length'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'

type Format = (value: number) => string

/**
 * A set-up check as one or two sentences in the reader's language and units.
 *
 * @throws RangeError when the check lacks a value its sentence needs
 */
export function explainSetup(finding: SetupCheck, locale: Locale, units: LengthUnit): string {
  const { values } = finding
  const length: Format = (value) => formatForReader(value, units)
  const inRange = (format: Format): Record<string, string> => ({ ran: format(number(finding, 'ran')), range: rangeText(finding, format, locale) })
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
    case 'amps-off-card': return say(setup, locale, 'ampsOffCard', inRange((value) => formatAmps(amps(value))))
    case 'volts-off-card': return say(setup, locale, 'voltsOffCard', inRange((value) => formatVolts(volts(value))))
    case 'wire-feed-off-card': return say(setup, locale, 'wireFeedOffCard', inRange((value) => formatWireFeedSpeed(wireFeedMmPerS(value), units === 'in' ? { unit: 'in/min', digits: 0 } : { unit: 'm/min', digits: 1 })))
    case 'contact-tip-off-card': return say(setup, locale, 'contactTipOffCard', inRange(length))
    case 'travel-speed-off-card': return say(setup, locale, 'travelSpeedOffCard', inRange((value) => formatTravelSpeed(travelSpeedMmPerS(value), units === 'in' ? { unit: 'in/min', digits: 1 } : { unit: 'mm/s', digits: 1 })))
  }
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

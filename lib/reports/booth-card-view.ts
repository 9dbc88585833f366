import { checkBoothCard } from '../consumables/setup-checks'
import { readClassification } from '../consumables/classification'
import { learn } from '../language/learn'
import { say, type Locale } from '../language/say'
import type { AdvisedRange } from '../procedure/booth-card'
import type { ExerciseFacts } from '../procedure/exercise'
import type { Polarity } from '../procedure/process'
import { formatAngle, degrees } from '../units/angle'
import { amps, formatAmps } from '../units/current'
import { formatForReader } from '../units/display'
import { formatSeconds, seconds } from '../units/duration'
import { formatGasFlow, litresPerMinute } from '../units/gas-flow'
import type { LengthUnit } from '../units/length'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'
import { explainSetup } from './explain-setup'

export type CardRow = { readonly key: string; readonly term: string; readonly value: string }
export type BoothCardView = {
  readonly facts: readonly CardRow[]
  readonly settings: readonly CardRow[]
  /** What the set-up check says of the card itself: empty when the wire's class agrees with it. */
  readonly checks: readonly string[]
  readonly note: string | null
}

const POLARITY: Readonly<Record<Polarity, 'dcep' | 'dcen' | 'ac'>> = { DCEP: 'dcep', DCEN: 'dcen', AC: 'ac' }

/** A setting's range in words; null when the card says nothing. */
function rangeText(range: AdvisedRange | null, format: (value: number) => string, locale: Locale): string | null {
  if (range === null) return null
  const { min, max } = range
  if (min !== null && max !== null) return min === max ? format(min) : say(learn, locale, 'from', { min: format(min), max: format(max) })
  if (max !== null) return say(learn, locale, 'atMost', { max: format(max) })
  return min === null ? null : say(learn, locale, 'atLeast', { min: format(min) })
}

/** The booth card and the exercise's facts in the reader's words and units, for screen and print. */
export function boothCardView(exercise: ExerciseFacts, reader: { readonly locale: Locale; readonly units: LengthUnit }): BoothCardView {
  const { locale, units } = reader
  const told = (key: Parameters<typeof say<keyof typeof learn.en>>[2]): string => say(learn, locale, key)
  const { boothCard: card } = exercise
  const length = (mm: number): string => formatForReader(mm, units)
  const row = (key: Parameters<typeof told>[0], value: string | null): CardRow[] => (value === null ? [] : [{ key, term: told(key), value }])
  const range = (key: Parameters<typeof told>[0], of: AdvisedRange | null, format: (value: number) => string): CardRow[] => row(key, rangeText(of, format, locale))
  const angle = rangeText(card.travelAngleDeg, (value) => formatAngle(degrees(value)), locale)
  const direction = card.travelDirection ? told(card.travelDirection) : null

  return {
    facts: [
      ...row('process', exercise.process),
      ...row('joint', `${told(exercise.joint)}, ${told(exercise.weldType)}`),
      ...row('position', [exercise.position, exercise.progression ? told(exercise.progression) : null].filter(Boolean).join(', ')),
      ...row('plate', `${length(exercise.plateThicknessMm)}, ${exercise.material}`),
      ...row('consumable', [exercise.electrodeClass, exercise.electrodeDiameterMm === null ? null : length(exercise.electrodeDiameterMm)].filter(Boolean).join(', ')),
      ...row('size', exercise.nominalLegMm === null ? null : length(exercise.nominalLegMm)),
      ...row('length', length(exercise.lengthMm)),
      ...row('passes', String(exercise.passCount)),
    ],
    settings: [
      ...row('polarity', told(POLARITY[card.polarity])),
      ...range('amps', card.amps, (value) => formatAmps(amps(value))),
      ...range('wireFeed', card.wireFeedMmPerS, (value) => formatWireFeedSpeed(wireFeedMmPerS(value), units === 'in' ? { unit: 'in/min', digits: 0 } : { unit: 'm/min', digits: 1 })),
      ...range('volts', card.volts, (value) => formatVolts(volts(value))),
      ...range('stickOut', card.contactTipToWorkMm, length),
      ...row('gas', exercise.process === 'SMAW' ? null : (card.gas ?? told('noGas'))),
      ...range('gasFlow', card.gasFlowLPerMin, (value) => formatGasFlow(litresPerMinute(value), units === 'in' ? { unit: 'cfh', digits: 0 } : { unit: 'L/min', digits: 0 })),
      ...range('workAngle', card.workAngleDeg, (value) => formatAngle(degrees(value))),
      ...row('travelAngle', [angle, direction].filter(Boolean).join(', ') || null),
      ...range('travelSpeed', card.travelSpeedMmPerS, (value) => formatTravelSpeed(travelSpeedMmPerS(value), units === 'in' ? { unit: 'in/min', digits: 0 } : { unit: 'mm/s', digits: 1 })),
      ...range('sidePause', card.sidePauseSeconds, (value) => formatSeconds(seconds(value))),
    ],
    checks: checkBoothCard(readClassification(exercise.electrodeClass), exercise, card).map((check) => explainSetup(check, locale, units)),
    note: card.note,
  }
}

import * as z from 'zod'
import { POLARITIES } from '../procedure/process'
import type { PassSettings } from '../procedure/booth-card'
import { amps, formatAmps, parseAmps } from '../units/current'
import { formatDuration, parseDuration, seconds } from '../units/duration'
import { formatVolts, parseVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, parseWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'
import { alongWeld, lengthField, settingField, textField, type Reader } from './field'

/** Largest settings taken, above any arc welding set a class uses; a slipped decimal point is caught here. */
const MOST = { amps: 2000, volts: 100, wireFeedMmPerS: 1000, stickOutMm: 150, arcSeconds: 4 * 3600, gasCharacters: 20 }
const MOST_PASSES = 40

/** The boxes of one pass as a form sends them. */
export const passBoxes = ['amps', 'volts', 'wireFeed', 'stickOut', 'arcTime', 'length', 'gas'] as const
export type PassForm = Record<(typeof passBoxes)[number], string> & { polarity: (typeof POLARITIES)[number] | null }

export const blankPass = (): PassForm => ({
  amps: '', volts: '', wireFeed: '', stickOut: '', arcTime: '', length: '', gas: '', polarity: null,
})

/** One pass as typed, in the reader's units: wire feed in in/min or m/min, the rest by their own units. */
function passSchema(reader: Reader, weldLengthMm: number) {
  const feedUnit = reader.units === 'in' ? 'in/min' : 'm/min'
  const wireFeed = {
    parse: (text: string) => parseWireFeedSpeed(text, feedUnit),
    example: reader.units === 'in' ? '90 in/min' : '2.3 m/min',
    most: MOST.wireFeedMmPerS,
    mostText: formatWireFeedSpeed(wireFeedMmPerS(MOST.wireFeedMmPerS), { unit: feedUnit, digits: 0 }),
  }
  return z.strictObject({
    amps: settingField(reader, { parse: parseAmps, example: '140', most: MOST.amps, mostText: formatAmps(amps(MOST.amps)) }),
    volts: settingField(reader, { parse: parseVolts, example: '18.5', most: MOST.volts, mostText: formatVolts(volts(MOST.volts), 0) }),
    wireFeed: settingField(reader, wireFeed),
    stickOut: lengthField(reader, MOST.stickOutMm, 'tooMuchSet'),
    arcTime: settingField(reader, { parse: parseDuration, example: '1:30', most: MOST.arcSeconds, mostText: formatDuration(seconds(MOST.arcSeconds)) }),
    length: alongWeld(reader, weldLengthMm),
    gas: textField(reader, MOST.gasCharacters),
    polarity: z.enum(POLARITIES).nullable(),
  }).transform((row): PassSettings => ({
    amps: row.amps,
    volts: row.volts,
    wireFeedMmPerS: row.wireFeed,
    contactTipToWorkMm: row.stickOut,
    polarity: row.polarity,
    gas: row.gas,
    arcSeconds: row.arcTime,
    lengthMm: row.length,
  }))
}

/** The passes of a coupon, first to last; at least one. */
export function passesSchema(reader: Reader, weldLengthMm: number) {
  return z.array(passSchema(reader, weldLengthMm)).min(1).max(MOST_PASSES)
}

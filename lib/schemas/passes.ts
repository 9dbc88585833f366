import * as z from 'zod'
import { POLARITIES } from '../procedure/process'
import type { PassSettings } from '../procedure/booth-card'
import { parseAmps } from '../units/current'
import { parseDuration } from '../units/duration'
import { parseVolts } from '../units/voltage'
import { parseWireFeedSpeed } from '../units/wire-feed-speed'
import { lengthField, quantityField, textField, type Reader } from './field'

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
  const wireFeed = (text: string): number => parseWireFeedSpeed(text, reader.units === 'in' ? 'in/min' : 'm/min')
  return z.strictObject({
    amps: quantityField(reader, parseAmps, '140', MOST.amps),
    volts: quantityField(reader, parseVolts, '18.5', MOST.volts),
    wireFeed: quantityField(reader, wireFeed, reader.units === 'in' ? '90 in/min' : '2.3 m/min', MOST.wireFeedMmPerS),
    stickOut: lengthField(reader, MOST.stickOutMm),
    arcTime: quantityField(reader, parseDuration, '1:30', MOST.arcSeconds),
    length: lengthField(reader, weldLengthMm),
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

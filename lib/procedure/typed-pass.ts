import type { PassForm } from '../schemas/passes'
import { parseAmps } from '../units/current'
import { parseDuration } from '../units/duration'
import { parseLength, type LengthUnit } from '../units/length'
import { parseVolts } from '../units/voltage'
import { parseWireFeedSpeed } from '../units/wire-feed-speed'
import type { PassSettings } from './booth-card'

/**
 * A pass as far as its boxes can be read now, while it is being typed; what cannot be read counts as not written down. For showing
 * figures beside the boxes: what is kept is read and refused by lib/schemas/passes.
 */
export function readPassSoFar(form: PassForm, units: LengthUnit): PassSettings {
  return {
    amps: soFar(form.amps, parseAmps),
    volts: soFar(form.volts, parseVolts),
    wireFeedMmPerS: soFar(form.wireFeed, (text) => parseWireFeedSpeed(text, units === 'in' ? 'in/min' : 'm/min')),
    contactTipToWorkMm: soFar(form.stickOut, (text) => parseLength(text, units)),
    polarity: form.polarity,
    gas: form.gas.trim() === '' ? null : form.gas.trim(),
    arcSeconds: soFar(form.arcTime, parseDuration),
    lengthMm: soFar(form.length, (text) => parseLength(text, units)),
  }
}

/** null for an empty box, one that cannot be read, and a zero: no arc has run on nothing. */
function soFar(text: string, parse: (text: string) => number): number | null {
  if (text.trim() === '') return null
  try {
    const value = parse(text)
    return value > 0 ? value : null
  } catch {
    return null
  }
}

import { learn } from '../language/learn'
import { myProgress } from '../language/my-progress'
import { say, type Locale } from '../language/say'
import type { PassSettings } from '../procedure/booth-card'
import { arcEnergy, travelSpeed } from '../procedure/heat-input'
import type { Polarity } from '../procedure/process'
import { amps, formatAmps } from '../units/current'
import { formatForReader } from '../units/display'
import { formatDuration, seconds } from '../units/duration'
import { formatEnergyPerLength } from '../units/energy-per-length'
import type { LengthUnit } from '../units/length'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatVolts, volts } from '../units/voltage'
import { formatWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'

export type PassRow = { readonly key: string; readonly term: string; readonly value: string }
/** One pass as it was run. `rows` leave out what nobody wrote down; `missing` says what a computed figure still needs. */
export type PassView = { readonly key: string; readonly title: string; readonly rows: readonly PassRow[]; readonly missing: readonly string[] }
export type PassesView = { readonly passes: readonly PassView[]; readonly nothing: string | null; readonly heatNote: string | null }

const POLARITY: Readonly<Record<Polarity, 'dcep' | 'dcen' | 'ac'>> = { DCEP: 'dcep', DCEN: 'dcen', AC: 'ac' }

/** The passes of a coupon with travel speed and heat input where they can be worked out, in the reader's words and units. */
export function passesView(passes: readonly PassSettings[], reader: { readonly locale: Locale; readonly units: LengthUnit }): PassesView {
  const written = passes.map((pass, index) => ({ pass, view: passView(pass, index + 1, reader) })).filter(({ view }) => view.rows.length > 0)
  return {
    passes: written.map(({ view }) => view),
    nothing: written.length === 0 ? say(myProgress, reader.locale, 'nothingRun') : null,
    heatNote: written.some(({ pass }) => heatOf(pass) !== null) ? say(myProgress, reader.locale, 'heatHow') : null,
  }
}

function passView(pass: PassSettings, number: number, { locale, units }: { readonly locale: Locale; readonly units: LengthUnit }): PassView {
  const told = (key: keyof typeof myProgress.en): string => say(myProgress, locale, key)
  const row = <T>(key: keyof typeof myProgress.en, value: T | null, format: (value: T) => string): PassRow[] => (value === null ? [] : [{ key, term: told(key), value: format(value) }])
  const [speed, heat] = [speedOf(pass), heatOf(pass)]
  const inches = units === 'in'
  const rows = [
    ...row('polarity', pass.polarity, (polarity) => say(learn, locale, POLARITY[polarity])),
    ...row('amps', pass.amps, (value) => formatAmps(amps(value))),
    ...row('volts', pass.volts, (value) => formatVolts(volts(value))),
    ...row('wireFeed', pass.wireFeedMmPerS, (value) => formatWireFeedSpeed(wireFeedMmPerS(value), inches ? { unit: 'in/min', digits: 0 } : { unit: 'm/min', digits: 1 })),
    ...row('stickOut', pass.contactTipToWorkMm, (value) => formatForReader(value, units)),
    ...row('gas', pass.gas, (value) => value),
    ...row('arcTime', pass.arcSeconds, (value) => `${formatDuration(seconds(value))} min`),
    ...row('length', pass.lengthMm, (value) => formatForReader(value, units)),
    ...row('travelSpeed', speed, (value) => formatTravelSpeed(travelSpeedMmPerS(value), { unit: inches ? 'in/min' : 'mm/s', digits: 1 })),
    ...row('heatInput', heat, (value) => formatEnergyPerLength(value, inches ? 'kJ/in' : 'kJ/mm')),
  ]
  return {
    key: String(number), title: say(myProgress, locale, 'pass', { n: number }), rows,
    missing: speed === null ? [told('needForSpeed')] : heat === null ? [told('needForHeat')] : [],
  }
}

/** mm/s; null unless both the length and the time were written down. */
function speedOf({ lengthMm, arcSeconds }: PassSettings): number | null {
  return lengthMm !== null && arcSeconds !== null && lengthMm > 0 && arcSeconds > 0 ? travelSpeed(lengthMm, arcSeconds) : null
}

/** kJ/mm without an efficiency factor; null unless all of it was written down. */
function heatOf(pass: PassSettings): number | null {
  const speed = speedOf(pass)
  const { volts: v, amps: a } = pass
  return speed !== null && v !== null && a !== null && v > 0 && a > 0 ? arcEnergy({ volts: v, amps: a, travelSpeedMmPerS: speed }) : null
}

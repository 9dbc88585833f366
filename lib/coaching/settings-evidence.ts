import type { AdvisedRange, BoothCard, PassSettings } from '../procedure/booth-card'
import { travelSpeed } from '../procedure/heat-input'
import { SETTINGS, type Evidence, type Setting } from './evidence'

/** A setting counts as off the card only this share beyond its range: a hand timer and a dial are no finer. */
export const SETTING_SLACK = 0.05

/** How a setting stood against the card on the pass where it was farthest off. */
export type SettingState =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'on-card' }
  | { readonly kind: 'off-card'; readonly side: 'above' | 'below'
      /** Distance beyond the range over the end it passed. */
      readonly share: number
      readonly evidence: Evidence }

export type SettingsAgainstCard = {
  readonly states: Readonly<Record<Setting, SettingState>>
  readonly polarity: Evidence | null
  /** The polarity was written down for every pass and is the card's. */
  readonly polarityIsRight: boolean
  readonly gas: Evidence | null
}

const ADVICE: Readonly<Record<Setting, (card: BoothCard) => AdvisedRange | null>> = {
  'travel-speed': card => card.travelSpeedMmPerS,
  'stick-out': card => card.contactTipToWorkMm,
  volts: card => card.volts,
  amps: card => card.amps,
  'wire-feed': card => card.wireFeedMmPerS,
}

const USED: Readonly<Record<Setting, (pass: PassSettings) => number | null>> = {
  'travel-speed': ({ lengthMm, arcSeconds }) =>
    (lengthMm === null || arcSeconds === null ? null : travelSpeed(over0(lengthMm, 'length welded'), over0(arcSeconds, 'arc time'))),
  'stick-out': pass => pass.contactTipToWorkMm,
  volts: pass => pass.volts,
  amps: pass => pass.amps,
  'wire-feed': pass => pass.wireFeedMmPerS,
}

/**
 * Holds the settings of every pass against the booth card. What neither the card nor the pass says stays unknown.
 *
 * @throws RangeError for a setting that is not a number over 0
 */
export function settingsAgainstCard(passes: readonly PassSettings[], card: BoothCard | null): SettingsAgainstCard {
  const number = (index: number): number | null => (passes.length > 1 ? index + 1 : null)
  const state = (setting: Setting): SettingState => {
    const readings = passes.map((pass, index) => ({ pass: number(index), value: known(USED[setting](pass), setting) }))
    return stateOf(setting, readings, card === null ? null : ADVICE[setting](card))
  }
  const states = Object.fromEntries(SETTINGS.map(setting => [setting, state(setting)])) as Record<Setting, SettingState>
  if (card === null) return { states, polarity: null, polarityIsRight: false, gas: null }
  const polarityIsRight = passes.length > 0 && passes.every(pass => pass.polarity === card.polarity)
  return { states, polarity: otherPolarity(passes, card, number), polarityIsRight, gas: otherGas(passes, card, number) }
}

function stateOf(setting: Setting, readings: readonly { pass: number | null; value: number | null }[], range: AdvisedRange | null): SettingState {
  if (range === null || (range.min === null && range.max === null)) return { kind: 'unknown' }
  let worst: SettingState = { kind: 'unknown' }
  for (const { pass, value } of readings) {
    if (value === null) continue
    const found = beyond(value, range)
    if (found === null) {
      if (worst.kind === 'unknown') worst = { kind: 'on-card' }
    } else if (worst.kind !== 'off-card' || found.share > worst.share) {
      worst = { kind: 'off-card', ...found, evidence: { code: `${found.side}-card`, setting, pass, value, ...range } }
    }
  }
  return worst
}

function beyond(value: number, { min, max }: AdvisedRange): { side: 'above' | 'below'; share: number } | null {
  if (max !== null && value > max * (1 + SETTING_SLACK)) return { side: 'above', share: (value - max) / max }
  if (min !== null && value < min * (1 - SETTING_SLACK)) return { side: 'below', share: (min - value) / min }
  return null
}

function otherPolarity(passes: readonly PassSettings[], card: BoothCard, number: (index: number) => number | null): Evidence | null {
  const index = passes.findIndex(pass => pass.polarity !== null && pass.polarity !== card.polarity)
  const used = passes[index]?.polarity ?? null
  return used === null ? null : { code: 'polarity-differs', pass: number(index), used, card: card.polarity }
}

function otherGas(passes: readonly PassSettings[], card: BoothCard, number: (index: number) => number | null): Evidence | null {
  if (card.gas === null) return null
  const named = card.gas.trim()
  const index = passes.findIndex(pass => pass.gas !== null && pass.gas.trim().toUpperCase() !== named.toUpperCase())
  const used = passes[index]?.gas ?? null
  return used === null ? null : { code: 'gas-differs', pass: number(index), used: used.trim(), card: named }
}

const known = (value: number | null, setting: Setting): number | null => (value === null ? null : over0(value, setting))

function over0(value: number, what: string): number {
  if (Number.isFinite(value) && value > 0) return value
  throw new RangeError(`The ${what} of a pass must be a number over 0, not ${value}; leave it empty when it was not written down.`)
}

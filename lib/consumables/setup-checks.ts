import type { AdvisedRange, BoothCard, PassSettings } from '../procedure/booth-card'
import type { ExerciseFacts } from '../procedure/exercise'
import { positionRows } from '../procedure/positions'
import type { Polarity } from '../procedure/process'
import { travelSpeed } from '../procedure/heat-input'
import type { Source } from '../source'
import { plateAdvice, stickOutAdvice, usesGas } from './advice'
import type { Consumable } from './consumable'
import { gasCode } from './gas-code'

export const SETUP_CHECKS = [
  'process', 'polarity', 'gas-on-self-shielded', 'gas-on-stick', 'gas-missing', 'gas-of-another-class', 'position', 'progression', 'single-pass-wire',
  'plate-too-thick', 'stick-out', 'polarity-off-card', 'gas-off-card', 'amps-off-card', 'volts-off-card', 'wire-feed-off-card', 'contact-tip-off-card', 'travel-speed-off-card',
] as const
export type SetupCheckCode = (typeof SETUP_CHECKS)[number]

/** Something about a set-up to look at. `wrong` goes against the class; `caution` is outside advice or the booth card. */
export type SetupCheck = {
  readonly check: SetupCheckCode
  readonly severity: 'wrong' | 'caution'
  /** What the sentence needs: numbers in the library's units (mm, mm/s, A, V) and designations. Absent ends of a range are left out. */
  readonly values: Readonly<Record<string, string | number>>
  readonly source: Source
}

/** The facts of an exercise that a set-up is checked against. */
export type SetupFacts = Pick<ExerciseFacts, 'process' | 'position' | 'progression' | 'plateThicknessMm' | 'passCount' | 'electrodeDiameterMm'>

/** The booth card itself as a source: readers in another language meet its name in theirs. */
export const BOOTH_CARD: Source = { title: 'Booth card of the exercise', clause: null, status: 'common-practice', note: 'Set by the instructor.' }
const SAME = 1e-6

/**
 * Checks an exercise and its booth card against the wire or rod: nothing found is an empty list, wrong before caution.
 * What the class leaves to the maker, and what the card says nothing about, is not checked.
 *
 * @throws RangeError when the exercise's position is none
 */
export function checkBoothCard(consumable: Consumable, facts: SetupFacts, card: BoothCard): SetupCheck[] {
  return inOrder([
    ...checkClass(consumable, facts),
    ...checkPolarity(consumable, card.polarity),
    ...checkGas(consumable, card.gas),
    ...checkStickOut(consumable, facts.electrodeDiameterMm, card.contactTipToWorkMm),
  ])
}

/**
 * Checks what was run on one pass: against the wire or rod where that is wrong, else against the booth card.
 * Settings not written down are not checked.
 *
 * @throws RangeError when a length or a time is written down as zero or less
 */
export function checkPass(consumable: Consumable, card: BoothCard, pass: PassSettings): SetupCheck[] {
  const classPolarity = pass.polarity === null ? [] : checkPolarity(consumable, pass.polarity)
  const classGas = pass.gas === null ? [] : checkGas(consumable, pass.gas)
  const speed = pass.lengthMm === null || pass.arcSeconds === null ? null : travelSpeed(pass.lengthMm, pass.arcSeconds)
  return inOrder([
    ...classPolarity,
    ...classGas,
    ...(classPolarity.length === 0 && pass.polarity !== null && pass.polarity !== card.polarity ? [caution('polarity-off-card', { ran: pass.polarity, card: card.polarity })] : []),
    ...(classGas.length === 0 && pass.gas !== null && card.gas !== null && gasCode(pass.gas) !== gasCode(card.gas) ? [caution('gas-off-card', { ran: pass.gas, card: card.gas })] : []),
    ...offCard('amps-off-card', pass.amps, card.amps),
    ...offCard('volts-off-card', pass.volts, card.volts),
    ...offCard('wire-feed-off-card', pass.wireFeedMmPerS, card.wireFeedMmPerS),
    ...offCard('contact-tip-off-card', pass.contactTipToWorkMm, card.contactTipToWorkMm),
    ...offCard('travel-speed-off-card', speed, card.travelSpeedMmPerS),
  ])
}

/** What the class itself rules out, whatever the settings: process, position, progression, passes, plate. */
function checkClass(consumable: Consumable, facts: SetupFacts): SetupCheck[] {
  const { classification, source } = consumable
  const wrong = (check: SetupCheckCode, values: SetupCheck['values']): SetupCheck => ({ check, severity: 'wrong', values: { classification, ...values }, source })
  const rows = positionRows(facts.position, facts.progression)
  const covers = (row: (typeof rows)[number]): boolean => consumable.positions === null || row.welds.every((each) => consumable.positions?.includes(each))
  const coversOther = positionRows(facts.position).some(covers)
  const tooThick = plateAdvice(consumable, facts.electrodeDiameterMm).find(({ range }) => range.max !== null && facts.plateThicknessMm > range.max + SAME)
  return [
    ...(consumable.process === facts.process ? [] : [wrong('process', { wire: consumable.process, exercise: facts.process })]),
    ...(rows.some(covers) ? []
      : coversOther && facts.progression ? [wrong('progression', { position: facts.position, progression: facts.progression })] : [wrong('position', { position: facts.position })]),
    ...(consumable.passes === 'single' && facts.passCount > 1 ? [wrong('single-pass-wire', { passes: facts.passCount })] : []),
    ...(tooThick ? [caution('plate-too-thick', { classification, thicknessMm: facts.plateThicknessMm, maxMm: tooThick.range.max ?? 0 }, tooThick.source)] : []),
  ]
}

function checkPolarity(consumable: Consumable, polarity: Polarity): SetupCheck[] {
  if (consumable.polarity.length === 0 || consumable.polarity.includes(polarity)) return []
  const { classification, source } = consumable
  return [{ check: 'polarity', severity: 'wrong', values: { classification, set: polarity, right: consumable.polarity.join('/') }, source }]
}

function checkGas(consumable: Consumable, gas: string | null): SetupCheck[] {
  const { classification, source, shielding, gases } = consumable
  const hasGas = gas !== null && gas.trim() !== ''
  const wrong = (check: SetupCheckCode, values: SetupCheck['values'] = {}): SetupCheck[] => [{ check, severity: 'wrong', values: { classification, ...values }, source }]
  if (shielding === null) return []
  if (shielding === 'slag') return hasGas ? wrong('gas-on-stick', { gas }) : []
  if (usesGas(consumable.process) === false) return hasGas ? wrong('gas-on-self-shielded', { gas }) : []
  if (!hasGas) return wrong('gas-missing')
  if (gases === undefined || gases.some((each) => each === gasCode(gas))) return []
  return [caution('gas-of-another-class', { classification, gas, right: gases.join('/') }, source)]
}

function checkStickOut(consumable: Consumable, electrodeDiameterMm: number | null, set: AdvisedRange | null): SetupCheck[] {
  const advice = stickOutAdvice(consumable, electrodeDiameterMm)
  if (advice === null || set === null) return []
  const { min, max } = advice.range
  const isShort = min !== null && set.min !== null && set.min < min - SAME
  const isLong = max !== null && set.max !== null && set.max > max + SAME
  if (!isShort && !isLong) return []
  return [caution('stick-out', { ...rangeValues(advice.range), ...(isShort ? { setMm: set.min } : isLong ? { setMm: set.max } : {}) }, advice.source)]
}

function offCard(check: SetupCheckCode, ran: number | null, advised: AdvisedRange | null): SetupCheck[] {
  if (ran === null || advised === null) return []
  const inside = (advised.min === null || ran >= advised.min - SAME) && (advised.max === null || ran <= advised.max + SAME)
  return inside ? [] : [caution(check, { ran, ...rangeValues(advised) })]
}

function rangeValues({ min, max }: AdvisedRange): Record<string, number> {
  return { ...(min === null ? {} : { min }), ...(max === null ? {} : { max }) }
}

function caution(check: SetupCheckCode, values: SetupCheck['values'], source: Source = BOOTH_CARD): SetupCheck {
  return { check, severity: 'caution', values, source }
}

function inOrder(checks: readonly SetupCheck[]): SetupCheck[] {
  return [...checks.filter((each) => each.severity === 'wrong'), ...checks.filter((each) => each.severity === 'caution')]
}

import type { AdvisedRange, BoothCard } from '@/lib/procedure/booth-card'
import type { Polarity } from '@/lib/procedure/process'
import { MM_PER_INCH } from '@/lib/units/length'
import { litresPerMinute, parseGasFlow } from '@/lib/units/gas-flow'
import { parseWireFeedSpeed } from '@/lib/units/wire-feed-speed'

/*
 * Settings of the demonstration's booths. The figures are from memory of common practice with wires and rods of these classes; no data
 * sheet stands behind them, and every card says so.
 */

type Pair = readonly [low: number, high: number]

export type CardInput = {
  readonly polarity: Polarity
  readonly amps: Pair
  readonly volts?: Pair
  /** in/min */
  readonly wireFeed?: Pair
  /** in */
  readonly stickOut?: Pair
  /** in/min */
  readonly travel: Pair
  readonly gas?: 'C1' | 'M21'
  readonly workAngle: Pair
  readonly travelAngle: Pair
  readonly direction: 'drag' | 'push'
  /** Seconds at each side of a weave. */
  readonly pause?: Pair
  readonly note: string
}

const range = (pair: Pair | undefined, perUnit = 1): AdvisedRange | null =>
  pair === undefined ? null : { min: rounded(pair[0] * perUnit), max: rounded(pair[1] * perUnit) }
const rounded = (value: number): number => Math.round(value * 1e4) / 1e4

const MM_PER_S = parseWireFeedSpeed('1 in/min', 'in/min')
/** Flow of shielding gas in a closed booth, 35 to 45 cubic feet an hour. */
const GAS_FLOW: AdvisedRange = { min: litresPerMinute(rounded(parseGasFlow('35 cfh', 'cfh'))), max: litresPerMinute(rounded(parseGasFlow('45 cfh', 'cfh'))) }

export function card(input: CardInput): BoothCard {
  return {
    polarity: input.polarity,
    amps: range(input.amps),
    volts: range(input.volts),
    wireFeedMmPerS: range(input.wireFeed, MM_PER_S),
    contactTipToWorkMm: range(input.stickOut, MM_PER_INCH),
    travelSpeedMmPerS: range(input.travel, MM_PER_S),
    gas: input.gas ?? null,
    gasFlowLPerMin: input.gas ? GAS_FLOW : null,
    workAngleDeg: range(input.workAngle),
    travelAngleDeg: range(input.travelAngle),
    travelDirection: input.direction,
    sidePauseSeconds: range(input.pause),
    note: input.note,
  }
}

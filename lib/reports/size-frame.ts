import type { StationBox } from '../schemas/readings'
import type { GaugeUnit } from '../units/gauge-steps'
import type { PadBand } from './pad-bands'

/** What the pad and the drawn bead are made of: the weld, the gauge as the reader reads it, and the pad of each size. */
export type SizeFrame = {
  readonly units: 'in' | 'mm'
  readonly gauge: GaugeUnit
  readonly lengthMm: number
  readonly position: string
  /** A box without a pad is typed. */
  readonly pads: Readonly<Partial<Record<StationBox, PadBand>>>
  /** Boxes of sizes that are judged only where someone took them: offered, not asked for. */
  readonly offered: readonly StationBox[]
}

/** The pad of one size on its own. */
export type SizePadFrame = { readonly gauge: GaugeUnit; readonly band: PadBand }

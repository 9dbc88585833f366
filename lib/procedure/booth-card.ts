import type { Polarity } from './process'

/** An advised range; either end may be open. Ends are inclusive. */
export type AdvisedRange = { readonly min: number | null; readonly max: number | null }

/**
 * What the instructor sets up in the booth for an exercise: starting points, to be tuned to the wire maker's sheet.
 * null means the card says nothing about it (a stick electrode has no wire feed; a self-shielded wire no gas).
 */
export type BoothCard = {
  readonly polarity: Polarity
  readonly amps: AdvisedRange | null
  readonly volts: AdvisedRange | null
  readonly wireFeedMmPerS: AdvisedRange | null
  readonly contactTipToWorkMm: AdvisedRange | null
  readonly travelSpeedMmPerS: AdvisedRange | null
  /** Shielding gas as ISO 14175 writes it: 'C1' (carbon dioxide), 'M21' (argon with 15 to 25 % carbon dioxide). */
  readonly gas: string | null
  readonly gasFlowLPerMin: AdvisedRange | null
  readonly workAngleDeg: AdvisedRange | null
  readonly travelAngleDeg: AdvisedRange | null
  readonly travelDirection: 'drag' | 'push' | null
  readonly sidePauseSeconds: AdvisedRange | null
  readonly note: string | null
}

/** What the welder actually ran on one pass. null means it was not written down. */
export type PassSettings = {
  readonly amps: number | null
  readonly volts: number | null
  readonly wireFeedMmPerS: number | null
  readonly contactTipToWorkMm: number | null
  readonly polarity: Polarity | null
  readonly gas: string | null
  readonly arcSeconds: number | null
  /** Length welded in this pass. */
  readonly lengthMm: number | null
}

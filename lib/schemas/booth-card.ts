import * as z from 'zod'
import type { BoothCard } from '../procedure/booth-card'
import { POLARITIES } from '../procedure/process'

const range = z.strictObject({ min: z.number().nonnegative().nullable(), max: z.number().nonnegative().nullable() })
  .refine(({ min, max }) => min === null || max === null || min <= max, 'A range starts at its smaller end.')
  .nullable()

/** A booth card as stored with an exercise version. */
export const boothCardSchema: z.ZodType<BoothCard> = z.strictObject({
  polarity: z.enum(POLARITIES),
  amps: range, volts: range, wireFeedMmPerS: range, contactTipToWorkMm: range, travelSpeedMmPerS: range,
  gas: z.string().max(20).nullable(),
  gasFlowLPerMin: range, workAngleDeg: range, travelAngleDeg: range,
  travelDirection: z.enum(['drag', 'push']).nullable(),
  sidePauseSeconds: range,
  note: z.string().max(500).nullable(),
})

import * as z from 'zod'
import type { FilterState } from '../readiness/incremental'

/** The readiness filter's memory of a series, as stored with a skill summary. */
export const filterStateSchema: z.ZodType<FilterState> = z.object({
  day: z.number().nullable(), coupons: z.number().int().nonnegative(), mass: z.array(z.number()),
})

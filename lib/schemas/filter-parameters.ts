import * as z from 'zod'
import type { FilterParameters } from '../readiness/parameters'

/** The readiness filter's parameters, as stored with a refitted model. Whether they mean anything, `checkParameters` says. */
export const filterParametersSchema: z.ZodType<FilterParameters> = z.strictObject({
  m0: z.number(), s0: z.number(), rho: z.number(), mInf: z.number(), q1: z.number(), qs: z.number(), qg: z.number(), tauF: z.number(),
  s: z.number(), c: z.number(), d: z.number(), eta: z.number(),
})

import * as z from 'zod'
import type { Finding } from '../scoring/types'
import type { Source } from '../source'

const source = z.object({
  title: z.string(),
  clause: z.string().nullable(),
  status: z.enum(['confirmed', 'secondary', 'memory', 'common-practice']),
  note: z.string().optional(),
}).transform(({ note, ...rest }): Source => (note === undefined ? rest : { ...rest, note }))

const detail = z.object({
  source,
  reason: z.string().optional(),
  extent: z.object({ measuredMm: z.number(), maxMm: z.number(), windowMm: z.number() }).optional(),
  standardMargin: z.number().optional(),
  toe: z.enum(['A', 'B']).optional(),
})

type Detail = Pick<Finding, 'source' | 'reason' | 'extent' | 'standardMargin' | 'toe'>

/** What a stored finding says beside its columns. Absent keys stay absent. */
export const findingDetailSchema = detail.transform((value) => Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as Detail)

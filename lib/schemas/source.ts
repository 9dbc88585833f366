import * as z from 'zod'
import type { Source } from '../source'

const shape = z.object({
  title: z.string(),
  clause: z.string().nullable(),
  status: z.enum(['confirmed', 'secondary', 'memory', 'common-practice']),
  note: z.string().optional(),
})

/** A citation as stored beside a finding. */
export const sourceSchema = shape.transform(({ note, ...source }): Source => (note === undefined ? source : { ...source, note }))

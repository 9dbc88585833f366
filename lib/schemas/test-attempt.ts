import * as z from 'zod'

const size = z.number().nonnegative().finite()

/** What was examined in a test attempt, as stored. A part that is null was not part of the test. */
export const testPartsSchema = z.strictObject({
  visual: z.enum(['accept', 'reject']).nullable(),
  bends: z.array(z.strictObject({
    face: z.enum(['face', 'root', 'side']),
    indications: z.array(z.strictObject({ sizeMm: size, corner: z.boolean(), fromSlagOrFusion: z.boolean() })),
  })).nullable(),
  filletBreak: z.strictObject({ foldedFlat: z.boolean(), rootFused: z.boolean(), inclusionsMm: z.array(size) }).nullable(),
})
export type TestParts = z.output<typeof testPartsSchema>

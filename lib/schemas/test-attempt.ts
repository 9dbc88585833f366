import * as z from 'zod'

const size = z.number().nonnegative().finite()
const seen = z.boolean().nullable()
export const MOST_BENDS = 8
export const MOST_INDICATIONS = 50

/** What was examined in a test attempt, as stored. A part that is null or absent was not part of the test. */
export const testPartsSchema = z.strictObject({
  visual: z.enum(['accept', 'reject']).nullable(),
  bends: z.array(z.strictObject({
    face: z.enum(['face', 'root', 'side']),
    indications: z.array(z.strictObject({ sizeMm: size, corner: z.boolean(), fromSlagOrFusion: z.boolean() })).max(MOST_INDICATIONS),
  })).max(MOST_BENDS).nullable(),
  filletBreak: z.strictObject({ foldedFlat: z.boolean(), rootFused: z.boolean(), inclusionsMm: z.array(size).max(MOST_INDICATIONS) }).nullable(),
  macroetch: z.strictObject({
    crackSeen: seen, rootFused: seen, fusionComplete: seen, profileAcceptable: seen,
    undercutMm: size.nullable(), legAMm: size.nullable(), legBMm: size.nullable(),
  }).nullable().optional(),
})
export type TestParts = z.output<typeof testPartsSchema>

/** A test as its witness recorded it, read from the form. The id is made by the form, so that sending it twice makes one test; the day has no time. */
export type RecordedAttempt = {
  readonly id: string
  readonly classId: string
  readonly studentId: string
  readonly exerciseId: string
  readonly testedOn: Date
  readonly parts: TestParts
  /** What is stamped on the plate, and the wire or rod as its label names it; null when nobody wrote it down. */
  readonly plateIdentity: string | null
  readonly wireIdentity: string | null
  readonly note: string | null
}

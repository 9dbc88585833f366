import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid, type Reader } from './field'

const size = z.number().nonnegative().finite()
const seen = z.boolean().nullable()
const MOST_BENDS = 8
const MOST_INDICATIONS = 50
const MOST_NOTE = 2000

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

/** A test as its witness records it. The id is made by the form, so that sending it twice makes one test; the day has no time. */
export function attemptSchema(reader: Reader) {
  return z.strictObject({
    id: uuid, classId: uuid, studentId: uuid, exerciseId: uuid,
    testedOn: z.iso.date(say(problems, reader.locale, 'required')).transform((text) => new Date(`${text}T00:00:00Z`)),
    parts: testPartsSchema,
    note: textField(reader, MOST_NOTE),
  })
}
export type RecordedAttempt = z.output<ReturnType<typeof attemptSchema>>

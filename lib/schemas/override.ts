import * as z from 'zod'
import { textField, uuid, type Reader } from './field'

/** A reason that says something: shorter ones are "ok" and "see above". */
export const LEAST_REASON = 10
export const MOST_REASON = 1000

/** An instructor's own verdict over the computed one. `inspectionId` is the look it was decided on: a correction made meanwhile is another. */
export function overrideSchema(reader: Reader) {
  return z.strictObject({
    couponId: uuid,
    inspectionId: uuid,
    verdict: z.enum(['accept', 'reject'], { error: () => 'Choose accept or reject.' }),
    reason: textField(reader, MOST_REASON).transform((text, context): string => {
      if (text !== null && text.length >= LEAST_REASON) return text
      context.addIssue({ code: 'custom', message: `Say why, in ${LEAST_REASON} characters or more. The student reads it.` })
      return z.NEVER
    }),
  })
}
export type DecidedOverride = z.output<ReturnType<typeof overrideSchema>>

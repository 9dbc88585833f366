import * as z from 'zod'
import { textField, uuid } from './field'
import { readingsSchema, type ReadingsFrame } from './readings'

const MOST_COMMENT = 4000

export const inspectionKey = z.object({ couponId: uuid })

/**
 * An instructor's inspection as submitted. `revision` is the one the form was opened for: 1 for a first look, one more than the
 * standing revision for a correction; a form whose revision was taken meanwhile is told so.
 */
export function inspectionSchema(frame: ReadingsFrame) {
  return z.strictObject({
    couponId: uuid,
    revision: z.number().int().min(1).max(1000),
    comment: textField(frame, MOST_COMMENT),
    readings: readingsSchema(frame),
  })
}
export type SubmittedInspection = z.output<ReturnType<typeof inspectionSchema>>

import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid } from './field'
import { passesSchema } from './passes'
import { readingsSchema, type ReadingsFrame } from './readings'

const MOST_NOTE = 1000
/** A phone's clock may run ahead a little without anyone meaning the future. */
const CLOCK_SLACK_MS = 15 * 60 * 1000
const YEAR_MS = 366 * 24 * 3600 * 1000

/** Which coupon a log is about; read first, because the exercise decides how the rest is checked. */
export const couponKey = z.object({ id: uuid, classId: uuid, exerciseId: uuid })

/**
 * A logged coupon as the form or the device's queue sends it.
 *
 * @param asOf the server's clock, to tell a coupon from the future
 */
export function couponSchema(frame: ReadingsFrame, asOf: Date) {
  const told = (key: 'future' | 'tooOld') => say(problems, frame.locale, key)
  return z.strictObject({
    id: uuid,
    classId: uuid,
    exerciseId: uuid,
    weldedAt: z.iso.datetime({ offset: true })
      .transform((text) => new Date(text))
      .refine((date) => date.getTime() <= asOf.getTime() + CLOCK_SLACK_MS, told('future'))
      .refine((date) => date.getTime() >= asOf.getTime() - YEAR_MS, told('tooOld')),
    booth: z.number().int().min(1).max(999).nullable(),
    note: textField(frame, MOST_NOTE),
    passes: passesSchema(frame, frame.lengthMm),
    readings: readingsSchema(frame),
  })
}
export type LoggedCoupon = z.output<ReturnType<typeof couponSchema>>
export type CouponForm = z.input<ReturnType<typeof couponSchema>>

import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid } from './field'
import { passesSchema } from './passes'
import { readingsSchema, type ReadingsFrame } from './readings'

const MOST_NOTE = 1000
/** Clocks differ by this much without anyone being wrong. */
const CLOCK_SLACK_MS = 15 * 60 * 1000
const YEAR_MS = 366 * 24 * 3600 * 1000

/** Which coupon a log is about; read first, because the exercise decides how the rest is checked. */
export const couponKey = z.object({ id: uuid, classId: uuid, exerciseId: uuid, exerciseVersion: z.int().min(1).optional() })

/**
 * When the weld was made, by the server's clock. A device's clock may be wrong by a day, but it runs evenly: the time from welding to
 * sending is right even so. When the device's clock at sending is more than a quarter of an hour off ours, its difference is taken out of
 * the time of welding. What is still ahead of us after that is put at now: the weld was certainly made before it arrived.
 */
function weldedBy(asOf: Date, weldedAt: Date, sentAt: Date | undefined): Date {
  const ahead = sentAt ? sentAt.getTime() - asOf.getTime() : 0
  const time = Math.abs(ahead) > CLOCK_SLACK_MS ? weldedAt.getTime() - ahead : weldedAt.getTime()
  return new Date(time > asOf.getTime() + CLOCK_SLACK_MS ? asOf.getTime() : time)
}

const moment = z.iso.datetime({ offset: true }).transform((text) => new Date(text))

/**
 * A logged coupon as the form or the device's queue sends it. Output: `weldedAt` by the server's clock, and `weldedAtAsSent`, the time the
 * device said where that is another one, else null.
 *
 * @param asOf the server's clock
 */
export function couponSchema(frame: ReadingsFrame, asOf: Date) {
  const told = say(problems, frame.locale, 'tooOld')
  return z.strictObject({
    id: uuid,
    classId: uuid,
    exerciseId: uuid,
    /** The version the form was opened with; absent from forms and queues older than this field, which mean the current one. */
    exerciseVersion: z.int().min(1).optional(),
    weldedAt: moment,
    sentAt: moment.optional(),
    booth: z.number().int().min(1).max(999).nullable(),
    note: textField(frame, MOST_NOTE),
    passes: passesSchema(frame, frame.lengthMm),
    readings: readingsSchema(frame),
  }).transform(({ sentAt, ...coupon }, context) => {
    const weldedAt = weldedBy(asOf, coupon.weldedAt, sentAt)
    if (weldedAt.getTime() < asOf.getTime() - YEAR_MS) context.addIssue({ code: 'custom', path: ['weldedAt'], message: told })
    return { ...coupon, weldedAt, weldedAtAsSent: weldedAt.getTime() === coupon.weldedAt.getTime() ? null : coupon.weldedAt }
  })
}
export type LoggedCoupon = z.output<ReturnType<typeof couponSchema>>
export type CouponForm = z.input<ReturnType<typeof couponSchema>>

import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { lengthField, tidyText, uuid, type Reader } from './field'

const MOST_NAME = 60
const MOST_PLACE = 40
export const LEAST_COUPONS = 2
export const MOST_COUPONS = 30
export const LEAST_ROUNDS = 2
export const MOST_ROUNDS = 5
/** Wider than a bead of these exercises: catches a slipped decimal point. */
const MOST_WIDTH_MM = 75
/** Narrower than any bead. */
const LEAST_WIDTH_MM = 1

const line = (most: number, missing: string) => z.string().transform(tidyText).pipe(z.string().min(1, missing).max(most, `Keep it to ${most} characters.`))

/**
 * A new gauge study as typed. `id` is made with the form, so that sending it twice sets up one study. The place where every coupon is read
 * becomes the end of the study's name.
 */
export const newStudySchema = z.strictObject({
  id: uuid,
  classId: uuid,
  name: line(MOST_NAME, 'Type a name, such as “Week 14”.'),
  place: line(MOST_PLACE, 'Say where on every coupon the width is read, such as “2 in from the start”.'),
  rounds: z.string().transform((text, context): number => {
    const rounds = /^\s*\d{1,3}\s*$/.test(text) ? Number(text) : Number.NaN
    if (rounds >= LEAST_ROUNDS && rounds <= MOST_ROUNDS) return rounds
    context.addIssue({ code: 'custom', message: `Give a whole number of rounds from ${LEAST_ROUNDS} to ${MOST_ROUNDS}: one round shows nothing about a reader against themselves.` })
    return z.NEVER
  }),
  couponIds: z.array(uuid)
    .transform((ids) => [...new Set(ids)])
    .pipe(z.array(uuid).min(LEAST_COUPONS, 'Choose two coupons at least; five to ten is better.').max(MOST_COUPONS, `Choose ${MOST_COUPONS} coupons at most.`)),
}).transform(({ name, place, ...rest }) => ({ ...rest, name: `${name}: ${place}` }))
export type NewStudy = z.output<typeof newStudySchema>

/** One reading as typed, in the reader's units. */
export const studyReadingSchema = (reader: Reader) =>
  z.strictObject({
    studyId: uuid,
    couponId: uuid,
    round: z.int().min(1).max(MOST_ROUNDS),
    width: lengthField(reader, MOST_WIDTH_MM).transform((value, context): number => {
      if (value === null) context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
      else if (value < LEAST_WIDTH_MM) context.addIssue({ code: 'custom', message: 'No bead is that narrow. Read it again, toe to toe.' })
      else return value
      return z.NEVER
    }),
  })
export type StudyReadingForm = z.output<ReturnType<typeof studyReadingSchema>>

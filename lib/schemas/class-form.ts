import * as z from 'zod'
import { tidyText, uuid } from './field'

const MOST_NAME = 80
const optionalId = z.union([uuid, z.literal('').transform(() => null)])

const required = (most: number) =>
  z.string().transform(tidyText).pipe(z.string().min(1, 'Type a name.').max(most, `Keep it to ${most} characters.`))
const optional = z.string().transform(tidyText).pipe(z.string().max(MOST_NAME, `Keep it to ${MOST_NAME} characters.`)).transform((text) => text || null)

/** What a class is called and when it meets. */
const named = { name: required(MOST_NAME), room: optional, meets: optional }

/** A new class. '' for the instructor is nobody yet; '' for the class to copy from is an empty list of exercises. */
export const newClassSchema = z.strictObject({ termId: z.uuid('Choose a term.'), instructorId: optionalId, copyFrom: optionalId, ...named })
export type NewClass = z.output<typeof newClassSchema>

/** New words for a class that exists. */
export const changedClassSchema = z.strictObject({ classId: uuid, ...named })
export type ChangedClass = z.output<typeof changedClassSchema>

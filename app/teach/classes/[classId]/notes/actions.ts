'use server'

import * as z from 'zod'
import { classNoteSchema } from '@/lib/schemas/class-life'
import { uuid } from '@/lib/schemas/field'
import { action } from '@/app/_server/action'
import { takeDownClassNote, writeClassNote } from '@/app/_server/data/class-notes'

/** A demo note or a message to a class, new or in place of another. */
export const saveNote = action({ roles: ['instructor'], input: (viewer) => classNoteSchema(viewer) }, (viewer, input) => writeClassNote(viewer, input, new Date()))

/** Takes a note down; it is kept. */
export const takeDownNote = action({ roles: ['instructor'], input: z.strictObject({ noteId: uuid }) }, async (viewer, input) => {
  await takeDownClassNote(viewer, input)
  return {}
})

'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { staffNoteSchema } from '@/lib/schemas/staff-note'
import { action } from '@/app/_server/action'
import { takeDownStaffNote, writeStaffNote } from '@/app/_server/data/staff-notes'

/** A note on a student that only staff see. */
export const saveStaffNote = action({ roles: ['instructor', 'coordinator'], input: (viewer) => staffNoteSchema(viewer) }, (viewer, input) => writeStaffNote(viewer, input))

/** Takes a note on a student down; it is kept. */
export const removeStaffNote = action({ roles: ['instructor', 'coordinator'], input: z.strictObject({ noteId: uuid }) }, async (viewer, input) => {
  await takeDownStaffNote(viewer, input)
  return {}
})

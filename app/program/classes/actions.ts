'use server'

import * as z from 'zod'
import { changedClassSchema, newClassSchema } from '@/lib/schemas/class-form'
import { uuid } from '@/lib/schemas/field'
import { changedTermSchema, termFormSchema } from '@/lib/schemas/term-form'
import { action } from '@/app/_server/action'
import { changeClass, makeClass, setArchived } from '@/app/_server/data/class-admin'
import { changeTerm, makeTerm, removeTerm, setTermArchived } from '@/app/_server/data/terms'

/** Makes a term. */
export const addTerm = action({ roles: ['coordinator'], input: termFormSchema }, (viewer, input) => makeTerm(viewer, input))

/** Another name or other days for a term. */
export const saveTerm = action({ roles: ['coordinator'], input: changedTermSchema }, changeTerm)

/** Archives a term with its classes, or takes it back. */
export const archiveTerm = action({ roles: ['coordinator'], input: z.strictObject({ termId: uuid, archived: z.boolean() }) }, async (viewer, input) => {
  await setTermArchived(viewer, input)
  return {}
})

/** Deletes a term that has no classes. */
export const deleteTerm = action({ roles: ['coordinator'], input: z.strictObject({ termId: uuid }) }, async (viewer, input) => {
  await removeTerm(viewer, input)
  return {}
})

/** Makes a class, with another class's list when one is named. */
export const addClass = action({ roles: ['coordinator'], input: newClassSchema }, (viewer, input) => makeClass(viewer, input))

/** Another name, room or time for a class. */
export const saveClass = action({ roles: ['coordinator'], input: changedClassSchema }, async (viewer, input) => {
  await changeClass(viewer, input)
  return {}
})

/** Archives a class, or takes it back. */
export const archiveClass = action({ roles: ['coordinator'], input: z.strictObject({ classId: uuid, archived: z.boolean() }) }, async (viewer, input) => {
  await setArchived(viewer, input)
  return {}
})

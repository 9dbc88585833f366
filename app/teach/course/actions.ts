'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { exerciseFormSchema } from '@/lib/schemas/exercise-form'
import { action } from '@/app/_server/action'
import { addExercise, addFromLibrary, copyList, moveExercise, removeExercise, setOpensAfter } from '@/app/_server/data/course'
import { findEditable, saveVersion } from '@/app/_server/data/exercise-versions'
import { notFound } from '@/app/_server/refusal'
import { setupWarnings } from '@/app/_server/views/course-warnings'

/** Those whose classes they are, and the coordinator: which class, the data functions say. */
const KEEPERS = ['instructor', 'coordinator'] as const
const listed = { classId: uuid, exerciseId: uuid }
const done = async (work: Promise<unknown>): Promise<object> => {
  await work
  return {}
}

/** Puts an exercise of the program on the list of a class one keeps. */
export const addToList = action({ roles: KEEPERS, input: z.strictObject(listed) }, (viewer, input) => done(addExercise(viewer, input)))

/** Makes an exercise from the library and puts it on the list. */
export const addLibraryExercise = action({ roles: KEEPERS, input: z.strictObject({ classId: uuid, key: z.string().max(60) }) }, (viewer, input) => addFromLibrary(viewer, input))

/** Copies another class's list. */
export const copyClassList = action({ roles: KEEPERS, input: z.strictObject({ classId: uuid, from: uuid }) }, (viewer, input) => copyList(viewer, input))

/** Moves an exercise up or down. */
export const moveInList = action({ roles: KEEPERS, input: z.strictObject({ ...listed, to: z.enum(['up', 'down']) }) }, (viewer, input) => done(moveExercise(viewer, input)))

/** Says which exercise opens another. */
export const chooseOpensAfter = action(
  { roles: KEEPERS, input: z.strictObject({ ...listed, opensAfterId: z.union([uuid, z.literal('').transform(() => null)]) }) },
  (viewer, input) => done(setOpensAfter(viewer, input)),
)

/** Takes an exercise off the list; its coupons stay. */
export const removeFromList = action({ roles: KEEPERS, input: z.strictObject(listed) }, (viewer, input) => done(removeExercise(viewer, input)))

/** What the checks say of an exercise as it is typed; saves nothing. */
export const checkExercise = action({ roles: KEEPERS, input: (viewer) => exerciseFormSchema(viewer) }, async (viewer, input) => {
  if (!(await findEditable(viewer, input))) throw notFound()
  return { warnings: setupWarnings(input.facts, viewer) }
})

/** Saves an exercise as its next version. Warnings do not stop it. */
export const saveExercise = action({ roles: KEEPERS, input: (viewer) => exerciseFormSchema(viewer) }, async (viewer, input) => ({
  ...(await saveVersion(viewer, input)), warnings: setupWarnings(input.facts, viewer),
}))

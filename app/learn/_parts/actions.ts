'use server'

import * as z from 'zod'
import { lookSchema } from '@/lib/schemas/class-life'
import { uuid } from '@/lib/schemas/field'
import { action } from '@/app/_server/action'
import { askForLook, takeBackLook } from '@/app/_server/data/look-requests'

/** The student asks the instructor to come and look. */
export const askInstructor = action({ roles: ['student'], input: (viewer) => lookSchema(viewer) }, async (viewer, input) => {
  await askForLook(viewer, input)
  return {}
})

/** The student needs no look any more. */
export const needNoLook = action({ roles: ['student'], input: z.strictObject({ classId: uuid }) }, async (viewer, input) => {
  await takeBackLook(viewer, input)
  return {}
})

/** Someone is at the shared tablet: being asked is what keeps their session, as every request does. */
export const stillHere = action({ roles: ['student'], input: z.strictObject({}) }, () => Promise.resolve({}))

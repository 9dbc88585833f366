'use server'

import * as z from 'zod'
import { tabletSchema } from '@/lib/schemas/class-life'
import { uuid } from '@/lib/schemas/field'
import { action } from '@/app/_server/action'
import { leave } from '@/app/_server/auth/enter'
import { keepTablet } from '@/app/_server/auth/tablet'
import { setStudentPin } from '@/app/_server/data/pins'
import { closeTablet, openTablet } from '@/app/_server/data/shared-tablets'

/** Makes this very device a shared tablet of a class. The instructor is signed out on it: students hold it next. */
export const openTabletHere = action({ roles: ['instructor'], input: (viewer) => tabletSchema(viewer) }, async (viewer, input) => {
  await keepTablet(await openTablet(viewer, input))
  await leave()
  return {}
})

/** Closes a shared tablet, wherever it is. */
export const closeSharedTablet = action({ roles: ['instructor'], input: z.strictObject({ tabletId: uuid }) }, async (viewer, input) => {
  await closeTablet(viewer, input)
  return {}
})

/** A new PIN for a student of one's class, shown once. */
export const newPin = action({ roles: ['instructor'], input: z.strictObject({ studentId: uuid }) }, (viewer, input) => setStudentPin(viewer, input))

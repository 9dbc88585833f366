'use server'

import * as z from 'zod'
import { CLOSINGS } from '@/lib/reports/gauge-study-progress'
import { uuid } from '@/lib/schemas/field'
import { newStudySchema, studyReadingSchema } from '@/lib/schemas/gauge-study'
import { action } from '@/app/_server/action'
import { closeStudy, openStudy } from '@/app/_server/data/gauge-studies'
import { addReading } from '@/app/_server/data/study-readings'

/** Opens a gauge study of coupons of a class. */
export const beginStudy = action({ roles: ['instructor'], input: newStudySchema }, (viewer, input) => openStudy(viewer, input))

/** The reader's next width, as typed. */
export const sendReading = action({ roles: ['instructor'], input: (viewer) => studyReadingSchema(viewer) }, (viewer, input) => addReading(viewer, input))

/** Closes a study; `as` is what the page said would come of it. */
export const endStudy = action({ roles: ['instructor', 'coordinator'], input: z.strictObject({ studyId: uuid, as: z.enum(CLOSINGS) }) }, async (viewer, input) => {
  await closeStudy(viewer, input)
  return {}
})

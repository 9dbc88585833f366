import * as z from 'zod'
import { uuid } from './field'
import { rosterNamesSchema } from './person'

/** A new instructor, by the rules of the join form for names. '' for the class is none yet. */
export const instructorFormSchema = rosterNamesSchema({ locale: 'en', units: 'in' }).extend({ classId: z.union([uuid, z.literal('').transform(() => null)]) })
export type InstructorForm = z.output<typeof instructorFormSchema>

import * as z from 'zod'
import { tidyText } from './field'

const MOST_NAME = 60
const day = z.iso.date('Give the day.')

/** A new term. Dates are days at the program's place. */
export const termFormSchema = z.strictObject({
  name: z.string().transform(tidyText).pipe(z.string().min(1, 'Type a name.').max(MOST_NAME, `Keep it to ${MOST_NAME} characters.`)),
  startsOn: day,
  endsOn: day,
}).refine(({ startsOn, endsOn }) => startsOn <= endsOn, { path: ['endsOn'], message: 'A term ends on or after the day it starts.' })
export type TermForm = z.output<typeof termFormSchema>

import * as z from 'zod'
import { tidyText, uuid } from './field'

const MOST_NAME = 60
const day = z.iso.date('Give the day.')

const fields = {
  name: z.string().transform(tidyText).pipe(z.string().min(1, 'Type a name.').max(MOST_NAME, `Keep it to ${MOST_NAME} characters.`)),
  startsOn: day,
  endsOn: day,
}
const inOrder = ({ startsOn, endsOn }: { readonly startsOn: string; readonly endsOn: string }): boolean => startsOn <= endsOn
const backwards = { path: ['endsOn'], message: 'A term ends on or after the day it starts.' }

/** A new term. Dates are days at the program's place. */
export const termFormSchema = z.strictObject(fields).refine(inOrder, backwards)
export type TermForm = z.output<typeof termFormSchema>

/** Another name or other days for a term that exists. */
export const changedTermSchema = z.strictObject({ termId: uuid, ...fields }).refine(inOrder, backwards)
export type ChangedTerm = z.output<typeof changedTermSchema>

import * as z from 'zod'
import type { CheckNames } from '../interchange/roster'
import { uuid } from './field'
import { rosterNamesSchema } from './person'

/** Room for 5,000 lines of about 120 characters. */
const MOST_TEXT = 600_000

const text = z.string().max(MOST_TEXT, 'This file is too long. Split it.')

/** A roster as pasted, for the class it is to fill. */
export const rosterSchema = z.strictObject({ classId: uuid, text })

/** The same with the mark of the dry run that was shown. */
export const rosterImportSchema = z.strictObject({ classId: uuid, text, shown: z.string().length(64) })

const LABELS: Readonly<Record<string, string>> = { signInName: 'Sign-in name', givenName: 'Given name', familyName: 'Family name' }

const names = rosterNamesSchema({ locale: 'en', units: 'in' })

/** The rules of the join form for names, said in one sentence. */
export const checkRosterNames: CheckNames = (given) => {
  const parsed = names.safeParse(given)
  if (parsed.success) return { ok: true, names: parsed.data }
  const [issue] = parsed.error.issues
  return { ok: false, reason: `${LABELS[String(issue?.path[0])] ?? 'This line'}: ${issue?.message ?? 'cannot be read.'}` }
}

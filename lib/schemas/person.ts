import * as z from 'zod'
import { problems } from '../language/problems'
import { LOCALES, say } from '../language/say'
import { tidyText, type Reader } from './field'
import { passwordProblem } from './password'

const SIGN_IN_NAME = /^[a-z0-9](?:[a-z0-9.@_-]{1,38}[a-z0-9])$/

const MOST_NAME = 80

/** A name on one line, tidied before it is measured. */
const nameField = (reader: Reader) =>
  z.string().transform((text) => tidyText(text).replace(/\s+/g, ' '))
    .pipe(z.string().min(1, say(problems, reader.locale, 'required')).max(MOST_NAME, say(problems, reader.locale, 'tooLong', { most: MOST_NAME })))

const signInNameField = (reader: Reader) =>
  z.string().transform((text) => text.normalize('NFKC').trim().toLowerCase()).refine((text) => SIGN_IN_NAME.test(text), say(problems, reader.locale, 'signInName'))

/** Crockford's base 32 without vowels: nothing to confuse, nothing to spell. */
export const CODE_LETTERS = '23456789BCDFGHJKMNPQRSTVWXYZ'
const CODE = new RegExp(`^[${CODE_LETTERS}]{8}$`)

/** A class code as typed: case, spaces and hyphens are forgiven. Output is the bare eight characters. */
export const codeField = (reader: Reader) =>
  z.string().transform((text) => text.toUpperCase().replace(/[\s-]/g, '')).refine((text) => CODE.test(text), say(problems, reader.locale, 'code'))

/** A class code as people read it: 7KQM-2XRT. */
export const writeCode = (code: string): string => `${code.slice(0, 4)}-${code.slice(4)}`

const person = (reader: Reader) => ({
  givenName: nameField(reader),
  familyName: nameField(reader),
  signInName: signInNameField(reader),
  password: z.string(),
})

/** The names of a student on a roster, by the rules of the join form. */
export const rosterNamesSchema = (reader: Reader) =>
  z.strictObject({ givenName: nameField(reader), familyName: nameField(reader), signInName: signInNameField(reader) })

type New = { givenName: string; familyName: string; signInName: string; password: string }
const checkPassword = (reader: Reader, about: readonly string[]) => (value: New, context: z.RefinementCtx) => {
  const problem = passwordProblem(value.password, [value.givenName, value.familyName, value.signInName, 'toeline', ...about], reader.locale)
  if (problem) context.addIssue({ code: 'custom', path: ['password'], message: problem })
}

/** Joining a class as a new student. */
export function joinSchema(reader: Reader, about: readonly string[] = []) {
  return z.strictObject({ code: codeField(reader), program: z.string().max(60).nullable(), locale: z.enum(LOCALES), ...person(reader) })
    .superRefine(checkPassword(reader, about))
}

/** First visit: the program and its coordinator. */
export function setupSchema(reader: Reader) {
  return z.strictObject({
    setupCode: z.string().transform((text) => text.trim()),
    programName: nameField(reader),
    timeZone: z.string().refine(isTimeZone, say(problems, reader.locale, 'choose')),
    units: z.enum(['us', 'si']),
    ...person(reader),
  }).superRefine((value, context) => checkPassword(reader, [value.programName])(value, context))
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name })
    return true
  } catch {
    return false
  }
}

/** Replacing one's own password; `current` is verified by the server. */
export function newPasswordSchema(reader: Reader, about: readonly string[]) {
  return z.strictObject({ current: z.string(), password: z.string() }).superRefine((value, context) => {
    const problem = passwordProblem(value.password, about, reader.locale)
    if (problem) context.addIssue({ code: 'custom', path: ['password'], message: problem })
  })
}

/** A person's own reading preferences. */
export const preferencesSchema = z.strictObject({ locale: z.enum(LOCALES), units: z.enum(['us', 'si']) })

import * as z from 'zod'
import { problems } from '../language/problems'
import { LOCALES, say } from '../language/say'
import { textField, uuid, type Reader } from './field'
import { MOST_CLASS_NOTE, MOST_LOOK_NOTE, MOST_TABLET_NAME } from './note-length'

/** Text that must be there once it is tidied. */
const words = (reader: Reader, most: number) =>
  textField(reader, most).transform((text, context) => {
    if (text !== null) return text
    context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
    return z.NEVER
  })

const optionalId = z.union([uuid, z.literal('').transform(() => null), z.null()])

/** Asking the instructor to come and look; the exercise and the words are optional. */
export const lookSchema = (reader: Reader) =>
  z.strictObject({ classId: uuid, exerciseId: optionalId, note: textField(reader, MOST_LOOK_NOTE) })

/** Words for a whole class. Which day today is the server says: it is the program's day, not the device's. */
export function classNoteSchema(reader: Reader) {
  return z.strictObject({
    classId: uuid,
    kind: z.enum(['demo', 'message'], say(problems, reader.locale, 'choose')),
    /** The class day of a demo; '' is today. */
    onDate: z.union([z.iso.date(say(problems, reader.locale, 'choose')), z.literal('').transform(() => null), z.null()]),
    exerciseId: optionalId,
    body: words(reader, MOST_CLASS_NOTE),
    /** The note these words replace. */
    replaces: optionalId,
  })
}

/** Opening a shared tablet: the name the class gives it. */
export const tabletSchema = (reader: Reader) => z.strictObject({ classId: uuid, name: words(reader, MOST_TABLET_NAME) })

/** Signing in on a shared tablet. What a PIN may be is checked when it is set; here any short text is a guess. */
export const tabletSignInSchema = z.strictObject({ personId: uuid, pin: z.string().max(20), locale: z.enum(LOCALES) })

import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid, type Reader } from './field'

/** The longest a student writes when asking for a look: two lines on a phone. */
export const MOST_LOOK_NOTE = 200
/** The longest note to a class. */
export const MOST_CLASS_NOTE = 2000

const optionalId = z.union([uuid, z.literal('').transform(() => null), z.null()])

/** Asking the instructor to come and look; the exercise and the words are optional. */
export const lookSchema = (reader: Reader) =>
  z.strictObject({ classId: uuid, exerciseId: optionalId, note: textField(reader, MOST_LOOK_NOTE) })

/** Words for a whole class. Today's date is the server's to say: it is the program's, not the device's. */
export function classNoteSchema(reader: Reader) {
  return z.strictObject({
    classId: uuid,
    kind: z.enum(['demo', 'message'], say(problems, reader.locale, 'choose')),
    exerciseId: optionalId,
    body: textField(reader, MOST_CLASS_NOTE).transform((text, context) => {
      if (text !== null) return text
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
      return z.NEVER
    }),
    /** The note these words replace. */
    replaces: optionalId,
  })
}

import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid, type Reader } from './field'
import { MOST_STAFF_NOTE } from './note-length'

/** A note on a student that only staff see. */
export const staffNoteSchema = (reader: Reader) =>
  z.strictObject({
    studentId: uuid,
    body: textField(reader, MOST_STAFF_NOTE).transform((text, context) => {
      if (text !== null) return text
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
      return z.NEVER
    }),
  })

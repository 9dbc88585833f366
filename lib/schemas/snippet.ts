import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid, type Reader } from './field'

/** As many snippets as can be looked over at a glance. */
export const MOST_SNIPPETS = 30
const MOST_BODY = 300

/** A remark kept to be used again. */
export function snippetSchema(reader: Reader) {
  return z.strictObject({
    body: textField(reader, MOST_BODY).transform((text, context): string => {
      if (text !== null) return text
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
      return z.NEVER
    }),
  })
}
export const snippetKey = z.strictObject({ snippetId: uuid })

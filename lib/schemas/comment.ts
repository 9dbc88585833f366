import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { textField, uuid, type Reader } from './field'

export function commentSchema(reader: Reader) {
  return z.strictObject({
    couponId: uuid,
    body: textField(reader, 4000).transform((text, context) => {
      if (text !== null) return text
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'required') })
      return z.NEVER
    }),
  })
}

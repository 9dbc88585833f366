import * as z from 'zod'
import { problems } from '../language/problems'
import { say, type Locale } from '../language/say'
import { formatForReader } from '../units/display'
import { parseLength, type LengthUnit } from '../units/length'

/** Whose form it is: the language of its sentences and the unit that a bare number means. */
export type Reader = { readonly locale: Locale; readonly units: LengthUnit }

const MOST_TYPED = 40

/** Text as typed in a box; an empty box is null, which is "not measured" and never 0. */
export const typed = z.string().max(MOST_TYPED).transform((text) => text.trim() || null)

/**
 * A length box: '' becomes null, '5/16' becomes millimetres, nonsense and absurd sizes become a sentence at the field.
 *
 * @param mostMm the largest size taken, so that a slipped decimal point is caught where it was typed
 */
export function lengthField(reader: Reader, mostMm: number) {
  return typed.transform((text, context): number | null => {
    if (text === null) return null
    let value: number
    try {
      value = parseLength(text, reader.units)
    } catch {
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'notALength', { typed: text }) })
      return z.NEVER
    }
    if (value > mostMm) {
      const most = formatForReader(mostMm, reader.units)
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'absurd', { typed: text, most }) })
      return z.NEVER
    }
    return value
  })
}

/** A box for a quantity read by one of lib/units' parsers; '' becomes null. */
export function quantityField(reader: Reader, parse: (text: string) => number, example: string, most: number) {
  return typed.transform((text, context): number | null => {
    if (text === null) return null
    try {
      const value = parse(text)
      if (value <= most) return value
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'absurd', { typed: text, most }) })
    } catch {
      context.addIssue({ code: 'custom', message: say(problems, reader.locale, 'notANumber', { typed: text, example }) })
    }
    return z.NEVER
  })
}

/** Free text of a person, trimmed; '' becomes null. */
export function textField(reader: Reader, most: number) {
  return z
    .string()
    .max(most, say(problems, reader.locale, 'tooLong', { most }))
    .transform((text) => text.trim() || null)
}

export const uuid = z.uuid()

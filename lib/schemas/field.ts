import * as z from 'zod'
import { problems } from '../language/problems'
import { say, type Locale } from '../language/say'
import { formatForReader } from '../units/display'
import { parseLength, type LengthUnit } from '../units/length'

/** Whose form it is: the language of its sentences and the unit that a bare number means. */
export type Reader = { readonly locale: Locale; readonly units: LengthUnit }

const MOST_TYPED = 40
/** A length shown in inches keeps two decimals: what a person copies back may lie this far past the end it was read from. */
const END_SLACK_MM = 0.13

/** Text as typed in a box; an empty box is null, which is "not measured" and never 0. */
export function typedBox({ locale }: Reader) {
  return z.string().max(MOST_TYPED, say(problems, locale, 'tooLong', { most: MOST_TYPED })).transform((text) => text.trim() || null)
}

/** What was typed, read by one of lib/units' parsers, or the sentence at the box when it cannot be. '' becomes null. */
function parsedBox(reader: Reader, parse: (text: string) => number, problem: (value: number | null, typed: string) => string | null) {
  return typedBox(reader).transform((text, context): number | null => {
    if (text === null) return null
    const value = valueOf(text, parse)
    const message = problem(value, text)
    if (message === null) return value
    context.addIssue({ code: 'custom', message })
    return z.NEVER
  })
}

/** The parsers say no by throwing: null is what cannot be read. */
function valueOf(text: string, parse: (text: string) => number): number | null {
  try {
    return parse(text)
  } catch {
    return null
  }
}

/**
 * A length box: '' becomes null, '5/16' becomes millimetres, nonsense and absurd sizes become a sentence at the field.
 *
 * @param mostMm the largest size taken, so that a slipped decimal point is caught where it was typed
 */
export function lengthField(reader: Reader, mostMm: number, tooMuch: 'absurd' | 'tooMuchSet' = 'absurd') {
  return parsedBox(reader, (text) => parseLength(text, reader.units), (value, typed) => {
    if (value === null) return say(problems, reader.locale, 'notALength', { typed })
    return value > mostMm ? say(problems, reader.locale, tooMuch, { typed, most: formatForReader(mostMm, reader.units) }) : null
  })
}

/** A box for a length along a weld: where something is, or how far a pass ran. A hair past the end is the end. */
export function alongWeld(reader: Reader, lengthMm: number) {
  return parsedBox(reader, (text) => parseLength(text, reader.units), (value, typed) => {
    if (value === null) return say(problems, reader.locale, 'notALength', { typed })
    return isPastEnd(value, lengthMm) ? say(problems, reader.locale, 'beyondWeld', { typed, length: formatForReader(lengthMm, reader.units) }) : null
  }).transform((value) => (value === null ? null : Math.min(value, lengthMm)))
}

/** Whether a place lies past the end of a weld by more than its shown length was rounded. */
export const isPastEnd = (atMm: number, lengthMm: number): boolean => atMm > lengthMm + END_SLACK_MM

/** How a machine's setting is read and shown: its parser, an example of it, and the most taken, in the parser's unit and in words. */
export type Setting = { readonly parse: (text: string) => number; readonly example: string; readonly most: number; readonly mostText: string }

/** A box for a setting; '' becomes null. */
export function settingField(reader: Reader, { parse, example, most, mostText }: Setting, tooMuch: 'absurd' | 'tooMuchSet' = 'tooMuchSet') {
  return parsedBox(reader, parse, (value, typed) => {
    if (value === null) return say(problems, reader.locale, 'notANumber', { typed, example })
    return value > most ? say(problems, reader.locale, tooMuch, { typed, most: mostText }) : null
  })
}

/** Characters that no screen shows and some databases and file formats refuse; tab and line ends stay. */
const UNSEEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g

/** Free text without unseen characters and outer spaces. */
export const tidyText = (text: string): string => text.replace(UNSEEN, '').trim()

/** Free text of a person, tidied; '' becomes null. */
export function textField(reader: Reader, most: number) {
  return z
    .string()
    .max(most, say(problems, reader.locale, 'tooLong', { most }))
    .transform((text) => tidyText(text) || null)
}

export const uuid = z.uuid()

import 'server-only'
import { refusals } from '@/lib/language/refusals'
import { say, type Locale } from '@/lib/language/say'

export type RefusalCode = 'SIGNED_OUT' | 'OTHER_PERSON' | 'NEW_PASSWORD' | 'NOT_FOUND' | 'CONFLICT' | 'INVALID' | 'SAFETY' | 'TOO_MANY' | 'TOO_LARGE' | 'UNAVAILABLE'

/**
 * An expected "no": something a person did that cannot be done. Anything else thrown is a bug.
 * Forbidden and missing are both NOT_FOUND, so that an id tells a stranger nothing.
 */
export class Refusal extends Error {
  constructor(
    readonly code: RefusalCode,
    message: string,
    readonly fields: Readonly<Record<string, string>> = {},
  ) {
    super(message)
    this.name = 'Refusal'
  }
}

/** The one answer to what is missing and to what is not theirs. Deep inside it is thrown in English; the door says it in the reader's language. */
export const notFound = (locale: Locale = 'en'): Refusal => new Refusal('NOT_FOUND', say(refusals, locale, 'notHere'))

/** Nothing but the account page for someone whose password another person chose. */
export const newPasswordFirst = (locale: Locale): Refusal => new Refusal('NEW_PASSWORD', say(refusals, locale, 'newPassword'))

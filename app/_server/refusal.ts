import 'server-only'

export type RefusalCode = 'SIGNED_OUT' | 'NOT_FOUND' | 'CONFLICT' | 'INVALID' | 'SAFETY' | 'TOO_MANY' | 'TOO_LARGE'

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

export const notFound = (): Refusal => new Refusal('NOT_FOUND', 'This is not here, or not yours to see.')

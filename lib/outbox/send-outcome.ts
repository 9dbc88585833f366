/** What became of one sending. */
export type SendOutcome =
  | { readonly kind: 'taken'; readonly number: number | null }
  /** The server read it and says no; trying again unchanged would say the same. */
  | { readonly kind: 'refused'; readonly code: string; readonly message: string; readonly fields: Readonly<Record<string, string>> }
  /** It is not the coupon: whoever is signed in now cannot send it. */
  | { readonly kind: 'held'; readonly why: Held }
  /** No answer of ours came back: no connection, a sign-in page of the network in between, or a server that is busy or restarting. */
  | { readonly kind: 'unreachable' }
  /** The server failed while it worked on this one. */
  | { readonly kind: 'failed' }

export type Held = 'signed-out' | 'other-person' | 'new-password'

const HELD: Readonly<Record<string, Held>> = { SIGNED_OUT: 'signed-out', OTHER_PERSON: 'other-person', NEW_PASSWORD: 'new-password' }

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null

const texts = (value: unknown): Record<string, string> =>
  Object.fromEntries(Object.entries(isRecord(value) ? value : {}).filter((entry): entry is [string, string] => typeof entry[1] === 'string'))

/**
 * Reads the server's answer to one sending.
 *
 * @param body the answer read as JSON; undefined when it was none: then somebody else answered, or the server broke off
 */
export function readOutcome(status: number, body: unknown): SendOutcome {
  if (isRecord(body) && body['ok'] === true && status < 300) {
    const value = isRecord(body['value']) ? body['value'] : {}
    return { kind: 'taken', number: typeof value['number'] === 'number' ? value['number'] : null }
  }
  if (isRecord(body) && body['ok'] === false && typeof body['code'] === 'string' && status >= 400 && status < 500) {
    const { code, message } = body
    const why = HELD[code]
    return why ? { kind: 'held', why } : { kind: 'refused', code, message: typeof message === 'string' ? message : '', fields: texts(body['fields']) }
  }
  return status === 500 ? { kind: 'failed' } : { kind: 'unreachable' }
}

import 'server-only'
import { decode, encode } from 'next-auth/jwt'
import { env, servedOverHttps } from '../env'

/** Twelve hours: a day in the shop and an evening class. The session row has the last word. */
export const SESSION_SECONDS = 12 * 60 * 60

export type SessionToken = { readonly programId: string; readonly sessionId: string }

export const sessionCookieName = (): string => (servedOverHttps() ? '__Host-toeline.session' : 'toeline.session')

/** The cookie's attributes; `__Host-` demands Secure, Path=/ and no Domain. */
export const sessionCookieOptions = () =>
  ({ httpOnly: true, sameSite: 'lax', path: '/', secure: servedOverHttps() }) as const

export function sealSession(token: SessionToken): Promise<string> {
  return encode({ token: { ...token }, secret: env().NEXTAUTH_SECRET, maxAge: SESSION_SECONDS })
}

/** null when the cookie is absent, forged, expired or of another shape. */
export async function openSession(cookie: string | undefined): Promise<SessionToken | null> {
  if (!cookie) return null
  try {
    const token = await decode({ token: cookie, secret: env().NEXTAUTH_SECRET })
    if (typeof token?.['programId'] !== 'string' || typeof token['sessionId'] !== 'string') return null
    return { programId: token['programId'], sessionId: token['sessionId'] }
  } catch {
    return null
  }
}

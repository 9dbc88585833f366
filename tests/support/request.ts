// Stands in for the request that next/headers reads: tests put a session's cookie in the jar and call an action as the browser would.
import { openSession, sealSession, sessionCookieName, type SessionToken } from '@/app/_server/auth/cookie'
import { startSession } from '@/app/_server/auth/sessions'
import { BY_ITSELF } from '@/lib/outbox/by-itself'
import type { School } from './school'

const jar = new Map<string, string>()
let address = ''
let byItself = false

/** What vi.mock('next/headers') gives: see tests/_server/access.test.ts. */
export const headersModule = {
  cookies: () =>
    Promise.resolve({
      get: (name: string) => (jar.has(name) ? { name, value: jar.get(name) } : undefined),
      set: (name: string, value: string) => void jar.set(name, value),
      delete: (cookie: string | { name: string }) => void jar.delete(typeof cookie === 'string' ? cookie : cookie.name),
    }),
  headers: () => Promise.resolve(new Headers({ 'user-agent': 'vitest', ...(address && { 'x-forwarded-for': address }), ...(byItself && { [BY_ITSELF]: '1' }) })),
}

/** From here on requests come from this person, in a new session; null is nobody. */
export async function requestFrom(person: { school: School; who: keyof School['people'] } | null): Promise<SessionToken | null> {
  jar.clear()
  if (!person) return null
  const token = await startSession(person.school.programId, person.school.people[person.who], null)
  jar.set(sessionCookieName(), await sealSession(token))
  return token
}

/** From here on the same browser, with nobody signed in; a shared tablet stays one. */
export const signedOutHere = (): void => void jar.delete(sessionCookieName())

/** From here on requests bring this session cookie. */
export function requestWith(cookie: string): void {
  jar.clear()
  jar.set(sessionCookieName(), cookie)
}

/** From here on requests come from this address; '' is none that the server in front tells. */
export function requestFromAddress(from: string): void {
  address = from
}

/** From here on requests are a device's own, with nobody there; or somebody's again. */
export const requestByItself = (is: boolean): void => void (byItself = is)

/** The session in the jar, as the last action left it. */
export const sessionInJar = (): Promise<SessionToken | null> => openSession(jar.get(sessionCookieName()))

import 'server-only'
import { cookies } from 'next/headers'
import { cache } from 'react'
import type { Locale } from '@/lib/language/say'
import { db } from '../db'
import { openSession, sessionCookieName } from './cookie'
import { sessionPerson } from './sessions'

declare const minted: unique symbol

export type Role = 'student' | 'instructor' | 'coordinator'

/** Who is asking. Minted only in this file, from rows read at this request; the first argument of every data function. */
export type Viewer = {
  readonly programId: string
  readonly personId: string
  readonly roles: readonly Role[]
  readonly sessionId: string | null
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly name: string
  /** Signed in with a password someone else chose: nothing but the account page until it is replaced. */
  readonly mustChangePassword: boolean
  readonly [minted]: true
}

/** The only place a Viewer comes from. */
const mint = (fields: Omit<Viewer, typeof minted>): Viewer => fields as Viewer

export const hasRole = (viewer: Viewer, role: Role): boolean => viewer.roles.includes(role)

/** The viewer a person would be now, or null when the person is unknown or disabled. For sessions, and for tests. */
export async function viewerForPerson(programId: string, personId: string, sessionId: string | null = null): Promise<Viewer | null> {
  const person = await db().person.findUnique({
    where: { programId_id: { programId, id: personId } },
    select: {
      givenName: true, familyName: true, locale: true, units: true, disabledAt: true, mustChangePassword: true,
      memberships: { select: { role: true } },
    },
  })
  if (!person || person.disabledAt || person.memberships.length === 0) return null
  return mint({
    programId,
    personId,
    sessionId,
    roles: person.memberships.map((membership) => membership.role),
    locale: person.locale === 'es' ? 'es' : 'en',
    units: person.units === 'si' ? 'mm' : 'in',
    name: `${person.givenName} ${person.familyName}`,
    mustChangePassword: person.mustChangePassword,
  })
}

/** The viewer behind a session cookie, or null. Role, membership and session are read from the database each time. */
export async function viewerForCookie(cookie: string | undefined): Promise<Viewer | null> {
  const token = await openSession(cookie)
  if (!token) return null
  const personId = await sessionPerson(token)
  return personId ? viewerForPerson(token.programId, personId, token.sessionId) : null
}

/** Who is asking in this request; read once however many parts of the page ask. */
export const currentViewer = cache(async (): Promise<Viewer | null> => {
  const jar = await cookies()
  return viewerForCookie(jar.get(sessionCookieName())?.value)
})

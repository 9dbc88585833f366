import 'server-only'
import { cookies, headers } from 'next/headers'
import { cache } from 'react'
import type { Locale } from '@/lib/language/say'
import { BY_ITSELF } from '@/lib/outbox/by-itself'
import { fullName } from '@/lib/reports/full-name'
import { db } from '../db'
import { openSession, sessionCookieName } from './cookie'
import { liveSession, sessionAtRest } from './sessions'

declare const minted: unique symbol

export type Role = 'student' | 'instructor' | 'coordinator'

/** Who is asking. Minted only in this file, from rows read at this request; the first argument of every data function. */
export type Viewer = {
  readonly programId: string
  readonly personId: string
  readonly roles: readonly Role[]
  readonly sessionId: string | null
  /** The shared tablet the session lives on: a student's rights only, and nothing of the account. null on a device of one's own. */
  readonly tabletId: string | null
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
export async function viewerForPerson(
  programId: string, personId: string, sessionId: string | null = null, tabletId: string | null = null,
): Promise<Viewer | null> {
  const person = await db().person.findUnique({
    where: { programId_id: { programId, id: personId } },
    select: {
      givenName: true, familyName: true, locale: true, units: true, disabledAt: true, mustChangePassword: true,
      memberships: { select: { role: true } },
    },
  })
  const roles = person?.memberships.map(({ role }) => role).filter((role) => tabletId === null || role === 'student') ?? []
  if (!person || person.disabledAt || roles.length === 0) return null
  return mint({
    programId,
    personId,
    sessionId,
    tabletId,
    roles,
    locale: person.locale === 'es' ? 'es' : 'en',
    units: person.units === 'si' ? 'mm' : 'in',
    name: fullName(person),
    // A PIN is the student's own whoever chose the password, and on a tablet the password cannot be replaced.
    mustChangePassword: tabletId === null && person.mustChangePassword,
  })
}

/**
 * The viewer behind a session cookie, or null. Role, membership and session are read from the database each time.
 *
 * @param byItself whether a device asks without anybody being there
 */
export async function viewerForCookie(cookie: string | undefined, byItself = false): Promise<Viewer | null> {
  const token = await openSession(cookie)
  if (!token) return null
  const session = await (byItself ? sessionAtRest(token) : liveSession(token))
  return session && viewerForPerson(token.programId, session.personId, token.sessionId, session.tabletId)
}

/** Who is asking in this request; read once however many parts of the page ask. */
export const currentViewer = cache(async (): Promise<Viewer | null> => {
  const [jar, head] = await Promise.all([cookies(), headers()])
  return viewerForCookie(jar.get(sessionCookieName())?.value, head.has(BY_ITSELF))
})

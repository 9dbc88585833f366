import 'server-only'
import { cookies } from 'next/headers'
import { db } from '../db'
import { openSession, sessionCookieName, type SessionToken } from './cookie'
import { sessionPerson, startSession } from './sessions'

/**
 * Signs in someone the school's identity provider vouches for. People are matched by (issuer, subject) and never by e-mail.
 * The first time, the person must already be signed in with a password in the same browser: that links the two.
 */
export async function signInWithIdentity(issuer: string, subject: string): Promise<SessionToken | null> {
  const linked = await db().person.findFirst({
    where: { oidcIssuer: issuer, oidcSubject: subject, disabledAt: null },
    select: { programId: true, id: true },
  })
  if (linked) return startSession(linked.programId, linked.id, null)

  const current = await openSession((await cookies()).get(sessionCookieName())?.value)
  const personId = current ? await sessionPerson(current) : null
  if (!current || !personId) return null
  await db().$transaction([
    db().person.update({
      where: { programId_id: { programId: current.programId, id: personId } },
      data: { oidcIssuer: issuer, oidcSubject: subject },
    }),
    db().auditEvent.create({
      data: { programId: current.programId, actorId: personId, action: 'identity.link', subjectType: 'person', subjectId: personId },
    }),
  ])
  return startSession(current.programId, personId, null)
}

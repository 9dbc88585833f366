import 'server-only'
import { cookies } from 'next/headers'
import { db } from '../db'
import { sessionCookieName, type SessionToken } from './cookie'
import { startSession } from './sessions'
import { viewerForCookie, type Viewer } from './viewer'

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

  const viewer = await viewerForCookie((await cookies()).get(sessionCookieName())?.value)
  if (!viewer || viewer.tabletId !== null || viewer.mustChangePassword || !(await link(viewer, issuer, subject))) return null
  return startSession(viewer.programId, viewer.personId, null)
}

/**
 * Links an identity to a person who has none. One that is linked stays: on a shared tablet the open session may be someone else's.
 *
 * @returns whether it was linked
 */
async function link({ programId, personId }: Viewer, issuer: string, subject: string): Promise<boolean> {
  return db().$transaction(async (tx) => {
    const { count } = await tx.person.updateMany({
      where: { programId, id: personId, oidcSubject: null }, data: { oidcIssuer: issuer, oidcSubject: subject },
    })
    if (count === 0) return false
    await tx.auditEvent.create({ data: { programId, actorId: personId, action: 'identity.link', subjectType: 'person', subjectId: personId } })
    return true
  })
}

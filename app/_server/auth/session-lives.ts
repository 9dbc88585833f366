import 'server-only'
import { db } from '../db'
import type { SessionToken } from './cookie'
import { IDLE_SECONDS } from './sessions'

/**
 * Whether a session on a device of one's own is live, asked without counting as use of it: for a stream that stays open, which must not
 * keep a forgotten browser signed in.
 */
export async function sessionLives({ programId, sessionId }: SessionToken): Promise<boolean> {
  const row = await db().signInSession.findFirst({
    where: { programId, id: sessionId, tabletId: null, endedAt: null, expiresAt: { gt: new Date() }, lastSeenAt: { gt: new Date(Date.now() - IDLE_SECONDS * 1000) } },
    select: { id: true },
  })
  return row !== null
}

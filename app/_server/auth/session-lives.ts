import 'server-only'
import { db } from '../db'
import type { SessionToken } from './cookie'
import { liveNow } from './sessions'

/**
 * Whether a session on a device of one's own is live, asked without counting as use of it: for a stream that stays open, which must not
 * keep a forgotten browser signed in.
 */
export async function sessionLives({ programId, sessionId }: SessionToken): Promise<boolean> {
  const row = await db().signInSession.findFirst({
    where: { programId, id: sessionId, tabletId: null, ...liveNow() },
    select: { id: true },
  })
  return row !== null
}

import 'server-only'
import { db } from '../db'
import { SESSION_SECONDS, type SessionToken } from './cookie'

/** A session not used for this long is over, whatever its cookie says. */
export const IDLE_SECONDS = 2 * 60 * 60

const ago = (seconds: number): Date => new Date(Date.now() - seconds * 1000)

/** Starts a session; a new id at every sign-in. */
export async function startSession(programId: string, personId: string, device: string | null): Promise<SessionToken> {
  const row = await db().signInSession.create({
    data: { programId, personId, device, expiresAt: new Date(Date.now() + SESSION_SECONDS * 1000) },
    select: { id: true },
  })
  return { programId, sessionId: row.id }
}

/** The person of a live session, or null when it is ended, expired, idle too long or unknown. */
export async function sessionPerson(token: SessionToken): Promise<string | null> {
  const key = { programId_id: { programId: token.programId, id: token.sessionId } }
  const row = await db().signInSession.findUnique({ where: key })
  if (!row || row.endedAt || row.expiresAt <= new Date() || row.lastSeenAt <= ago(IDLE_SECONDS)) return null
  // Once a minute is enough to measure idleness, and spares a write on every request.
  if (row.lastSeenAt <= ago(60)) await db().signInSession.update({ where: key, data: { lastSeenAt: new Date() } })
  return row.personId
}

export async function endSession(token: SessionToken): Promise<void> {
  await db().signInSession.updateMany({
    where: { programId: token.programId, id: token.sessionId, endedAt: null },
    data: { endedAt: new Date() },
  })
}

import 'server-only'
import type { Prisma } from '@/prisma/generated/client'
import { db } from '../db'
import { SESSION_SECONDS, type SessionToken } from './cookie'

/** A session not used for this long is over, whatever its cookie says. */
const IDLE_SECONDS = 2 * 60 * 60
/** The same on a tablet that a class shares: the next student stands beside it. */
export const TABLET_IDLE_SECONDS = 5 * 60

/** How finely idleness is measured: often enough to be fair, seldom enough to spare a write on every request. */
const MEASURED_SECONDS = 60
const TABLET_MEASURED_SECONDS = 10

const ago = (seconds: number): Date => new Date(Date.now() - seconds * 1000)

/** Sessions that are live now: neither ended nor expired, and used lately enough for where they live. */
export const liveNow = (): Prisma.SignInSessionWhereInput => ({
  endedAt: null, expiresAt: { gt: new Date() },
  OR: [{ tabletId: null, lastSeenAt: { gt: ago(IDLE_SECONDS) } }, { lastSeenAt: { gt: ago(TABLET_IDLE_SECONDS) } }],
})

/** Starts a session; a new id at every sign-in. `tabletId` names the shared tablet it lives on. */
export async function startSession(programId: string, personId: string, device: string | null, tabletId: string | null = null): Promise<SessionToken> {
  const row = await db().signInSession.create({
    data: { programId, personId, device, tabletId, expiresAt: new Date(Date.now() + SESSION_SECONDS * 1000) },
    select: { id: true },
  })
  return { programId, sessionId: row.id }
}

export type LiveSession = { readonly personId: string; readonly tabletId: string | null }

/** A live session's person and shared tablet, or null when it is ended, expired, idle too long or unknown. Asking is use, and keeps it from going idle. */
export const liveSession = (token: SessionToken): Promise<LiveSession | null> => readSession(token, true)

/** The same for what a device asks by itself, which is no use: somebody's idle session does not live on because their queue tries to send. */
export const sessionAtRest = (token: SessionToken): Promise<LiveSession | null> => readSession(token, false)

async function readSession(token: SessionToken, isUse: boolean): Promise<LiveSession | null> {
  const key = { programId_id: { programId: token.programId, id: token.sessionId } }
  const row = await db().signInSession.findUnique({ where: key })
  if (!row || row.endedAt || row.expiresAt <= new Date()) return null
  const { personId, tabletId } = row
  if (row.lastSeenAt <= ago(tabletId === null ? IDLE_SECONDS : TABLET_IDLE_SECONDS)) return null
  if (tabletId !== null && !(await holdsOnTablet(row.programId, personId, tabletId))) return null
  const measured = tabletId === null ? MEASURED_SECONDS : TABLET_MEASURED_SECONDS
  if (isUse && row.lastSeenAt <= ago(measured)) await db().signInSession.update({ where: key, data: { lastSeenAt: new Date() } })
  return { personId, tabletId }
}

/** Whether the tablet is still open and its class still has the person: closing it or withdrawing ends their sessions at the next request. */
async function holdsOnTablet(programId: string, personId: string, tabletId: string): Promise<boolean> {
  const tablet = await db().sharedTablet.findFirst({
    where: {
      programId, id: tabletId, closedAt: null, expiresAt: { gt: new Date() },
      class: { archivedAt: null, enrolments: { some: { programId, personId, withdrawnAt: null } } },
    },
    select: { id: true },
  })
  return tablet !== null
}

export async function endSession(token: SessionToken): Promise<void> {
  await db().signInSession.updateMany({
    where: { programId: token.programId, id: token.sessionId, endedAt: null },
    data: { endedAt: new Date() },
  })
}

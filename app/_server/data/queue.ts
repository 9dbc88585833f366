import 'server-only'
import { createHash } from 'node:crypto'
import { sessionLives } from '../auth/session-lives'
import { viewerForPerson, type Viewer } from '../auth/viewer'
import { findTaughtClass } from './classes'
import { listWaiting, type WaitingCoupon } from './waiting-coupons'
import { listWaitingLooks, type WaitingLook } from './look-requests'

/** What waits for an instructor in a class: a coupon to inspect, or a student who asked them to come. */
export type QueueEntry = ({ readonly kind: 'coupon' } & WaitingCoupon) | ({ readonly kind: 'look'; readonly since: Date } & Omit<WaitingLook, 'askedAt'>)

/** Everything that waits for the viewer in a class they teach, longest waiting first; empty for anyone else. */
export async function listQueue(viewer: Viewer, classId: string): Promise<QueueEntry[]> {
  const [coupons, looks] = await Promise.all([listWaiting(viewer, classId), listWaitingLooks(viewer, classId)])
  const entries: QueueEntry[] = [
    ...coupons.map((coupon) => ({ kind: 'coupon' as const, ...coupon })),
    ...looks.map(({ askedAt, ...look }) => ({ kind: 'look' as const, since: askedAt, ...look })),
  ]
  return entries.sort((a, b) => a.since.getTime() - b.since.getTime())
}

/** A short print of a queue: two are alike exactly when the same things wait, taken by the same people. */
export function printOfQueue(entries: readonly QueueEntry[]): string {
  const told = entries.map((entry) => [entry.kind, entry.id, entry.since.getTime(), entry.kind === 'coupon' ? (entry.takenBy?.since.getTime() ?? null) : null])
  return createHash('sha256').update(JSON.stringify(told)).digest('base64url').slice(0, 22)
}

/** The print of what waits for the viewer in a class, or null when they do not teach it. */
export async function queueState(viewer: Viewer, classId: string): Promise<string | null> {
  return (await findTaughtClass(viewer, classId)) && printOfQueue(await listQueue(viewer, classId))
}

/**
 * The same, asked long after the request that brought the viewer: null also when their session, role or account is over. It does not
 * count as use of the session, so a page left open does not keep a forgotten browser signed in.
 */
export async function queueStateNow(viewer: Viewer, classId: string): Promise<string | null> {
  const { programId, personId, sessionId } = viewer
  if (sessionId === null || !(await sessionLives({ programId, sessionId }))) return null
  const now = await viewerForPerson(programId, personId, sessionId)
  return now && !now.mustChangePassword ? queueState(now, classId) : null
}

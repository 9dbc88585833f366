import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Prisma } from '@/prisma/generated/client'
import { newTabletSecret, tabletSecretHash } from '../auth/tablet'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { taughtClassScope } from './scope'

const DAY_MS = 24 * 3600 * 1000
/** A forgotten tablet closes by itself: after so many days, or with the term where that ends sooner. */
const OPEN_DAYS = 30

/** When a tablet opened now closes by itself. A class past its term gets a day. */
function closesAt(termEndsOn: Date, now: Date): Date {
  const termOver = termEndsOn.getTime() + 2 * DAY_MS // its last day is over everywhere on earth
  const least = now.getTime() + DAY_MS
  return new Date(Math.max(least, Math.min(termOver, now.getTime() + OPEN_DAYS * DAY_MS)))
}

export type OpenedTablet = { readonly programId: string; readonly id: string; readonly secret: string; readonly expiresAt: Date }

/** Opens a tablet for a class the viewer teaches. Its secret is returned once, for the device's cookie, and stored only as its hash. */
export async function openTablet(viewer: Viewer, input: { classId: string; name: string }): Promise<OpenedTablet> {
  const { programId, personId } = viewer
  const taught = await db().class.findFirst({
    where: { AND: [{ id: input.classId, archivedAt: null }, taughtClassScope(viewer)] }, select: { id: true, term: { select: { endsOn: true } } },
  })
  if (!taught) throw notFound()
  const secret = newTabletSecret()
  const expiresAt = closesAt(taught.term.endsOn, new Date())
  return db().$transaction(async (tx) => {
    const { id } = await tx.sharedTablet.create({
      data: { programId, classId: taught.id, openedById: personId, name: input.name, secretHash: tabletSecretHash(secret), expiresAt }, select: { id: true },
    })
    await recordAudit(tx, viewer, { action: 'tablet.open', subject: { type: 'tablet', id }, after: { classId: taught.id, name: input.name } })
    return { programId, id, secret, expiresAt }
  })
}

export type TabletRecord = {
  readonly id: string
  readonly name: string
  readonly openedBy: string
  readonly openedAt: Date
  readonly expiresAt: Date
  /** When someone last used it; null when nobody has signed in on it. */
  readonly lastUsedAt: Date | null
}

/** The tablets open for a class the viewer teaches, the newest first. */
export async function listTablets(viewer: Viewer, classId: string): Promise<TabletRecord[]> {
  const rows = await db().sharedTablet.findMany({
    where: { programId: viewer.programId, classId, closedAt: null, expiresAt: { gt: new Date() }, class: taughtClassScope(viewer) },
    orderBy: { createdAt: 'desc' },
    take: 50,
    select: {
      id: true, name: true, createdAt: true, expiresAt: true, openedBy: { select: { givenName: true, familyName: true } },
      sessions: { orderBy: { lastSeenAt: 'desc' }, take: 1, select: { lastSeenAt: true } },
    },
  })
  return rows.map((row) => ({
    id: row.id, name: row.name, openedBy: fullName(row.openedBy), openedAt: row.createdAt,
    expiresAt: row.expiresAt, lastUsedAt: row.sessions[0]?.lastSeenAt ?? null,
  }))
}

/** Closes the open tablets among these and ends every session on them, inside the transaction of the change it belongs to. The caller has checked the right to. */
export async function closeTablets(tx: Transaction, viewer: Viewer, where: Prisma.SharedTabletWhereInput): Promise<void> {
  const { programId } = viewer
  const open = await tx.sharedTablet.findMany({ where: { AND: [where, { programId, closedAt: null }] }, select: { id: true } })
  for (const { id } of open) {
    const { count } = await tx.sharedTablet.updateMany({ where: { programId, id, closedAt: null }, data: { closedAt: new Date() } })
    if (count === 0) continue
    await tx.signInSession.updateMany({ where: { programId, tabletId: id, endedAt: null }, data: { endedAt: new Date() } })
    await recordAudit(tx, viewer, { action: 'tablet.close', subject: { type: 'tablet', id } })
  }
}

/** Closes a tablet of a class the viewer teaches and ends every session on it. Closing it again changes nothing. */
export async function closeTablet(viewer: Viewer, input: { tabletId: string }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const tablet = await tx.sharedTablet.findFirst({ where: { programId, id: input.tabletId, class: taughtClassScope(viewer) }, select: { id: true } })
    if (!tablet) throw notFound()
    await closeTablets(tx, viewer, { id: tablet.id })
  })
}

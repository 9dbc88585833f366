import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { couponScope } from './scope'

export type CommentRecord = { readonly id: string; readonly body: string; readonly at: Date; readonly author: string; readonly own: boolean }

/** Writes a comment inside the transaction of the change it belongs to. The caller has checked the coupon's scope. */
export async function writeComment(tx: Transaction, viewer: Viewer, couponId: string, body: string): Promise<void> {
  const comment = await tx.comment.create({ data: { programId: viewer.programId, couponId, authorId: viewer.personId, body }, select: { id: true } })
  await recordAudit(tx, viewer, { action: 'comment.add', subject: { type: 'coupon', id: couponId }, after: { commentId: comment.id } })
}

/** Adds a comment to a coupon the viewer may see. */
export async function addComment(viewer: Viewer, input: { couponId: string; body: string }): Promise<void> {
  await db().$transaction(async (tx) => {
    const coupon = await tx.coupon.findFirst({ where: { AND: [{ id: input.couponId }, couponScope(viewer)] }, select: { id: true } })
    if (!coupon) throw notFound()
    await writeComment(tx, viewer, coupon.id, input.body)
  })
}

/** Comments on a coupon, oldest first. Empty when the coupon is not the viewer's to see. */
export async function listComments(viewer: Viewer, couponId: string): Promise<CommentRecord[]> {
  const rows = await db().comment.findMany({
    where: { programId: viewer.programId, couponId, coupon: couponScope(viewer) },
    orderBy: { createdAt: 'asc' },
    select: { id: true, body: true, createdAt: true, authorId: true, author: { select: { givenName: true, familyName: true } } },
  })
  return rows.map((row) => ({
    id: row.id, body: row.body, at: row.createdAt,
    author: fullName(row.author), own: row.authorId === viewer.personId,
  }))
}

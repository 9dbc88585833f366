import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Verdict } from '@/lib/scoring/types'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { couponScope, secondLookScope, settledCouponScope } from './scope'

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

/** Comments on a coupon, oldest first. Empty when the coupon is not the viewer's to see, or may still be theirs to read a second time. */
export async function listComments(viewer: Viewer, couponId: string): Promise<CommentRecord[]> {
  const rows = await db().comment.findMany({
    where: { programId: viewer.programId, couponId, coupon: { AND: [couponScope(viewer), { NOT: secondLookScope(viewer) }] } },
    orderBy: { createdAt: 'asc' },
    select: { id: true, body: true, createdAt: true, authorId: true, author: { select: { givenName: true, familyName: true } } },
  })
  return rows.map((row) => ({
    id: row.id, body: row.body, at: row.createdAt,
    author: fullName(row.author), own: row.authorId === viewer.personId,
  }))
}

/** What someone else wrote to a student on one of their coupons. */
export type RemarkRecord = {
  readonly id: string
  readonly body: string
  readonly at: Date
  readonly author: string
  readonly coupon: { readonly id: string; readonly number: number; readonly exerciseTitle: string; readonly verdict: Verdict | null }
}

/**
 * What others wrote on a student's coupons, the newest first: `most` of them after the one named. Remarks on a coupon the viewer may still
 * have to look at are left out. Empty when the student is not the viewer's to see.
 */
export async function listRemarks(viewer: Viewer, studentId: string, page: { most: number; after: string | null }): Promise<RemarkRecord[]> {
  const { programId } = viewer
  const rows = await db().comment.findMany({
    where: { programId, NOT: { authorId: studentId }, coupon: { AND: [{ studentId }, couponScope(viewer), settledCouponScope(viewer)] } },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: page.most,
    ...(page.after !== null && { cursor: { programId_id: { programId, id: page.after } }, skip: 1 }),
    select: {
      id: true, body: true, createdAt: true, author: { select: { givenName: true, familyName: true } },
      coupon: { select: { id: true, number: true, verdict: true, exercise: { select: { title: true } } } },
    },
  })
  return rows.map(({ id, body, createdAt, author, coupon: { exercise, ...coupon } }) => ({
    id, body, at: createdAt, author: fullName(author), coupon: { ...coupon, exerciseTitle: exercise.title },
  }))
}

import 'server-only'
import { refusals } from '@/lib/language/refusals'
import { say } from '@/lib/language/say'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import type { StoredPhoto } from '../photos'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { couponScope } from './scope'

const MOST_PER_COUPON = 8
/** A day's worth of photographs; a queue gone wild stops here. */
const MOST_PER_DAY = 200

export type PhotoRecord = { readonly id: string; readonly widthPx: number; readonly heightPx: number; readonly at: Date }

/** Whether the viewer may add a photo to a coupon, asked before its bytes are read. */
export async function checkPhotoPlace(viewer: Viewer, couponId: string): Promise<void> {
  const coupon = await db().coupon.findFirst({
    where: { AND: [{ id: couponId }, couponScope(viewer)] },
    select: { id: true, _count: { select: { photos: true } } },
  })
  if (!coupon || (!viewer.roles.includes('instructor') && !viewer.roles.includes('student'))) throw notFound()
  if (coupon._count.photos >= MOST_PER_COUPON) throw new Refusal('TOO_MANY', say(refusals, viewer.locale, 'photosPerCoupon', { most: MOST_PER_COUPON }))
  const since = new Date(Date.now() - 24 * 3600 * 1000)
  const today = await db().photo.count({ where: { programId: viewer.programId, uploaderId: viewer.personId, createdAt: { gte: since } } })
  if (today >= MOST_PER_DAY) throw new Refusal('TOO_MANY', say(refusals, viewer.locale, 'photosPerDay', { most: MOST_PER_DAY }))
}

/** Records a kept photo. Sending the same id again changes nothing. */
export async function addPhoto(viewer: Viewer, input: { id: string; couponId: string; photo: StoredPhoto }): Promise<void> {
  await db().$transaction(async (tx) => {
    const coupon = await tx.coupon.findFirst({ where: { AND: [{ id: input.couponId }, couponScope(viewer)] }, select: { id: true } })
    if (!coupon) throw notFound()
    const standing = await tx.photo.findUnique({ where: { programId_id: { programId: viewer.programId, id: input.id } }, select: { couponId: true } })
    if (standing) {
      if (standing.couponId !== coupon.id) throw notFound()
      return
    }
    await tx.photo.create({ data: { programId: viewer.programId, id: input.id, couponId: coupon.id, uploaderId: viewer.personId, ...input.photo } })
    await recordAudit(tx, viewer, { action: 'photo.add', subject: { type: 'coupon', id: coupon.id }, after: { photoId: input.id, sha256: input.photo.sha256 } })
  })
}

/** The hash of a photo the viewer may see, or null. */
export async function findPhotoHash(viewer: Viewer, photoId: string): Promise<string | null> {
  const row = await db().photo.findFirst({
    where: { programId: viewer.programId, id: photoId, coupon: couponScope(viewer) },
    select: { sha256: true },
  })
  return row?.sha256 ?? null
}

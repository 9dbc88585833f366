import 'server-only'
import { refusals } from '@/lib/language/refusals'
import { say } from '@/lib/language/say'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import type { StoredPhoto } from '../photos'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { couponScope } from './scope'
import { elsewhereScope } from './second-offers'

const MOST_PER_COUPON = 8
/** A day's worth of photographs; a queue gone wild stops here. */
const MOST_PER_DAY = 200

export type PhotoRecord = { readonly id: string; readonly widthPx: number; readonly heightPx: number; readonly at: Date }

const fullCoupon = (viewer: Viewer): Refusal => new Refusal('TOO_MANY', say(refusals, viewer.locale, 'photosPerCoupon', { most: MOST_PER_COUPON }))

/**
 * Whether the viewer may add a photo to a coupon, asked before its bytes are read.
 *
 * @param photoId the photo's own id: one that is there already takes no second place
 * @throws Refusal NOT_FOUND, or TOO_MANY when the coupon or the day is full
 */
export async function checkPhotoPlace(viewer: Viewer, couponId: string, photoId?: string): Promise<void> {
  const others = photoId === undefined ? {} : { NOT: { id: photoId } }
  const coupon = await db().coupon.findFirst({
    where: { AND: [{ id: couponId }, couponScope(viewer)] },
    select: { id: true, _count: { select: { photos: { where: others } } } },
  })
  if (!coupon || (!viewer.roles.includes('instructor') && !viewer.roles.includes('student'))) throw notFound()
  if (coupon._count.photos >= MOST_PER_COUPON) throw fullCoupon(viewer)
  const since = new Date(Date.now() - 24 * 3600 * 1000)
  const today = await db().photo.count({ where: { programId: viewer.programId, uploaderId: viewer.personId, createdAt: { gte: since }, ...others } })
  if (today >= MOST_PER_DAY) throw new Refusal('TOO_MANY', say(refusals, viewer.locale, 'photosPerDay', { most: MOST_PER_DAY }))
}

/** Records a kept photo. Sending the same id again changes nothing. */
export async function addPhoto(viewer: Viewer, input: { id: string; couponId: string; photo: StoredPhoto }): Promise<void> {
  const { programId } = viewer
  try {
    await db().$transaction(async (tx) => {
      const coupon = await tx.coupon.findFirst({ where: { AND: [{ id: input.couponId }, couponScope(viewer)] }, select: { id: true } })
      if (!coupon) throw notFound()
      // Photos of one coupon come one after the other, so that the last place is given once.
      await tx.$queryRaw`SELECT 1 FROM "Coupon" WHERE "programId" = ${programId}::uuid AND id = ${coupon.id}::uuid FOR UPDATE`
      const standing = await tx.photo.findUnique({ where: { programId_id: { programId, id: input.id } }, select: { couponId: true } })
      if (standing) {
        if (standing.couponId !== coupon.id) throw notFound()
        return
      }
      if ((await tx.photo.count({ where: { programId, couponId: coupon.id } })) >= MOST_PER_COUPON) throw fullCoupon(viewer)
      await tx.photo.create({ data: { programId, id: input.id, couponId: coupon.id, uploaderId: viewer.personId, ...input.photo } })
      await recordAudit(tx, viewer, { action: 'photo.add', subject: { type: 'coupon', id: coupon.id }, after: { photoId: input.id, sha256: input.photo.sha256 } })
    })
  } catch (error) {
    // The id was given to a photo of another coupon in the same instant: nothing of it is told.
    if (isTaken(error)) throw notFound()
    throw error
  }
}

/** The hash of a photo the viewer may see, or null. */
export async function findPhotoHash(viewer: Viewer, photoId: string): Promise<string | null> {
  const row = await db().photo.findFirst({
    where: { programId: viewer.programId, id: photoId, coupon: { OR: [couponScope(viewer), await elsewhereScope(viewer)] } },
    select: { sha256: true },
  })
  return row?.sha256 ?? null
}

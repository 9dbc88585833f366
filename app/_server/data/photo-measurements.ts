import 'server-only'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say } from '@/lib/language/say'
import type { PhotoMeasurement } from '@/lib/measure/photo-measurement'
import { fullName } from '@/lib/reports/full-name'
import { readStoredMeasurement } from '@/lib/schemas/photo-measurement'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { couponScope, gradableCouponScope, inspectionScope, secondLookScope } from './scope'
import { elsewhereScope } from './second-offers'

export type MeasurementRecord = {
  readonly photoId: string
  readonly person: { readonly id: string; readonly name: string }
  readonly own: boolean
  readonly measurement: PhotoMeasurement
}

/** Coupons on whose photos a viewer may measure: their own, and those they may inspect. */
async function measurableScope(viewer: Viewer): Promise<Prisma.CouponWhereInput> {
  const ways: Prisma.CouponWhereInput[] = [gradableCouponScope(viewer), await elsewhereScope(viewer)]
  if (hasRole(viewer, 'student')) ways.push({ programId: viewer.programId, studentId: viewer.personId })
  return { OR: ways }
}

/** A picture may be sized on its way here, not cut or turned: shapes this close are one. */
const SAME_SHAPE = 0.01

/**
 * Keeps what a person measured on a photo; their earlier marks on it give way. Sending the same again changes nothing.
 *
 * @throws Refusal NOT_FOUND; INVALID when the marks belong to a picture of another shape; CONFLICT when a student's marks were there
 * when the coupon was inspected
 */
export async function saveMeasurement(viewer: Viewer, input: { photoId: string; measurement: PhotoMeasurement }): Promise<void> {
  const { programId, personId } = viewer
  const document = input.measurement
  const measurable = await measurableScope(viewer)
  await db().$transaction(async (tx) => {
    const photo = await tx.photo.findFirst({
      where: { programId, id: input.photoId, coupon: measurable },
      select: { id: true, widthPx: true, heightPx: true, couponId: true, coupon: { select: { studentId: true, waitingSince: true } } },
    })
    if (!photo) throw notFound()
    const { widthPx, heightPx } = document.marks.picture
    if (Math.abs((widthPx / heightPx) * (photo.heightPx / photo.widthPx) - 1) > SAME_SHAPE) throw new Refusal('INVALID', say(photoGauge, viewer.locale, 'otherPicture'))
    // Marks of one coupon are written one after the other.
    await tx.$queryRaw`SELECT 1 FROM "Coupon" WHERE "programId" = ${programId}::uuid AND id = ${photo.couponId}::uuid FOR UPDATE`
    const key = { programId_photoId_personId: { programId, photoId: photo.id, personId } }
    const row = await tx.photoMeasurement.findUnique({ where: key })
    const before = row && readStoredMeasurement(row.document)
    if (before && JSON.stringify(before.marks) === JSON.stringify(document.marks)) return
    if (before && photo.coupon.studentId === personId && photo.coupon.waitingSince === null) throw new Refusal('CONFLICT', say(photoGauge, viewer.locale, 'standing'))
    await tx.photoMeasurement.upsert({
      where: key, update: { document: document as unknown as Prisma.InputJsonObject },
      create: { programId, photoId: photo.id, personId, document: document as unknown as Prisma.InputJsonObject },
    })
    await recordAudit(tx, viewer, {
      action: 'photo.measure', subject: { type: 'coupon', id: photo.couponId },
      ...(before && { before: { photoId: photo.id, widthsMm: before.widths.map(({ widthMm }) => widthMm) } }),
      after: { photoId: photo.id, geometry: document.geometry, widthsMm: document.widths.map(({ widthMm }) => widthMm) },
    })
  })
}

/**
 * Measurements on the photos of a coupon, oldest first. While the coupon waits for an inspection each person sees their own alone: an
 * inspector looks without the student's marks, and the student without the inspector's. A second reader sees neither until their look is in.
 * Marks belong to a look: whoever may not see it does not see them.
 */
export async function listMeasurements(viewer: Viewer, couponId: string): Promise<MeasurementRecord[]> {
  const { programId, personId } = viewer
  const rows = await db().photoMeasurement.findMany({
    where: {
      programId, photo: { couponId, coupon: { OR: [couponScope(viewer), await elsewhereScope(viewer)] } },
      OR: [{ personId }, { photo: { coupon: { waitingSince: null, NOT: secondLookScope(viewer) } }, person: { inspections: { some: { AND: [{ couponId }, inspectionScope(viewer)] } } } }],
    },
    orderBy: [{ createdAt: 'asc' }, { personId: 'asc' }],
    include: { person: { select: { id: true, givenName: true, familyName: true } } },
  })
  return rows.map((row) => ({
    photoId: row.photoId, person: { id: row.person.id, name: fullName(row.person) },
    own: row.personId === personId, measurement: readStoredMeasurement(row.document),
  }))
}

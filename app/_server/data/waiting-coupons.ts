import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { elsewhereScope } from './second-offers'
import { waitingCouponScope } from './scope'

export type WaitingCoupon = {
  readonly id: string
  readonly booth: number | null
  readonly student: { readonly id: string; readonly name: string }
  readonly exerciseId: string
  readonly exerciseTitle: string
  readonly number: number
  /** Since it was sent, also where it waits for a second reader: the line says nothing of a first. */
  readonly since: Date
  readonly takenBy: TakenBy
}

/** Who has a waiting coupon open for grading now. */
export type TakenBy = { readonly name: string; readonly self: boolean; readonly since: Date } | null

type TakenRow = { readonly takenById: string | null; readonly takenAt: Date | null; readonly takenBy: { readonly givenName: string; readonly familyName: string } | null }

/** A grading form left open this long no longer holds its coupon. */
const TAKEN_MINUTES = 15

/** Who has the coupon of a row open, as the viewer is told. */
export function takenOf(viewer: Viewer, { takenBy, takenAt, takenById }: TakenRow): TakenBy {
  const stillTaken = new Date(Date.now() - TAKEN_MINUTES * 60 * 1000)
  return takenBy && takenAt && takenAt > stillTaken ? { name: fullName(takenBy), self: takenById === viewer.personId, since: takenAt } : null
}

/** Coupons of a taught class that wait for the viewer's look, longest waiting first. */
export async function listWaiting(viewer: Viewer, classId: string): Promise<WaitingCoupon[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ classId }, waitingCouponScope(viewer)] },
    orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    take: 200,
    select: {
      id: true, booth: true, number: true, exerciseId: true, receivedAt: true, takenById: true, takenAt: true,
      student: { select: { id: true, givenName: true, familyName: true } },
      takenBy: { select: { givenName: true, familyName: true } },
      exercise: { select: { title: true } },
    },
  })
  return rows.map((row) => ({
    id: row.id, booth: row.booth, number: row.number, since: row.receivedAt, exerciseId: row.exerciseId, exerciseTitle: row.exercise.title,
    student: { id: row.student.id, name: fullName(row.student) },
    takenBy: takenOf(viewer, row),
  }))
}

/**
 * Marks a coupon as being graded by the viewer, for others to see, unless someone else has it open; it locks nothing.
 *
 * @returns who has it now; null when it does not wait, or is not the viewer's to grade
 */
export async function takeCoupon(viewer: Viewer, couponId: string): Promise<TakenBy> {
  const where = { AND: [{ id: couponId }, { OR: [waitingCouponScope(viewer), await elsewhereScope(viewer)] }] }
  const now = new Date()
  const free = [{ takenById: null }, { takenById: viewer.personId }, { takenAt: { lte: new Date(now.getTime() - TAKEN_MINUTES * 60 * 1000) } }]
  await db().coupon.updateMany({ where: { AND: [where, { OR: free }] }, data: { takenById: viewer.personId, takenAt: now } })
  const row = await db().coupon.findFirst({ where, select: { takenById: true, takenAt: true, takenBy: { select: { givenName: true, familyName: true } } } })
  return row && takenOf(viewer, row)
}

/** Lets go of a coupon the viewer had open, so that others see it free at once. One they do not have open is left as it is. */
export async function releaseCoupon(viewer: Viewer, couponId: string): Promise<void> {
  const { programId, personId } = viewer
  await db().coupon.updateMany({ where: { programId, id: couponId, takenById: personId }, data: { takenById: null, takenAt: null } })
}

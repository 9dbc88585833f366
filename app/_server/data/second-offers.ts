import 'server-only'
import { isReadTwice } from '@/lib/scoring/second-read'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { secondLookScope, taughtClassScope } from './scope'

/** Instructors who can sign in. */
const ACTIVE = { disabledAt: null, memberships: { some: { role: 'instructor' } } } as const satisfies Prisma.PersonWhereInput

/**
 * Coupons of classes the viewer does not teach that wait for a second reader: those of a class with one instructor have nobody else. Everyone
 * who teaches in the program may read them.
 */
export async function elsewhereScope(viewer: Viewer): Promise<Prisma.CouponWhereInput> {
  const { programId } = viewer
  const shared = await db().classInstructor.groupBy({
    by: ['classId'], where: { programId, person: ACTIVE }, having: { personId: { _count: { gt: 1 } } },
  })
  return { AND: [secondLookScope(viewer), { classId: { notIn: shared.map(({ classId }) => classId) }, class: { NOT: taughtClassScope(viewer) } }] }
}

/** A coupon just graded for the first time. */
export type FirstLook = { readonly programId: string; readonly couponId: string; readonly classId: string; readonly studentId: string; readonly inspectorId: string }

/**
 * Whether a coupon graded just now is to be read by a second person: when its id says so and there is somebody. That is another instructor of
 * its class; where it has one alone, any other instructor of the program; never the student.
 */
export async function wantsSecondReader(tx: Transaction, { programId, couponId, classId, studentId, inspectorId }: FirstLook): Promise<boolean> {
  const { secondReadShare } = await tx.program.findUniqueOrThrow({ where: { id: programId }, select: { secondReadShare: true } })
  if (!isReadTwice(couponId, secondReadShare)) return false
  const teachers = await tx.classInstructor.findMany({ where: { programId, classId, person: ACTIVE }, select: { personId: true } })
  const isOther = ({ personId }: { readonly personId: string }): boolean => personId !== inspectorId && personId !== studentId
  if (teachers.some(isOther)) return true
  if (teachers.length > 1) return false
  return (await tx.person.findFirst({ where: { programId, id: { notIn: [inspectorId, studentId] }, ...ACTIVE }, select: { id: true } })) !== null
}

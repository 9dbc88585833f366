import type { Viewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { localDate } from '@/lib/reports/calendar'
import type { School } from '../../support/school'

export type Person =
  | 'student' | 'classmate' | 'otherStudent' | 'instructor' | 'otherInstructor' | 'coordinator'
  | 'foreign student' | 'foreign instructor' | 'foreign coordinator'

/** Two schools; `couponId` is a coupon of `student` in the class of `instructor`, `foreignCouponId` one of the other school. */
export type Fixture = {
  readonly school: School
  readonly foreign: School
  readonly viewers: Readonly<Record<Person, Viewer>>
  readonly couponId: string
  readonly foreignCouponId: string
}

/** `seenBy`: who gets something; everyone else gets nothing, an empty list or NOT_FOUND. `fresh`: the call changes what the next needs. */
export type DataRow = {
  readonly seenBy: readonly Person[]
  readonly fresh?: boolean
  readonly call: (viewer: Viewer, fixture: Fixture) => Promise<unknown>
}

export const STAFF_OF_CLASS = ['instructor', 'coordinator'] as const satisfies readonly Person[]
export const SEES_COUPON = ['student', ...STAFF_OF_CLASS] as const satisfies readonly Person[]
export const EVERYONE_HERE = ['student', 'classmate', 'otherStudent', 'instructor', 'otherInstructor', 'coordinator'] as const satisfies readonly Person[]
export const EVERYONE = [...EVERYONE_HERE, 'foreign student', 'foreign instructor', 'foreign coordinator'] as const satisfies readonly Person[]

/** The student's own request for a look, the only one that waits in the class. */
export async function waitingLook({ programId, classId, people: { student: studentId } }: School): Promise<string> {
  await db().lookRequest.updateMany({ where: { programId, classId, answeredAt: null }, data: { answeredAt: new Date() } })
  return (await db().lookRequest.create({ data: { programId, classId, studentId } })).id
}

/** A message of today's to the class, still standing. */
export async function standingNote({ programId, classId, people: { instructor: authorId } }: School): Promise<string> {
  const onDate = new Date(localDate(new Date(), 'America/Chicago'))
  return (await db().classNote.create({ data: { programId, classId, authorId, kind: 'message', onDate, body: 'Bring gloves.' } })).id
}

/** A note of the instructor's on the student, still standing. */
export async function staffNote({ programId, people: { student: studentId, instructor: authorId } }: School): Promise<string> {
  return (await db().staffNote.create({ data: { programId, studentId, authorId, body: 'Asks good questions.' } })).id
}

/** A tablet open for the class. */
export async function sharedTablet({ programId, classId, people: { instructor: openedById } }: School): Promise<string> {
  const expiresAt = new Date(Date.now() + 3600_000)
  return (await db().sharedTablet.create({ data: { programId, classId, openedById, name: 'Bench tablet', secretHash: 'a'.repeat(64), expiresAt } })).id
}

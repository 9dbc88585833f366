import 'server-only'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'

/*
 * Who may see what: the one definition of it. Every query puts one of these inside its `where`; nothing is fetched first and
 * checked after. A person with several roles sees the union of what each role sees. All of it stays inside the program.
 */

/** Matches no row: the scope of someone without any role that could see the thing. */
const nothing = { id: { in: [] } }

/** Classes: a student's own (withdrawn ones too: the record is theirs), those an instructor teaches, all for a coordinator. */
export function classScope(viewer: Viewer): Prisma.ClassWhereInput {
  const { programId, personId } = viewer
  if (hasRole(viewer, 'coordinator')) return { programId }
  const ways: Prisma.ClassWhereInput[] = []
  if (hasRole(viewer, 'instructor')) ways.push({ instructors: { some: { programId, personId } } })
  if (hasRole(viewer, 'student')) ways.push({ enrolments: { some: { programId, personId } } })
  return ways.length ? { programId, OR: ways } : { programId, ...nothing }
}

/** Classes a viewer teaches: where an instructor may grade, comment, reset passwords and record tests. */
export function taughtClassScope(viewer: Viewer): Prisma.ClassWhereInput {
  const { programId, personId } = viewer
  return hasRole(viewer, 'instructor') ? { programId, instructors: { some: { programId, personId } } } : { programId, ...nothing }
}

/** Classes whose list of exercises, roster and papers a viewer keeps: those an instructor teaches, all for a coordinator. Grading stays with `taughtClassScope`. */
export function staffClassScope(viewer: Viewer): Prisma.ClassWhereInput {
  const { programId } = viewer
  return hasRole(viewer, 'coordinator') ? { programId } : taughtClassScope(viewer)
}

/** Coupons: a student's own, those of classes an instructor teaches, all for a coordinator. */
export function couponScope(viewer: Viewer): Prisma.CouponWhereInput {
  const { programId, personId } = viewer
  if (hasRole(viewer, 'coordinator')) return { programId }
  const ways: Prisma.CouponWhereInput[] = []
  if (hasRole(viewer, 'instructor')) ways.push({ class: taughtClassScope(viewer) })
  if (hasRole(viewer, 'student')) ways.push({ studentId: personId })
  return ways.length ? { programId, OR: ways } : { programId, ...nothing }
}

/** Coupons a viewer may inspect as an instructor: their classes', and never their own work. */
export function gradableCouponScope(viewer: Viewer): Prisma.CouponWhereInput {
  return { programId: viewer.programId, class: taughtClassScope(viewer), NOT: { studentId: viewer.personId } }
}

/** Coupons that a person looked at as an instructor: the first look, or a correction of it. */
const lookedAt = ({ programId, personId }: Viewer): Prisma.CouponWhereInput => ({ inspections: { some: { programId, kind: 'instructor', inspectorId: personId } } })

/**
 * Coupons of others that wait for a second reader who may be the viewer: graded, but not by them. Nothing of the first look is for their
 * eyes yet, wherever else they may look. Matches nothing for someone who is no instructor.
 */
export function secondLookScope(viewer: Viewer): Prisma.CouponWhereInput {
  const { programId, personId } = viewer
  if (!hasRole(viewer, 'instructor')) return { programId, ...nothing }
  return { programId, secondWaitingSince: { not: null }, NOT: [{ studentId: personId }, lookedAt(viewer)] }
}

/** Coupons of the viewer's classes that wait for their look; whether it will be the first or a second one makes no difference to them. */
export function waitingCouponScope(viewer: Viewer): Prisma.CouponWhereInput {
  return { AND: [gradableCouponScope(viewer), { OR: [{ waitingSince: { not: null } }, secondLookScope(viewer)] }] }
}

/** Looks at a coupon: a second reading is for the staff of its class, and never for the student, whoever else they are. */
export function inspectionScope(viewer: Viewer): Prisma.InspectionWhereInput {
  const { programId, personId } = viewer
  const staff: Prisma.CouponWhereInput = { class: staffClassScope(viewer), NOT: { studentId: personId } }
  return { programId, OR: [{ kind: { in: ['self', 'instructor'] } }, { kind: 'second', coupon: staff }] }
}

/**
 * Coupons whose judgement a viewer may read without spoiling a look they might still give: their own; of others', those that wait neither
 * for a first look nor for a second one that may be the viewer's. Used together with couponScope.
 */
export function settledCouponScope(viewer: Viewer): Prisma.CouponWhereInput {
  return { OR: [{ studentId: viewer.personId }, { waitingSince: null, NOT: secondLookScope(viewer) }] }
}

/** Students: oneself, those enrolled in classes one teaches, all for a coordinator. */
export function studentScope(viewer: Viewer): Prisma.PersonWhereInput {
  const { programId, personId } = viewer
  const student: Prisma.PersonWhereInput = { programId, memberships: { some: { programId, role: 'student' } } }
  if (hasRole(viewer, 'coordinator')) return student
  const ways: Prisma.PersonWhereInput[] = []
  if (hasRole(viewer, 'instructor')) ways.push({ enrolments: { some: { programId, class: taughtClassScope(viewer) } } })
  if (hasRole(viewer, 'student')) ways.push({ id: personId })
  return ways.length ? { AND: [student, { OR: ways }] } : { ...student, ...nothing }
}

/** The program a viewer coordinates; matches nothing for anyone else. */
export function coordinatedScope(viewer: Viewer): Prisma.ProgramWhereInput {
  return hasRole(viewer, 'coordinator') ? { id: viewer.programId } : nothing
}

/** Exercises: those of classes the viewer can see. */
export function exerciseScope(viewer: Viewer): Prisma.ExerciseWhereInput {
  const { programId } = viewer
  if (hasRole(viewer, 'coordinator') || hasRole(viewer, 'instructor')) return { programId }
  return { programId, inClasses: { some: { programId, class: classScope(viewer) } } }
}

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

import 'server-only'
import type { RosterStudent } from '@/lib/interchange/roster'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { staffClassScope } from './scope'

/** `leftOut`: active students an import would refuse, because their account is disabled or belongs to staff as well. */
export type ClassRoster = { readonly className: string; readonly students: readonly RosterStudent[]; readonly leftOut: number }

/** The active students of a class as an import takes them back, by name. Staff of the class only; null for anyone else. */
export async function rosterOf(viewer: Viewer, classId: string): Promise<ClassRoster | null> {
  const { programId } = viewer
  const scope = staffClassScope(viewer)
  const found = await db().class.findFirst({ where: { AND: [{ id: classId }, scope] }, select: { name: true } })
  if (!found) return null
  const rows = await db().enrolment.findMany({
    where: { programId, classId, withdrawnAt: null, class: scope },
    orderBy: [{ person: { familyName: 'asc' } }, { person: { givenName: 'asc' } }, { personId: 'asc' }],
    select: { booth: true, person: { select: { signInName: true, givenName: true, familyName: true, disabledAt: true, memberships: { select: { role: true } } } } },
  })
  const taken = rows.filter(({ person }) => person.disabledAt === null && person.memberships.every(({ role }) => role === 'student'))
  return {
    className: found.name, leftOut: rows.length - taken.length,
    students: taken.map(({ booth, person: { signInName, givenName, familyName } }) => ({ signInName, givenName, familyName, booth })),
  }
}

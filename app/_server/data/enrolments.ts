import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { staffClassScope } from './scope'

export type RosterEntry = {
  readonly id: string
  readonly name: string
  readonly signInName: string
  readonly booth: number | null
  readonly withdrawnAt: Date | null
  /** Their account lets them in no more, wherever they are enrolled. */
  readonly disabled: boolean
  /** An instructor or coordinator as well, whose password only the coordinator resets. */
  readonly staff: boolean
  /** Or an account of the school's identity provider. */
  readonly hasPassword: boolean
  readonly hasPin: boolean
}

const accountSelect = {
  id: true, givenName: true, familyName: true, signInName: true, disabledAt: true, passwordHash: true, oidcSubject: true, pinHash: true, memberships: { select: { role: true } },
} as const

/** Everyone who is or was enrolled in a class, those withdrawn last. Staff of the class only; empty for anyone else. */
export async function listRoster(viewer: Viewer, classId: string): Promise<RosterEntry[]> {
  const rows = await db().enrolment.findMany({
    where: { programId: viewer.programId, classId, class: staffClassScope(viewer) },
    orderBy: [{ withdrawnAt: { sort: 'asc', nulls: 'first' } }, { person: { familyName: 'asc' } }, { person: { givenName: 'asc' } }, { personId: 'asc' }],
    select: { booth: true, withdrawnAt: true, person: { select: accountSelect } },
  })
  return rows.map(({ person, ...row }) => ({
    ...row, id: person.id, name: fullName(person), signInName: person.signInName, disabled: person.disabledAt !== null,
    staff: person.memberships.some(({ role }) => role !== 'student'), hasPassword: person.passwordHash !== null || person.oidcSubject !== null, hasPin: person.pinHash !== null,
  }))
}

type Place = { readonly classId: string; readonly studentId: string }

/** Takes a student out of a class; their record stays. Doing it twice changes nothing. @throws Refusal NOT_FOUND */
export const withdrawStudent = (viewer: Viewer, place: Place): Promise<void> => setWithdrawn(viewer, place, true)

/** Takes a withdrawn student back. Doing it twice changes nothing. @throws Refusal NOT_FOUND */
export const readmitStudent = (viewer: Viewer, place: Place): Promise<void> => setWithdrawn(viewer, place, false)

async function setWithdrawn(viewer: Viewer, { classId, studentId }: Place, withdrawn: boolean): Promise<void> {
  const where = { programId: viewer.programId, classId, personId: studentId, class: staffClassScope(viewer) }
  await db().$transaction(async (tx) => {
    const { count } = await tx.enrolment.updateMany({
      where: { ...where, withdrawnAt: withdrawn ? null : { not: null } }, data: { withdrawnAt: withdrawn ? new Date() : null },
    })
    if (count === 0) {
      if (await tx.enrolment.findFirst({ where, select: { personId: true } })) return
      throw notFound()
    }
    await recordAudit(tx, viewer, { action: withdrawn ? 'enrolment.withdraw' : 'enrolment.readmit', subject: { type: 'person', id: studentId }, after: { classId } })
  })
}

/** Moves an active student to another class whose roster the viewer may change; the record of the first stays. @throws Refusal NOT_FOUND, CONFLICT */
export async function moveStudent(viewer: Viewer, { classId, studentId, toClassId }: Place & { readonly toClassId: string }): Promise<void> {
  const { programId } = viewer
  if (classId === toClassId) throw new Refusal('INVALID', 'The student is in this class already.', { toClassId: 'Choose another class.' })
  await db().$transaction(async (tx) => {
    const target = await tx.class.findFirst({ where: { AND: [{ id: toClassId, archivedAt: null }, staffClassScope(viewer)] }, select: { id: true } })
    if (!target) throw notFound()
    const { count } = await tx.enrolment.updateMany({
      where: { programId, classId, personId: studentId, withdrawnAt: null, class: staffClassScope(viewer) }, data: { withdrawnAt: new Date() },
    })
    if (count === 0) throw notFound()
    // Booths are numbered class by class: the new class gives its own.
    await tx.enrolment.upsert({
      where: { programId_classId_personId: { programId, classId: target.id, personId: studentId } },
      create: { programId, classId: target.id, personId: studentId },
      update: { withdrawnAt: null, booth: null },
    })
    await recordAudit(tx, viewer, { action: 'enrolment.move', subject: { type: 'person', id: studentId }, before: { classId }, after: { classId: target.id } })
  })
}

import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { ChangedClass, NewClass } from '@/lib/schemas/class-form'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { copyInto } from './course'

/* Classes are made, renamed and archived by the coordinator. An archived class keeps its whole record; nothing new is logged in it. */

export type AdminClass = {
  readonly id: string
  readonly name: string
  readonly room: string | null
  readonly meets: string | null
  readonly term: string
  readonly instructors: readonly string[]
  readonly students: number
  readonly archived: boolean
}

/** Every class of the program, archived ones too, newest term first. Empty for anyone but a coordinator. */
export async function listAllClasses(viewer: Viewer): Promise<AdminClass[]> {
  if (!hasRole(viewer, 'coordinator')) return []
  const { programId } = viewer
  const rows = await db().class.findMany({
    where: { programId }, orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select: {
      id: true, name: true, room: true, meets: true, archivedAt: true, term: { select: { name: true } },
      instructors: { select: { person: { select: { givenName: true, familyName: true } } } },
      _count: { select: { enrolments: { where: { programId, withdrawnAt: null } } } },
    },
  })
  return rows.map(({ term, instructors, archivedAt, _count, ...row }) => ({
    ...row, term: term.name, archived: archivedAt !== null, students: _count.enrolments,
    instructors: instructors.map(({ person }) => fullName(person)),
  }))
}

/** Who could teach a class and can sign in, by name. Empty for anyone but a coordinator. */
export async function listInstructors(viewer: Viewer): Promise<{ id: string; name: string }[]> {
  if (!hasRole(viewer, 'coordinator')) return []
  const { programId } = viewer
  const rows = await db().person.findMany({
    where: { programId, disabledAt: null, memberships: { some: { programId, role: 'instructor' } } }, orderBy: [{ familyName: 'asc' }, { givenName: 'asc' }],
    select: { id: true, givenName: true, familyName: true },
  })
  return rows.map((person) => ({ id: person.id, name: fullName(person) }))
}

const sameName = (): Refusal => {
  const name = 'There is a class of this name in that term. Choose another name.'
  return new Refusal('INVALID', name, { name })
}

async function unlessNamed<T>(work: Promise<T>): Promise<T> {
  try {
    return await work
  } catch (error) {
    if (isTaken(error)) throw sameName()
    throw error
  }
}

/** Makes a class, with its instructor and another class's list of exercises where they are named. */
export async function makeClass(viewer: Viewer, { termId, instructorId, copyFrom, name, room, meets }: NewClass): Promise<{ classId: string; exercises: number }> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  return unlessNamed(db().$transaction(async (tx) => {
    if (!(await tx.term.findFirst({ where: { programId, id: termId }, select: { id: true } }))) throw notFound()
    if (instructorId !== null && !(await tx.membership.findFirst({ where: { programId, personId: instructorId, role: 'instructor' }, select: { personId: true } }))) throw notFound()
    if (copyFrom !== null && !(await tx.class.findFirst({ where: { programId, id: copyFrom }, select: { id: true } }))) throw notFound()
    const { id: classId } = await tx.class.create({ data: { programId, termId, name, room, meets }, select: { id: true } })
    if (instructorId !== null) await tx.classInstructor.create({ data: { programId, classId, personId: instructorId } })
    const exercises = copyFrom === null ? 0 : await copyInto(tx, programId, copyFrom, { classId, list: [] })
    await recordAudit(tx, viewer, { action: 'class.make', subject: { type: 'class', id: classId }, after: { name, room, meets, termId, instructorId, copyFrom, exercises } })
    return { classId, exercises }
  }))
}

/** Gives a class another name, room or time. */
export async function changeClass(viewer: Viewer, { classId, name, room, meets }: ChangedClass): Promise<void> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  await unlessNamed(db().$transaction(async (tx) => {
    const before = await tx.class.findFirst({ where: { programId, id: classId, archivedAt: null }, select: { name: true, room: true, meets: true } })
    if (!before) throw notFound()
    await tx.class.update({ where: { programId_id: { programId, id: classId } }, data: { name, room, meets } })
    await recordAudit(tx, viewer, { action: 'class.change', subject: { type: 'class', id: classId }, before, after: { name, room, meets } })
  }))
}

/** Archives a class or takes it back. Done twice it changes nothing. */
export async function setArchived(viewer: Viewer, { classId, archived }: { classId: string; archived: boolean }): Promise<void> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    if (!(await tx.class.findFirst({ where: { programId, id: classId }, select: { id: true } }))) throw notFound()
    const { count } = await tx.class.updateMany({
      where: { programId, id: classId, archivedAt: archived ? null : { not: null } }, data: { archivedAt: archived ? new Date() : null },
    })
    if (count > 0) await recordAudit(tx, viewer, { action: archived ? 'class.archive' : 'class.reopen', subject: { type: 'class', id: classId } })
  })
}

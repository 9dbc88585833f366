import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { coordinatedScope } from './scope'

export type StaffMember = { readonly id: string; readonly name: string }

/** The instructors of the program who can sign in, by name. For the coordinator; empty for anyone else. */
export async function listInstructors(viewer: Viewer): Promise<StaffMember[]> {
  const rows = await db().person.findMany({
    where: { program: coordinatedScope(viewer), disabledAt: null, memberships: { some: { role: 'instructor' } } },
    orderBy: [{ familyName: 'asc' }, { givenName: 'asc' }, { id: 'asc' }],
    select: { id: true, givenName: true, familyName: true },
  })
  return rows.map((person) => ({ id: person.id, name: fullName(person) }))
}

type Place = { readonly classId: string; readonly instructorId: string }

/** Gives a class one more instructor. Doing it twice changes nothing. @throws Refusal NOT_FOUND for anyone but the coordinator */
export async function addInstructor(viewer: Viewer, { classId, instructorId }: Place): Promise<void> {
  const { programId } = viewer
  const program = coordinatedScope(viewer)
  await db().$transaction(async (tx) => {
    const found = await tx.class.findFirst({ where: { programId, id: classId, archivedAt: null, term: { program } }, select: { id: true } })
    const person = await tx.person.findFirst({
      where: { programId, id: instructorId, program, disabledAt: null, memberships: { some: { role: 'instructor' } } }, select: { id: true },
    })
    if (!found || !person) throw notFound()
    const { count } = await tx.classInstructor.createMany({ data: [{ programId, classId: found.id, personId: person.id }], skipDuplicates: true })
    if (count > 0) await recordAudit(tx, viewer, { action: 'class.instructor.add', subject: { type: 'class', id: found.id }, after: { personId: person.id } })
  })
}

/**
 * Takes an instructor off a class: their next request finds it no more. The last one who can sign in stays, for a class nobody teaches has nobody
 * to grade it.
 *
 * @throws Refusal NOT_FOUND for anyone but the coordinator, CONFLICT for the last instructor
 */
export async function removeInstructor(viewer: Viewer, { classId, instructorId }: Place): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const found = await tx.class.findFirst({ where: { programId, id: classId, term: { program: coordinatedScope(viewer) } }, select: { id: true } })
    if (!found) throw notFound()
    // One removal at a time, so that two cannot each leave the other's instructor as the last.
    await tx.$queryRaw`select 1 as held from "Class" where "programId" = ${programId}::uuid and id = ${found.id}::uuid for update`
    const here = await tx.classInstructor.findMany({ where: { programId, classId: found.id }, select: { personId: true, person: { select: { disabledAt: true } } } })
    if (!here.some(({ personId }) => personId === instructorId)) throw notFound()
    // One whose account is disabled grades nothing either.
    if (!here.some(({ personId, person }) => personId !== instructorId && person.disabledAt === null)) throw new Refusal('CONFLICT', 'This is the only instructor of the class. Add another one first.')
    await tx.classInstructor.deleteMany({ where: { programId, classId: found.id, personId: instructorId } })
    await recordAudit(tx, viewer, { action: 'class.instructor.remove', subject: { type: 'class', id: found.id }, before: { personId: instructorId } })
  })
}

import 'server-only'
import type { InstructorForm } from '@/lib/schemas/instructor-form'
import { hashPassword } from '../auth/passwords'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { firstPassword, giveFirstPassword } from './first-password'
import { closeTablets } from './shared-tablets'

/* What a coordinator does to the accounts of the program. Nobody ends anything of their own: for that there is the account page. */

type Who = { readonly personId: string }

/** An account of the coordinator's program, not their own. @throws Refusal NOT_FOUND, CONFLICT for one's own */
async function someoneElse(tx: Transaction, viewer: Viewer, { personId }: Who) {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const person = await tx.person.findUnique({
    where: { programId_id: { programId: viewer.programId, id: personId } },
    select: { id: true, signInName: true, disabledAt: true, memberships: { select: { role: true } } },
  })
  if (!person) throw notFound()
  if (person.id === viewer.personId) throw new Refusal('CONFLICT', 'This is your own account. Change it on your account page, or ask another coordinator.')
  return person
}

/**
 * Makes an instructor, for a class where one is named. The first password is returned once, stored only as its hash, and replaced at the
 * first sign-in.
 *
 * @throws Refusal NOT_FOUND for anyone but a coordinator, INVALID when the sign-in name is taken or the class is not there any more
 */
export async function makeInstructor(viewer: Viewer, { givenName, familyName, signInName, classId }: InstructorForm): Promise<{ personId: string; password: string }> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  const password = firstPassword()
  const passwordHash = await hashPassword(password)
  try {
    return await db().$transaction(async (tx) => {
      const { units } = await tx.program.findUniqueOrThrow({ where: { id: programId }, select: { units: true } })
      const { id: personId } = await tx.person.create({
        data: { programId, signInName, givenName, familyName, passwordHash, mustChangePassword: true, units, memberships: { create: { role: 'instructor' } } },
        select: { id: true },
      })
      await recordAudit(tx, viewer, { action: 'person.make', subject: { type: 'person', id: personId }, after: { role: 'instructor', givenName, familyName, signInName } })
      if (classId !== null) await teach(tx, viewer, classId, personId)
      return { personId, password }
    })
  } catch (error) {
    throw nameTaken(error)
  }
}

/** The refusal for a sign-in name that somebody has, or the error itself when it is another one. */
function nameTaken(error: unknown): unknown {
  if (!isTaken(error)) return error
  const taken = 'This sign-in name is taken. Add a number or a middle initial.'
  return new Refusal('INVALID', taken, { signInName: taken })
}

type Names = { readonly givenName: string; readonly familyName: string; readonly signInName: string }

/** Changes the names of an account, one's own too; nobody is signed out by it. Saving them as they are changes nothing. @throws Refusal NOT_FOUND, INVALID when the sign-in name is taken */
export async function changeNames(viewer: Viewer, { personId, givenName, familyName, signInName }: Who & Names): Promise<void> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const key = { programId_id: { programId: viewer.programId, id: personId } }
  const after = { givenName, familyName, signInName }
  try {
    await db().$transaction(async (tx) => {
      const before = await tx.person.findUnique({ where: key, select: { givenName: true, familyName: true, signInName: true } })
      if (!before) throw notFound()
      if (before.givenName === givenName && before.familyName === familyName && before.signInName === signInName) return
      await tx.person.update({ where: key, data: after })
      await recordAudit(tx, viewer, { action: 'person.change', subject: { type: 'person', id: personId }, before, after })
    })
  } catch (error) {
    throw nameTaken(error)
  }
}

async function teach(tx: Transaction, viewer: Viewer, classId: string, personId: string): Promise<void> {
  const { programId } = viewer
  if (!(await tx.class.findFirst({ where: { programId, id: classId, archivedAt: null }, select: { id: true } }))) {
    const gone = 'This class is not open any more. Choose another one.'
    throw new Refusal('INVALID', gone, { classId: gone })
  }
  await tx.classInstructor.create({ data: { programId, classId, personId } })
  await recordAudit(tx, viewer, { action: 'class.instructor.add', subject: { type: 'class', id: classId }, after: { personId } })
}

/**
 * Disables an account, which ends its sessions at once and lets it sign in no more, or enables it again; its record stays either way. Shared
 * tablets the person opened close with it, and stay closed.
 * Doing it twice changes nothing.
 *
 * @throws Refusal NOT_FOUND, CONFLICT for one's own account and for the last coordinator who can sign in
 */
export async function setDisabled(viewer: Viewer, { personId, disabled }: Who & { readonly disabled: boolean }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const person = await someoneElse(tx, viewer, { personId })
    await oneAtATime(tx, programId)
    if (disabled && person.memberships.some(({ role }) => role === 'coordinator') && !(await otherCoordinator(tx, programId, personId))) {
      throw new Refusal('CONFLICT', 'This is the last coordinator who can sign in. Nobody could look after the program.')
    }
    const { count } = await tx.person.updateMany({
      where: { programId, id: personId, disabledAt: disabled ? null : { not: null } }, data: { disabledAt: disabled ? new Date() : null },
    })
    if (count === 0) return
    if (disabled) {
      await tx.signInSession.updateMany({ where: { programId, personId, endedAt: null }, data: { endedAt: new Date() } })
      // The device may be in the hands of whoever opened it, and they may know students' PINs.
      await closeTablets(tx, viewer, { openedById: personId })
    }
    await recordAudit(tx, viewer, { action: disabled ? 'person.disable' : 'person.enable', subject: { type: 'person', id: personId } })
  })
}

/** Changes to who coordinates a program wait for each other, so that two coordinators cannot each disable the other and leave none. */
async function oneAtATime(tx: Transaction, programId: string): Promise<void> {
  await tx.$queryRaw`select 1 as held from "Program" where id = ${programId}::uuid for no key update`
}

async function otherCoordinator(tx: Transaction, programId: string, personId: string): Promise<boolean> {
  const other = await tx.person.findFirst({
    where: { programId, id: { not: personId }, disabledAt: null, memberships: { some: { programId, role: 'coordinator' } } }, select: { id: true },
  })
  return other !== null
}

export type StaffRole = 'instructor' | 'coordinator'

/**
 * Gives an account one of the staff's roles, or takes it; it holds from the next request. Doing it twice changes nothing. A coordinator may
 * make themselves an instructor, and no more of their own.
 *
 * @throws Refusal NOT_FOUND; CONFLICT for one's own coordinator's role, for the last coordinator who can sign in, and for an instructor who
 *   still teaches an open class
 */
export async function setRole(viewer: Viewer, { personId, role, held }: Who & { readonly role: StaffRole; readonly held: boolean }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const own = personId === viewer.personId && role === 'instructor' && hasRole(viewer, 'coordinator')
    if (!own) await someoneElse(tx, viewer, { personId })
    await oneAtATime(tx, programId)
    if (!held && role === 'coordinator' && !(await otherCoordinator(tx, programId, personId))) {
      throw new Refusal('CONFLICT', 'This is the last coordinator who can sign in. Make another one first.')
    }
    if (!held && role === 'instructor') await refuseIfTeaching(tx, programId, personId)
    const { count } = held
      ? await tx.membership.createMany({ data: [{ programId, personId, role }], skipDuplicates: true })
      : await tx.membership.deleteMany({ where: { programId, personId, role } })
    if (count > 0) await recordAudit(tx, viewer, { action: held ? 'person.role.give' : 'person.role.take', subject: { type: 'person', id: personId }, after: { role } })
  })
}

async function refuseIfTeaching(tx: Transaction, programId: string, personId: string): Promise<void> {
  const open = await tx.class.findMany({
    where: { programId, archivedAt: null, instructors: { some: { programId, personId } } }, orderBy: { name: 'asc' }, select: { name: true, term: { select: { name: true } } },
  })
  if (open.length > 0) throw new Refusal('CONFLICT', `They still teach ${open.map(({ name, term }) => `${name}, ${term.name}`).join('; ')}. Take them off first.`)
}

/** Gives anyone of the program but oneself a new first password; see giveFirstPassword. @throws Refusal NOT_FOUND, CONFLICT */
export async function resetPassword(viewer: Viewer, who: Who): Promise<{ password: string }> {
  return giveFirstPassword(viewer, await someoneElse(db(), viewer, who))
}

/** Signs a person out everywhere. @throws Refusal NOT_FOUND, CONFLICT */
export async function endSessions(viewer: Viewer, who: Who): Promise<{ ended: number }> {
  const { programId } = viewer
  return db().$transaction(async (tx) => {
    const { id: personId } = await someoneElse(tx, viewer, who)
    const { count: ended } = await tx.signInSession.updateMany({ where: { programId, personId, endedAt: null }, data: { endedAt: new Date() } })
    if (ended > 0) await recordAudit(tx, viewer, { action: 'session.end-all', subject: { type: 'person', id: personId }, after: { ended } })
    return { ended }
  })
}

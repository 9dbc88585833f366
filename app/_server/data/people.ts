import 'server-only'
import { randomInt } from 'node:crypto'
import { LOCALES, type Locale } from '@/lib/language/say'
import { CODE_LETTERS } from '@/lib/schemas/person'
import { hashPassword } from '../auth/passwords'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { giveFirstPassword } from './first-password'
import { isOwnPassword } from './own-password'
import { staffClassScope, studentScope, taughtClassScope } from './scope'

export type PersonRecord = { readonly id: string; readonly givenName: string; readonly familyName: string; readonly signInName: string }

/** A student, or null when they do not exist or are not the viewer's to see. */
export async function findStudent(viewer: Viewer, studentId: string): Promise<PersonRecord | null> {
  return db().person.findFirst({
    where: { AND: [{ id: studentId }, studentScope(viewer)] },
    select: { id: true, givenName: true, familyName: true, signInName: true },
  })
}

export type OwnAccount = {
  readonly signInName: string
  readonly locale: string
  readonly units: 'us' | 'si'
  readonly mustChangePassword: boolean
  readonly givenName: string
  readonly familyName: string
}

/** The viewer's own account. */
export async function ownAccount(viewer: Viewer): Promise<OwnAccount> {
  return db().person.findUniqueOrThrow({
    where: { programId_id: { programId: viewer.programId, id: viewer.personId } },
    select: { signInName: true, locale: true, units: true, mustChangePassword: true, givenName: true, familyName: true },
  })
}

/** Sets the viewer's language and units. */
export async function setPreferences(viewer: Viewer, input: { locale: 'en' | 'es'; units: 'us' | 'si' }): Promise<void> {
  await db().$transaction(async (tx) => {
    await tx.person.update({ where: { programId_id: { programId: viewer.programId, id: viewer.personId } }, data: input })
    await recordAudit(tx, viewer, { action: 'person.preferences', subject: { type: 'person', id: viewer.personId }, after: input })
  })
}

/** Replaces the viewer's own password and ends their other sessions. @throws Refusal INVALID when the current one is wrong */
export async function changeOwnPassword(viewer: Viewer, input: { current: string; password: string }): Promise<void> {
  const key = { programId_id: { programId: viewer.programId, id: viewer.personId } }
  if (!(await isOwnPassword(viewer, input.current))) {
    throw new Refusal('INVALID', 'The current password is not right.', { current: 'This is not your current password.' })
  }
  const passwordHash = await hashPassword(input.password)
  await db().$transaction(async (tx) => {
    await tx.person.update({ where: key, data: { passwordHash, mustChangePassword: false } })
    await tx.signInSession.updateMany({
      where: { programId: viewer.programId, personId: viewer.personId, endedAt: null, ...(viewer.sessionId && { NOT: { id: viewer.sessionId } }) },
      data: { endedAt: new Date() },
    })
    await recordAudit(tx, viewer, { action: 'person.password', subject: { type: 'person', id: viewer.personId } })
  })
}

/**
 * Gives a student of a class the viewer teaches a new first password, to be replaced at the next sign-in, and ends their sessions.
 * The password is returned once and stored only as its hash.
 */
export async function resetStudentPassword(viewer: Viewer, input: { studentId: string }): Promise<{ password: string }> {
  const { programId } = viewer
  const student = await db().person.findFirst({
    where: {
      programId, id: input.studentId,
      // Only pure students: an instructor must not be able to take over a colleague who also sits in a class.
      memberships: { some: { role: 'student' }, none: { role: { in: ['instructor', 'coordinator'] } } },
      enrolments: { some: { programId, withdrawnAt: null, class: taughtClassScope(viewer) } },
    },
    select: { id: true, signInName: true },
  })
  if (!student) throw notFound()
  return giveFirstPassword(viewer, student)
}

const CODE_DAYS = 14
const randomCode = (): string => Array.from({ length: 8 }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('')

export type ClassCodeRecord = { readonly code: string; readonly expiresAt: Date }

/** The code that lets students join a class now, or null. Only for those who teach it, and coordinators. */
export async function findClassCode(viewer: Viewer, classId: string): Promise<ClassCodeRecord | null> {
  return db().classCode.findFirst({
    where: { programId: viewer.programId, classId, class: staffClassScope(viewer), revokedAt: null, expiresAt: { gt: new Date() } },
    orderBy: { createdAt: 'desc' },
    select: { code: true, expiresAt: true },
  })
}

/** The languages that the active students of a class the viewer keeps read. Empty for anyone else. */
export async function listClassLanguages(viewer: Viewer, classId: string): Promise<Locale[]> {
  const rows = await db().person.findMany({
    where: { programId: viewer.programId, enrolments: { some: { programId: viewer.programId, classId, withdrawnAt: null, class: staffClassScope(viewer) } } },
    distinct: ['locale'], select: { locale: true },
  })
  return LOCALES.filter((locale) => rows.some((row) => row.locale === locale))
}

/** Makes a new code for a class the viewer teaches; the one before it stops working. */
export async function makeClassCode(viewer: Viewer, input: { classId: string }): Promise<ClassCodeRecord> {
  const { programId, personId } = viewer
  const taught = await db().class.findFirst({ where: { AND: [{ id: input.classId }, taughtClassScope(viewer)] }, select: { id: true } })
  if (!taught) throw notFound()
  return db().$transaction(async (tx) => {
    await tx.classCode.updateMany({ where: { programId, classId: taught.id, revokedAt: null }, data: { revokedAt: new Date() } })
    const made = await tx.classCode.create({
      data: { programId, classId: taught.id, code: randomCode(), madeById: personId, expiresAt: new Date(Date.now() + CODE_DAYS * 24 * 3600 * 1000) },
      select: { id: true, code: true, expiresAt: true },
    })
    await recordAudit(tx, viewer, { action: 'class.code', subject: { type: 'class', id: taught.id }, after: { codeId: made.id } })
    return { code: made.code, expiresAt: made.expiresAt }
  })
}

type Joining = { code: string; givenName: string; familyName: string; signInName: string; password: string; locale: 'en' | 'es' }

/** The class a code opens now, or null. */
async function classOfCode(programId: string, code: string): Promise<{ id: string; programId: string } | null> {
  const row = await db().classCode.findFirst({
    where: { programId, code, revokedAt: null, expiresAt: { gt: new Date() }, class: { archivedAt: null } },
    select: { class: { select: { id: true, programId: true } } },
  })
  return row?.class ?? null
}

const wrongCode = (): Refusal => new Refusal('INVALID', 'This code opens no class.', { code: 'This code opens no class now. Ask your instructor for the current one.' })

/** A newcomer makes an account and joins the class of a code as a student. There is no viewer yet: the code is what they hold. */
export async function joinAsNewStudent(program: { id: string; units: 'us' | 'si' }, input: Joining): Promise<{ personId: string }> {
  const joined = await classOfCode(program.id, input.code)
  if (!joined) throw wrongCode()
  const passwordHash = await hashPassword(input.password)
  try {
    return await db().$transaction(async (tx) => {
      const person = await tx.person.create({
        data: {
          programId: program.id, signInName: input.signInName, givenName: input.givenName, familyName: input.familyName,
          passwordHash, locale: input.locale, units: program.units,
          memberships: { create: { role: 'student' } },
        },
        select: { id: true },
      })
      await tx.enrolment.create({ data: { programId: program.id, classId: joined.id, personId: person.id } })
      await recordAudit(tx, { programId: program.id, personId: person.id }, { action: 'class.join', subject: { type: 'class', id: joined.id } })
      return { personId: person.id }
    })
  } catch (error) {
    if (isTaken(error)) {
      throw new Refusal('CONFLICT', 'This sign-in name is taken.', { signInName: 'This sign-in name is taken. Add a number or a middle initial.' })
    }
    throw error
  }
}

/** A student who already has an account joins one more class. Joining again, or after withdrawing, makes them active. */
export async function joinClass(viewer: Viewer, input: { code: string }): Promise<{ classId: string }> {
  const { programId, personId } = viewer
  const joined = await classOfCode(programId, input.code)
  if (!joined) throw wrongCode()
  await db().$transaction(async (tx) => {
    await tx.enrolment.upsert({
      where: { programId_classId_personId: { programId, classId: joined.id, personId } },
      create: { programId, classId: joined.id, personId },
      update: { withdrawnAt: null },
    })
    await recordAudit(tx, viewer, { action: 'class.join', subject: { type: 'class', id: joined.id } })
  })
  return { classId: joined.id }
}

export type OwnSession = { readonly id: string; readonly device: string | null; readonly since: Date; readonly lastSeen: Date; readonly here: boolean }

/** Where the viewer is signed in now, the latest first. */
export async function listOwnSessions(viewer: Viewer): Promise<OwnSession[]> {
  const rows = await db().signInSession.findMany({
    where: { programId: viewer.programId, personId: viewer.personId, endedAt: null, expiresAt: { gt: new Date() } },
    orderBy: { lastSeenAt: 'desc' }, take: 20,
    select: { id: true, device: true, createdAt: true, lastSeenAt: true },
  })
  return rows.map((row) => ({ id: row.id, device: row.device, since: row.createdAt, lastSeen: row.lastSeenAt, here: row.id === viewer.sessionId }))
}

/** Signs the viewer out everywhere but here. */
export async function endOtherSessions(viewer: Viewer): Promise<void> {
  await db().$transaction(async (tx) => {
    await tx.signInSession.updateMany({
      where: { programId: viewer.programId, personId: viewer.personId, endedAt: null, ...(viewer.sessionId && { NOT: { id: viewer.sessionId } }) },
      data: { endedAt: new Date() },
    })
    await recordAudit(tx, viewer, { action: 'session.end-others', subject: { type: 'person', id: viewer.personId } })
  })
}

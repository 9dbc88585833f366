import 'server-only'
import { randomInt } from 'node:crypto'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { fullName } from '@/lib/reports/full-name'
import { pinProblem } from '@/lib/schemas/pin'
import { MOST_PIN } from '@/lib/schemas/pin-length'
import { hashPassword } from '../auth/passwords'
import { forgetTries } from '../auth/throttle'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { isOwnPassword } from './own-password'
import { taughtClassScope } from './scope'

/** Whether the viewer has a PIN for shared tablets. */
export async function hasOwnPin(viewer: Viewer): Promise<boolean> {
  const person = await db().person.findUniqueOrThrow({
    where: { programId_id: { programId: viewer.programId, id: viewer.personId } }, select: { pinHash: true },
  })
  return person.pinHash !== null
}

/** Writes a person's PIN, ends what the old one opened, and lets them try afresh. */
async function writePin(viewer: Viewer, personId: string, pin: string, action: string): Promise<void> {
  const { programId } = viewer
  const pinHash = await hashPassword(pin)
  await db().$transaction(async (tx) => {
    await tx.person.update({ where: { programId_id: { programId, id: personId } }, data: { pinHash } })
    await tx.signInSession.updateMany({ where: { programId, personId, tabletId: { not: null }, endedAt: null }, data: { endedAt: new Date() } })
    await recordAudit(tx, viewer, { action, subject: { type: 'person', id: personId } })
  })
  await forgetTries('pin', `${programId} ${personId}`)
}

/**
 * Sets the viewer's own PIN; it is a student's. Whoever has a password must give it: a phone left open would otherwise hand out a way in
 * that outlives it.
 *
 * @throws Refusal NOT_FOUND for others, and on a shared tablet; INVALID when the password is wrong
 */
export async function setOwnPin(viewer: Viewer, input: { current: string; pin: string }): Promise<void> {
  if (!hasRole(viewer, 'student') || viewer.tabletId !== null) throw notFound()
  if ((await isOwnPassword(viewer, input.current)) === false) {
    throw new Refusal('INVALID', say(door, viewer.locale, 'fix'), { current: say(door, viewer.locale, 'notCurrent') })
  }
  await writePin(viewer, viewer.personId, input.pin, 'person.pin')
}

/** Six digits that nobody tries first. */
function randomPin(): string {
  for (;;) {
    const pin = String(randomInt(10 ** MOST_PIN)).padStart(MOST_PIN, '0')
    if (pinProblem(pin, 'en') === null) return pin
  }
}

/** Gives a student a new PIN: of a class the viewer teaches, any for a coordinator. It is returned once and stored only as its hash. */
export async function setStudentPin(viewer: Viewer, input: { studentId: string }): Promise<{ pin: string }> {
  const { programId } = viewer
  const student = await db().person.findFirst({
    where: {
      programId, id: input.studentId, memberships: { some: { programId, role: 'student' } },
      ...(!hasRole(viewer, 'coordinator') && { enrolments: { some: { programId, withdrawnAt: null, class: taughtClassScope(viewer) } } }),
    },
    select: { id: true },
  })
  if (!student) throw notFound()
  const pin = randomPin()
  await writePin(viewer, student.id, pin, 'person.pin.reset')
  return { pin }
}

export type PinHolder = { readonly id: string; readonly name: string; readonly booth: number | null; readonly hasPin: boolean }

/** The active students of a class the viewer teaches, and who of them has a PIN; by booth, then name. */
export async function listPinHolders(viewer: Viewer, classId: string): Promise<PinHolder[]> {
  const rows = await db().enrolment.findMany({
    where: { programId: viewer.programId, classId, withdrawnAt: null, class: taughtClassScope(viewer) },
    orderBy: [{ booth: { sort: 'asc', nulls: 'last' } }, { person: { familyName: 'asc' } }],
    select: { booth: true, person: { select: { id: true, givenName: true, familyName: true, pinHash: true } } },
  })
  return rows.map(({ booth, person }) => ({ id: person.id, name: fullName(person), booth, hasPin: person.pinHash !== null }))
}

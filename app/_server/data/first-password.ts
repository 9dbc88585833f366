import 'server-only'
import { randomInt } from 'node:crypto'
import { hashPassword } from '../auth/passwords'
import { nameTries } from '../auth/sign-in'
import { forgetTries } from '../auth/throttle'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { recordAudit } from './audit'

const WORDS = [
  'anvil', 'bevel', 'brace', 'cable', 'chisel', 'clamp', 'copper', 'dowel', 'ember', 'file', 'forge', 'gasket', 'girder', 'hammer', 'hinge',
  'ingot', 'jig', 'kiln', 'ladle', 'lathe', 'lever', 'mallet', 'nickel', 'oxide', 'pliers', 'pulley', 'quench', 'rafter', 'ratchet', 'rivet',
  'saddle', 'scribe', 'shim', 'spindle', 'square', 'tallow', 'temper', 'timber', 'tongs', 'trestle', 'valve', 'washer', 'wedge', 'winch',
]
const randomWord = (): string => WORDS[randomInt(WORDS.length)] ?? 'anvil'

/** A first password to be read out and replaced at the next sign-in: four words and four digits. */
export const firstPassword = (): string => `${Array.from({ length: 4 }, randomWord).join('-')}-${randomInt(1000, 10_000)}`

/** Gives a person a new first password and ends their sessions. It is returned once and stored only as its hash. The caller has asked whether they may. */
export async function giveFirstPassword(viewer: Viewer, person: { readonly id: string; readonly signInName: string }): Promise<{ password: string }> {
  const { programId } = viewer
  const password = firstPassword()
  const passwordHash = await hashPassword(password)
  await db().$transaction(async (tx) => {
    await tx.person.update({ where: { programId_id: { programId, id: person.id } }, data: { passwordHash, mustChangePassword: true } })
    await tx.signInSession.updateMany({ where: { programId, personId: person.id, endedAt: null }, data: { endedAt: new Date() } })
    await recordAudit(tx, viewer, { action: 'person.password.reset', subject: { type: 'person', id: person.id } })
  })
  // Often the person has just guessed too often; the new password is for now, not for in a quarter of an hour.
  await forgetTries('name', nameTries(programId, person.signInName))
  return { password }
}

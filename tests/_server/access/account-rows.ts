import * as ownPassword from '@/app/_server/data/own-password'
import { hashPassword } from '@/app/_server/auth/passwords'
import { db } from '@/app/_server/db'
import type { DataRow, Fixture } from './fixture'

const PASSWORD = 'four-words-in-a-row-7'

/** While the student, and nobody else, has a password. */
async function whileStudentHasOne<T>({ school }: Fixture, work: () => Promise<T>): Promise<T> {
  const student = { programId_id: { programId: school.programId, id: school.people.student } }
  await db().person.update({ where: student, data: { passwordHash: await hashPassword(PASSWORD) } })
  try {
    return await work()
  } finally {
    await db().person.update({ where: student, data: { passwordHash: null } })
  }
}

export const ACCOUNT_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'own-password.hasOwnPassword': {
    seenBy: ['student'], call: (viewer, fixture) => whileStudentHasOne(fixture, async () => (await ownPassword.hasOwnPassword(viewer)) || null),
  },
  'own-password.isOwnPassword': {
    seenBy: ['student'], call: (viewer, fixture) => whileStudentHasOne(fixture, async () => (await ownPassword.isOwnPassword(viewer, PASSWORD)) || null),
  },
}

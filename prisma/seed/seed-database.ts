import { hashPassword } from '@/app/_server/auth/passwords'
import { db } from '@/app/_server/db'
import { tellClasses } from './class-life'
import { inspectorsOf } from './eyes'
import { measureTwice } from './gauge-study'
import { PASSWORDS, PIN } from './people'
import { addPhotos } from './photo'
import { practise } from './practice'
import { noRows, type Rows } from './rows'
import { found, type PasswordHashes } from './school'
import { tonightOf } from './tonight'
import { refreshSkills, writeRows } from './write'

export type Moment = {
  /** The moment the school is alive at: the same moment makes the same school, but for the salt of the passwords. */
  readonly asOf: Date
  /** Six students a class and its last evenings only, for tests. */
  readonly small: boolean
}

export type SeedOptions = Moment & {
  /** Where photos are kept. */
  readonly folder: string
  readonly say?: (line: string) => void
}

const PHOTOS = { small: 14, full: 80 }

/** Invents the school, in memory and without photos. */
export function invent({ asOf, small }: Moment, hashes: PasswordHashes): Rows {
  const rows = noRows()
  const school = found(asOf, small, hashes, rows)
  const tonight = tonightOf(school)
  const inspectors = inspectorsOf(rows)
  for (const pupil of school.pupils) practise(pupil, school, tonight, inspectors, rows)
  tellClasses(school, rows)
  measureTwice(school, rows)
  return rows
}

async function hashPasswords(): Promise<PasswordHashes> {
  const [student, instructor, coordinator] = await Promise.all([hashPassword(PASSWORDS.student), hashPassword(PASSWORDS.instructor), hashPassword(PASSWORDS.coordinator)])
  return { student, instructor, coordinator }
}

/** Every student may sign in on a shared tablet of their class. */
async function givePins(rows: Rows): Promise<void> {
  const pinHash = await hashPassword(PIN)
  const pupils = new Set(rows.Membership.filter(({ role }) => role === 'student').map(({ personId }) => personId))
  rows.Person = rows.Person.map((person) => (pupils.has(person.id) ? { ...person, pinHash } : person))
}

/** Thrown when the database already holds a program: the seed adds to nothing. */
export class NotEmpty extends Error {}

/**
 * Fills an empty, migrated database with the invented school: all its records at once, then the standings that follow from them.
 *
 * @throws NotEmpty when there is a program already
 */
export async function seedDatabase({ folder, say = () => {}, ...moment }: SeedOptions): Promise<void> {
  const since = Date.now()
  const tell = (what: string) => say(`${what} (${((Date.now() - since) / 1000).toFixed(1)} s)`)
  if (await db().program.findFirst({ select: { id: true } })) {
    throw new NotEmpty('This database already holds a program. The invented school goes into an empty one only.')
  }
  const rows = invent(moment, await hashPasswords())
  await givePins(rows)
  tell(`${rows.Coupon.length} coupons welded and inspected`)
  await addPhotos(rows, moment.small ? PHOTOS.small : PHOTOS.full, folder)
  tell(`${rows.Photo.length} photos drawn`)
  await writeRows(rows)
  tell(`${Object.values(rows).reduce((sum, table) => sum + table.length, 0)} rows written`)
  const skills = await refreshSkills(rows)
  tell(`${skills} standings worked out`)
}

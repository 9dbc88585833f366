import 'server-only'
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import { cookies } from 'next/headers'
import { cache } from 'react'
import { shortNames } from '@/lib/reports/short-names'
import { db } from '../db'
import { servedOverHttps } from '../env'
import { log } from '../log'
import { passwordMatches } from './passwords'
import { forgetTries, giveBackTry, takeTry } from './throttle'

/*
 * A tablet that a class shares. An instructor opens it on the device itself; the device then holds a secret of its own, which shows it the
 * names of the class's students and lets each of them in with a PIN. Without the secret a PIN opens nothing.
 */

/** A shared tablet that is open now, proven by its secret. */
export type OpenTablet = { readonly programId: string; readonly id: string; readonly name: string; readonly classId: string; readonly className: string }

export const newTabletSecret = (): string => randomBytes(32).toString('base64url')
export const tabletSecretHash = (secret: string): string => createHash('sha256').update(secret).digest('hex')

export const tabletCookieName = (): string => (servedOverHttps() ? '__Host-toeline.tablet' : 'toeline.tablet')
const options = () => ({ httpOnly: true, sameSite: 'lax', path: '/', secure: servedOverHttps() }) as const

/** Makes this browser a shared tablet. */
export async function keepTablet(tablet: { programId: string; id: string; secret: string; expiresAt: Date }): Promise<void> {
  const jar = await cookies()
  jar.set(tabletCookieName(), [tablet.programId, tablet.id, tablet.secret].join('.'), { ...options(), expires: tablet.expiresAt })
}

const COOKIE = /^([0-9a-f-]{36})\.([0-9a-f-]{36})\.([\w-]{43})$/

/** The open tablet a cookie proves, or null when the cookie is absent, made up, or of a tablet that is closed or past its time. */
export async function tabletOfCookie(cookie: string | undefined): Promise<OpenTablet | null> {
  const [, programId, id, secret] = COOKIE.exec(cookie ?? '') ?? []
  if (!programId || !id || !secret) return null
  const row = await db().sharedTablet.findFirst({
    where: { programId, id, closedAt: null, expiresAt: { gt: new Date() }, class: { archivedAt: null } },
    select: { name: true, secretHash: true, classId: true, class: { select: { name: true } } },
  })
  if (!row || !timingSafeEqual(Buffer.from(row.secretHash), Buffer.from(tabletSecretHash(secret)))) return null
  return { programId, id, name: row.name, classId: row.classId, className: row.class.name }
}

/** The shared tablet this request comes from, or null. */
export const currentTablet = cache(async (): Promise<OpenTablet | null> => tabletOfCookie((await cookies()).get(tabletCookieName())?.value))

/** Who may sign in on a tablet: the active students of its class. */
const studentsOf = ({ programId, classId }: OpenTablet) => ({
  programId, disabledAt: null, memberships: { some: { programId, role: 'student' as const } }, enrolments: { some: { programId, classId, withdrawnAt: null } },
})

/** The names a tablet shows: given name and as little of the family name as tells two people apart. */
export async function tabletNames(tablet: OpenTablet): Promise<{ id: string; name: string }[]> {
  const people = await db().person.findMany({
    where: studentsOf(tablet), orderBy: [{ givenName: 'asc' }, { familyName: 'asc' }, { id: 'asc' }],
    select: { id: true, givenName: true, familyName: true },
  })
  return shortNames(people)
}

export type PinResult = 'in' | 'wrong' | 'throttled'

/** Checks a PIN on a tablet. No such student, no PIN yet and a wrong PIN are one answer, in the same time; wrong ones are counted for the person and for the tablet. */
export async function checkPin(tablet: OpenTablet, { personId, pin }: { personId: string; pin: string }): Promise<PinResult> {
  const who = `${tablet.programId} ${personId}`
  if (!(await takeTries(who, tablet.id))) {
    log().warn({ event: 'pin throttled', programId: tablet.programId, tabletId: tablet.id })
    return 'throttled'
  }
  const person = await db().person.findFirst({ where: { AND: [{ id: personId }, studentsOf(tablet)] }, select: { pinHash: true } })
  if (!(await passwordMatches(person?.pinHash ?? null, pin))) {
    log().info({ event: 'pin refused', programId: tablet.programId, tabletId: tablet.id })
    return 'wrong'
  }
  await Promise.all([forgetTries('pin', who), giveBackTry('tablet', tablet.id)])
  return 'in'
}

/** One try of the tablet and one of the person; where one has none left, none of the other's is taken. */
async function takeTries(who: string, tabletId: string): Promise<boolean> {
  if (!(await takeTry('tablet', tabletId))) return false
  if (await takeTry('pin', who)) return true
  await giveBackTry('tablet', tabletId)
  return false
}

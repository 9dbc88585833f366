import 'server-only'
import { tidyText } from '@/lib/schemas/field'
import { db } from '../db'
import { log } from '../log'
import type { SessionToken } from './cookie'
import { passwordMatches } from './passwords'
import { startSession } from './sessions'
import { forgetTries, giveBackTry, takeTry } from './throttle'

export type SignInAttempt = {
  readonly programSlug: string | null
  readonly signInName: string
  readonly password: string
  readonly address: string
  readonly device: string | null
}

export type SignInResult = { readonly kind: 'in'; readonly token: SessionToken } | { readonly kind: 'wrong' } | { readonly kind: 'throttled' }

/** The program meant by a slug; without one, the only program there is. null when unknown or when there are several. */
export async function programBySlug(slug: string | null): Promise<{ id: string; slug: string; name: string; units: 'us' | 'si' } | null> {
  const select = { id: true, slug: true, name: true, units: true }
  if (slug) return db().program.findUnique({ where: { slug: tidyText(slug) }, select })
  const [first, second] = await db().program.findMany({ take: 2, select })
  return first && !second ? first : null
}

/** Names are compared without case or stray spaces: a phone keyboard adds both. */
export const tidySignInName = (typed: string): string => tidyText(typed.normalize('NFKC')).toLowerCase()

/** Whose tries the limit on names counts: one name of one program, whether it is anybody's or not. */
export const nameTries = (programId: string | undefined, signInName: string): string => `${programId ?? 'nowhere'} ${signInName}`

/** Checks a name and password. Wrong name, wrong password and disabled account are one answer. */
export async function signInWithPassword(attempt: SignInAttempt): Promise<SignInResult> {
  const program = await programBySlug(attempt.programSlug)
  const name = tidySignInName(attempt.signInName)
  const who = nameTries(program?.id, name)
  if (!(await takeTries(who, attempt.address))) {
    log().warn({ event: 'sign-in throttled', programId: program?.id })
    return { kind: 'throttled' }
  }
  const person = program
    ? await db().person.findUnique({
        where: { programId_signInName: { programId: program.id, signInName: name } },
        select: { id: true, passwordHash: true, disabledAt: true },
      })
    : null
  const matches = await passwordMatches(person?.passwordHash ?? null, attempt.password)
  if (!program || !person || !matches || person.disabledAt) {
    log().info({ event: 'sign-in refused', programId: program?.id, personId: person?.id })
    return { kind: 'wrong' }
  }
  await Promise.all([forgetTries('name', who), giveBackTry('address', attempt.address)])
  log().info({ event: 'sign-in', programId: program.id, personId: person.id })
  return { kind: 'in', token: await startSession(program.id, person.id, attempt.device) }
}

/** One try of the address and one of the name. An address that has none left takes none of the name's, and the other way round. */
async function takeTries(who: string, address: string): Promise<boolean> {
  if (!(await takeTry('address', address))) return false
  if (await takeTry('name', who)) return true
  await giveBackTry('address', address)
  return false
}

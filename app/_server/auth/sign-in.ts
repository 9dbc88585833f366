import 'server-only'
import { db } from '../db'
import { log } from '../log'
import type { SessionToken } from './cookie'
import { passwordMatches } from './passwords'
import { startSession } from './sessions'
import { countTry, forgetTries, mayTry } from './throttle'

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
  if (slug) return db().program.findUnique({ where: { slug }, select })
  const [first, second] = await db().program.findMany({ take: 2, select })
  return first && !second ? first : null
}

/** Names are compared without case or stray spaces: a phone keyboard adds both. */
export const tidySignInName = (typed: string): string => typed.normalize('NFKC').trim().toLowerCase()

/** Checks a name and password. Wrong name, wrong password and disabled account are one answer. */
export async function signInWithPassword(attempt: SignInAttempt): Promise<SignInResult> {
  const program = await programBySlug(attempt.programSlug)
  const name = tidySignInName(attempt.signInName)
  const who = `${program?.id ?? 'nowhere'} ${name}`
  if (!(await mayTry('name', who)) || !(await mayTry('address', attempt.address))) {
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
    await countTry('name', who)
    await countTry('address', attempt.address)
    log().info({ event: 'sign-in refused', programId: program?.id, personId: person?.id })
    return { kind: 'wrong' }
  }
  await forgetTries('name', who)
  log().info({ event: 'sign-in', programId: program.id, personId: person.id })
  return { kind: 'in', token: await startSession(program.id, person.id, attempt.device) }
}

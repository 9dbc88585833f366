// Stands in for the request that next/headers reads: tests put a session's cookie in the jar and call an action as the browser would.
import { sealSession, sessionCookieName } from '@/app/_server/auth/cookie'
import { startSession } from '@/app/_server/auth/sessions'
import type { School } from './school'

const jar = new Map<string, string>()

/** What vi.mock('next/headers') gives: see tests/_server/access.test.ts. */
export const headersModule = {
  cookies: () =>
    Promise.resolve({
      get: (name: string) => (jar.has(name) ? { name, value: jar.get(name) } : undefined),
      set: (name: string, value: string) => void jar.set(name, value),
      delete: (cookie: string | { name: string }) => void jar.delete(typeof cookie === 'string' ? cookie : cookie.name),
    }),
  headers: () => Promise.resolve(new Headers({ 'user-agent': 'vitest' })),
}

/** From here on requests come from this person; null is nobody. */
export async function requestFrom(person: { school: School; who: keyof School['people'] } | null): Promise<void> {
  jar.clear()
  if (!person) return
  const token = await startSession(person.school.programId, person.school.people[person.who], null)
  jar.set(sessionCookieName(), await sealSession(token))
}

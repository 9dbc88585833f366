import 'server-only'
import { cookies, headers } from 'next/headers'
import { openSession, sealSession, SESSION_SECONDS, sessionCookieName, sessionCookieOptions } from './cookie'
import { endSession, startSession } from './sessions'

/** Signs a person in in this browser, after an action that proved who they are. `tabletId`: on the shared tablet this browser is. */
export async function enter(programId: string, personId: string, tabletId: string | null = null): Promise<void> {
  const device = (await headers()).get('user-agent')?.slice(0, 200) ?? null
  const token = await startSession(programId, personId, device, tabletId)
  const jar = await cookies()
  jar.set(sessionCookieName(), await sealSession(token), { ...sessionCookieOptions(), maxAge: SESSION_SECONDS })
}

/** Ends the session of this browser: its row at once, then its cookie. */
export async function leave(): Promise<void> {
  const jar = await cookies()
  const token = await openSession(jar.get(sessionCookieName())?.value)
  if (token) await endSession(token)
  jar.delete({ name: sessionCookieName(), ...sessionCookieOptions() })
}

import 'server-only'
import { passwordMatches } from '../auth/passwords'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'

const hashOf = async ({ programId, personId }: Viewer): Promise<string | null> =>
  (await db().person.findUniqueOrThrow({ where: { programId_id: { programId, id: personId } }, select: { passwordHash: true } })).passwordHash

/** Whether the viewer has a password here; who signs in by the school's own identity service has none. */
export const hasOwnPassword = async (viewer: Viewer): Promise<boolean> => (await hashOf(viewer)) !== null

/** Whether this is the viewer's own password; null for whoever has none here. */
export async function isOwnPassword(viewer: Viewer, typed: string): Promise<boolean | null> {
  const hash = await hashOf(viewer)
  return hash === null ? null : passwordMatches(hash, typed)
}

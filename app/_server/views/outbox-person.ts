import 'server-only'
import type { Viewer } from '../auth/viewer'
import { ownAccount } from '../data/people'
import { findProgram } from '../data/program'

/** Where this viewer signs in again: a shared tablet asks for a name and a PIN. */
export const ownDoor = ({ tabletId }: Viewer): '/sign-in' | '/tablet' => (tabletId === null ? '/sign-in' : '/tablet')

/** Under whose name this page's device queue keeps and sends coupons. */
export async function outboxPerson(viewer: Viewer): Promise<{ personId: string; signInName: string; program: string }> {
  const [account, program] = await Promise.all([ownAccount(viewer), findProgram(viewer)])
  return { personId: viewer.personId, signInName: account.signInName, program: program.slug }
}

import 'server-only'
import { addShippedCriteria } from './data/program'
import { log } from './log'

/** Brings the criteria of this release to every program. A database that is down is said, and does not stop the server: the next start tries again. */
export async function bringCriteria(): Promise<void> {
  try {
    const added = await addShippedCriteria()
    if (added > 0) log().info({ event: 'criteria added', sets: added })
  } catch (error) {
    log().error({ event: 'criteria not added', error: error instanceof Error ? error.message : String(error) })
  }
}

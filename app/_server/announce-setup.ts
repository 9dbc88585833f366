import 'server-only'
import { setupCode } from './auth/setup-code'
import { anyProgram } from './data/program'
import { env } from './env'
import { log } from './log'

/** Prints the one-time set-up code while the database holds no program. A database that is down is said, and does not stop the server. */
export async function announceSetup(): Promise<void> {
  try {
    if (await anyProgram()) return
    process.stdout.write(`\nNo program is set up yet. Open ${env().NEXTAUTH_URL}/set-up and enter this one-time code: ${setupCode()}\n\n`)
  } catch (error) {
    log().error({ event: 'database unreachable at start', error: error instanceof Error ? error.message : String(error) })
  }
}

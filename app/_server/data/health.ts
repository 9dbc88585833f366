import 'server-only'
import { db } from '../db'

const PATIENCE_MS = 1000

/** Whether the database answers within a second. Tells nothing else. */
export async function databaseAnswers(): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), PATIENCE_MS)
  })
  const answer = db().$queryRaw`SELECT 1`.then(() => true, () => false)
  try {
    return await Promise.race([answer, late])
  } finally {
    clearTimeout(timer)
  }
}

import 'server-only'
import { parseCriteriaSet } from '@/lib/criteria/schema'
import type { CriteriaSet } from '@/lib/criteria/types'
import { db, type Transaction } from '../db'

// A published set never changes, so one read per process is enough.
const held = new Map<string, CriteriaSet>()

/**
 * The criteria set an exercise or scorecard names. Not scoped by viewer: the rules a coupon is judged by are no secret in the program.
 *
 * @param from the transaction the caller is in: it holds a connection, and waiting for a second one could wait for ever
 */
export async function criteriaSet(programId: string, id: string, version: number, from: Transaction = db()): Promise<CriteriaSet> {
  const key = `${programId} ${id} ${version}`
  const known = held.get(key)
  if (known) return known
  const row = await from.criteriaSet.findUniqueOrThrow({
    where: { programId_id_version: { programId, id, version } },
    select: { document: true },
  })
  const parsed = parseCriteriaSet(row.document)
  if (!parsed.ok) throw new Error(`The stored criteria ${id} version ${version} cannot be read: ${parsed.problems[0]?.message ?? 'unknown problem'}`)
  held.set(key, parsed.value)
  return parsed.value
}

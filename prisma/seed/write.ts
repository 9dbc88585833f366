import { Prisma } from '@/prisma/generated/client'
import { db, type Transaction } from '@/app/_server/db'
import { holdSkill, refreshSkill } from '@/app/_server/data/skills'
import type { Rows } from './rows'

const CHUNK = 4000

/**
 * Writes rows whole, as JSON that PostgreSQL spreads over the table's columns: a hundred thousand findings in seconds.
 * Every column must be given; one left out would be null, not its default.
 */
async function insert<Table extends keyof Rows>(tx: Transaction, table: Table, rows: Rows[Table]): Promise<void> {
  const name = Prisma.raw(`"${table}"`)
  for (let from = 0; from < rows.length; from += CHUNK) {
    const chunk = JSON.stringify(rows.slice(from, from + CHUNK))
    await tx.$executeRaw`INSERT INTO ${name} SELECT * FROM json_populate_recordset(NULL::${name}, ${chunk}::json)`
  }
}

const LONGEST_MS = 10 * 60_000
const WORKERS = 4

/** Writes all tables or none; the order of the keys of Rows is the order of dependence. */
export async function writeRows(rows: Rows): Promise<void> {
  await db().$transaction(async (tx) => {
    for (const table of Object.keys(rows) as (keyof Rows)[]) await insert(tx, table, rows[table])
  }, { timeout: LONGEST_MS })
  // Queries planned without statistics read whole tables.
  await db().$executeRaw`ANALYZE`
}

/** Works out every student's standing by the application's own code, as the last write of each would have. */
export async function refreshSkills(rows: Rows): Promise<number> {
  const keys = [...new Map(rows.Coupon.map(({ programId, studentId, exerciseId }) => [`${studentId} ${exerciseId}`, { programId, studentId, exerciseId }])).values()]
  const queue = keys.values()
  const work = async (): Promise<void> => {
    for (const key of queue) {
      await db().$transaction(async (tx) => {
        await holdSkill(tx, key)
        await refreshSkill(tx, key)
      }, { timeout: LONGEST_MS })
    }
  }
  await Promise.all(Array.from({ length: WORKERS }, work))
  return keys.length
}

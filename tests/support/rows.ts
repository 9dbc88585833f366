// What a write left behind, counted past the application; and an audit trail that can be made to fail.
import type { TestDatabase } from './database'

const TABLES = ['Coupon', 'Pass', 'Inspection', 'Scorecard', 'Finding', 'SkillSummary', 'Comment', 'AuditEvent'] as const
export type RowCounts = Readonly<Record<(typeof TABLES)[number], number>>

/** How many rows a program has in each table that a coupon or an inspection writes to. */
export async function countRows(database: TestDatabase, programId: string): Promise<RowCounts> {
  const columns = TABLES.map((table) => `(select count(*)::int from "${table}" where "programId" = $1) as "${table}"`)
  const [row] = await database.query<RowCounts & Record<string, number>>(`select ${columns.join(', ')}`, [programId])
  if (!row) throw new Error('Nothing was counted.')
  return row
}

/** Runs `work` while no audit row can be written. */
export async function withoutAudit(database: TestDatabase, work: () => Promise<unknown>): Promise<unknown> {
  await database.query(`create function "no_audit"() returns trigger language plpgsql as $$ begin raise exception 'the audit trail is full'; end $$`)
  await database.query('create trigger "no_audit" before insert on "AuditEvent" for each row execute function "no_audit"()')
  try {
    return await work().catch((error: unknown) => error)
  } finally {
    await database.query('drop trigger "no_audit" on "AuditEvent"')
    await database.query('drop function "no_audit"()')
  }
}

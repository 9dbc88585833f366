// A database of this worker's own, cloned from the migrated template. Import this file in every test that reaches the database:
// importing it points DATABASE_URL (and the rest of the server's environment) at the worker's own things.
import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { Client } from 'pg'
import { afterAll, inject } from 'vitest'

const { template, maintenance } = inject('databaseServer')
const name = `worker_${process.env.VITEST_POOL_ID ?? '0'}`
const url = addressOf(name)
const data = mkdtempSync(path.join(os.tmpdir(), 'toeline-test-data-'))

process.env.DATABASE_URL = url
process.env.NEXTAUTH_URL = 'http://localhost:3000'
process.env.NEXTAUTH_SECRET = 'a secret for tests only, long enough for the check'
process.env.TOELINE_DATA = data
process.env.LOG_LEVEL = 'silent'

afterAll(async () => {
  const { toelineDatabase } = globalThis as { toelineDatabase?: { $disconnect(): Promise<void> } }
  await toelineDatabase?.$disconnect()
  rmSync(data, { recursive: true, force: true })
})

export type TestDatabase = {
  readonly url: string
  /** Empties every table, between tests of one file. */
  readonly reset: () => Promise<void>
  /** Runs SQL of the test's own, past the application. */
  readonly query: <Row extends Record<string, unknown>>(sql: string, values?: readonly unknown[]) => Promise<Row[]>
}

/** Makes the worker's database anew from the template. Call it in beforeAll: what an earlier file left is gone. */
export async function testDatabase(): Promise<TestDatabase> {
  await run(maintenance, `drop database if exists "${name}" with (force)`)
  await run(maintenance, `create database "${name}" template "${new URL(template).pathname.slice(1)}"`)
  const tables = await run<{ list: string }>(url, `select string_agg(format('%I', tablename), ', ') as list from pg_tables
    where schemaname = 'public' and tablename <> '_prisma_migrations'`)
  const list = tables[0]?.list
  return {
    url,
    reset: async () => {
      if (list) await run(url, `truncate ${list} restart identity cascade`)
    },
    query: (sql, values) => run(url, sql, values),
  }
}

/** The address of another database on the test server. */
export function addressOf(database: string): string {
  const address = new URL(template)
  address.pathname = `/${database}`
  return address.href
}

async function run<Row extends Record<string, unknown>>(address: string, sql: string, values: readonly unknown[] = []): Promise<Row[]> {
  const client = new Client({ connectionString: address })
  await client.connect()
  try {
    return (await client.query<Row>(sql, [...values])).rows
  } finally {
    await client.end()
  }
}

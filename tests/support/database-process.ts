// Runs scripts/database.mjs in a process of its own, so that a test can kill it or run it as someone else.
import { spawn, type ChildProcess } from 'node:child_process'
import path from 'node:path'
import { Client } from 'pg'

export const PROJECT = path.resolve(import.meta.dirname, '../..')
export const isRoot = process.getuid?.() === 0

export type Started = { readonly url: string; readonly cluster: string; readonly port: number; readonly said: string[] }
export type DatabaseProcess = { readonly child: ChildProcess; readonly started: Promise<Started>; readonly ended: Promise<{ code: number | null; errors: string }> }

/** Starts a database on a folder and keeps it until SIGTERM. checkout: another copy of the scripts; account: who runs it (root only). */
export function databaseProcess(folder: string, { checkout = PROJECT, account }: { checkout?: string; account?: { uid: number; gid: number } } = {}): DatabaseProcess {
  const program = `
    import { startDatabase } from '${path.join(checkout, 'scripts/database.mjs')}'
    import { run } from '${path.join(checkout, 'scripts/failure.mjs')}'
    import { untilAskedToStop } from '${path.join(checkout, 'scripts/processes.mjs')}'
    await run(async () => {
      const said = []
      const { url, cluster, port, ended, stop } = await startDatabase({ folder: process.argv[1], say: (line) => said.push(line) })
      console.log(JSON.stringify({ url, cluster, port, said }))
      const trouble = await Promise.race([ended, untilAskedToStop()])
      await stop()
      if (trouble) console.error(trouble)
    })`
  const child = spawn(process.execPath, ['--input-type=module', '-e', program, folder], { cwd: '/', ...account })
  let output = ''
  let errors = ''
  child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()))
  const started = new Promise<Started>((resolve, reject) => {
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString()
      if (output.endsWith('\n')) resolve(JSON.parse(output) as Started)
    })
    child.once('close', () => reject(new Error(errors)))
  })
  started.catch(() => {}) // a test may only be interested in the end
  const ended = new Promise<{ code: number | null; errors: string }>((resolve) => child.once('close', (code) => resolve({ code, errors: errors.trim() })))
  return { child, started, ended }
}

/** Rows of a query on a database by its address. */
export async function rowsOf(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new Client({ connectionString: url })
  client.on('error', () => {}) // the server may be killed under it
  await client.connect()
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows
  } finally {
    await client.end()
  }
}

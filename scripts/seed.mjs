import './node-version.cjs'
import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { Failure, ROOT } from './failure.mjs'
import { migrate } from './migrate.mjs'
import { endWithUs } from './processes.mjs'

/**
 * Migrates a database of ours and fills it with the invented school when it is empty. A filling that was interrupted is begun
 * anew, for half a school would look like a whole one.
 * @param {import('./database.mjs').Database} database
 * @param {{ folder: string, env: Record<string, string>, small?: boolean, say?: (line: string) => void }} options
 *   folder: where photos, sign-ins and the mark of an unfinished filling are; small: the little school of the end-to-end tests
 * @returns {Promise<string>} the sign-ins, as the seed wrote them
 */
export async function migrateAndSeed(database, { folder, env, small = false, say = console.log }) {
  const unfinished = path.join(folder, 'seeding')
  const signIns = path.join(folder, 'sign-ins.txt')
  if (fs.existsSync(unfinished)) {
    say('The last run was interrupted while it filled the database: filling it anew.')
    await emptyDatabase(database)
    fs.rmSync(path.join(folder, 'photos'), { recursive: true, force: true })
  }
  await migrate(database.url)
  if (await isEmpty(database.url)) {
    say('Filling the database with an invented school (about a minute) ...')
    fs.writeFileSync(unfinished, '')
    await runSeed({ ...process.env, ...env, DATABASE_URL: database.url, TOELINE_DATA: folder, TOELINE_SIGN_INS: signIns }, small)
  }
  fs.rmSync(unfinished, { force: true })
  return fs.existsSync(signIns) ? fs.readFileSync(signIns, 'utf8').trim() : ''
}

async function emptyDatabase(database) {
  await withClient(database.urlOf('postgres'), async (client) => {
    await client.query('drop database if exists toeline with (force)')
    await client.query('create database toeline')
  })
}

function isEmpty(url) {
  return withClient(url, async (client) => (await client.query('select from "Program" limit 1')).rowCount === 0)
}

async function withClient(url, work) {
  const { default: pg } = await import('pg')
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

function runSeed(env, small) {
  // The condition makes 'server-only', which guards the server's files against the browser bundle, resolvable outside Next.js.
  const args = ['--conditions=react-server', '--import', 'tsx', path.join(ROOT, 'prisma/seed/seed.ts'), ...(small ? ['--small'] : [])]
  return new Promise((resolve, reject) => {
    const child = endWithUs(spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'ignore', 'inherit'] })) // its output is the sign-ins
    child.on('error', reject)
    child.on('close', (code, signal) => {
      if (code === 0) return resolve(undefined)
      reject(new Failure(`Filling the database failed (${signal ?? `code ${code}`}): what it said is above.`))
    })
  })
}

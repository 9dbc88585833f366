// One PostgreSQL data folder (a "cluster"): made, started, found still running after an unclean end, stopped.
import './node-version.cjs'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { explain, Failure } from './failure.mjs'
import { freePort, isFree } from './ports.mjs'
import { as } from './postgres-binaries.mjs'
import { commandOf, finish, gone, identify, startApart } from './processes.mjs'

const PERMANENT = { max_connections: 50 }
const THROWAWAY = { ...PERMANENT, fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', max_wal_size: '2GB' }

/**
 * What a cluster is reached with. The port is changed when another program has taken it.
 * @typedef {{ port: number, password: string, ownerPassword: string }} Settings
 * @typedef {{ postgres: string, initdb: string }} Binaries
 * @typedef {import('./postgres-binaries.mjs').Account | null} Account
 */

/**
 * Made beside its final place and renamed when whole, so an interrupted first start leaves nothing that looks like a database.
 * @param {string} cluster @param {Binaries} binaries @param {Account} account @param {Settings} settings
 */
export async function createCluster(cluster, { initdb }, account, settings) {
  const half = `${cluster}.new`
  const secret = `${cluster}.secret`
  fs.rmSync(half, { recursive: true, force: true })
  fs.rmSync(secret, { force: true })
  fs.mkdirSync(half, { mode: 0o700 })
  fs.writeFileSync(secret, settings.ownerPassword, { mode: 0o600 })
  if (account) for (const place of [half, secret]) fs.chownSync(place, account.uid, account.gid)
  // The built-in provider gives C.UTF-8 on every system, whatever locales that system has.
  const locale = ['--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8']
  // Not forced to the disk, which takes seconds: a power cut in this minute costs a folder that was empty until now.
  const args = ['-D', half, '-U', 'postgres', '--auth=scram-sha-256', `--pwfile=${secret}`, ...locale, '--no-sync']
  const { code, output } = await finish(initdb, args, { cwd: '/', ...as(account) })
  fs.rmSync(secret, { force: true })
  if (code !== 0) {
    fs.rmSync(half, { recursive: true, force: true })
    throw explain(output, path.dirname(cluster)) ?? new Error(`initdb failed:\n${output}`)
  }
  fs.renameSync(half, cluster)
}

/** Fails with a sentence when another PostgreSQL made the files. @param {string} cluster */
export function checkVersion(cluster) {
  const version = fs.readFileSync(path.join(cluster, 'PG_VERSION'), 'utf8').trim()
  if (version !== '18') throw new Failure(`The data in ${cluster} were made by PostgreSQL ${version} and the bundled one is 18: dump them with the old one, or begin anew.`)
}

/**
 * Starts the server and waits until it takes connections.
 * @param {{ cluster: string, binaries: Binaries, account: Account, settings: Settings, remember: (settings: Settings) => void, log: string, throwaway: boolean }} options
 */
export async function launch({ cluster, binaries, account, settings, remember, log, throwaway }) {
  for (let attempt = 1; ; attempt += 1) {
    if (!settings.port || !(await isFree(settings.port))) {
      settings.port = await freePort()
      remember(settings)
    }
    const fixed = { listen_addresses: '127.0.0.1', unix_socket_directories: '', port: settings.port, timezone: 'UTC', log_timezone: 'UTC' }
    const flags = Object.entries({ ...fixed, ...(throwaway ? THROWAWAY : PERMANENT) }).flatMap(([name, value]) => ['-c', `${name}=${value}`])
    fs.writeFileSync(log, '', { mode: 0o600 })
    const out = fs.openSync(log, 'a')
    const child = startApart(binaries.postgres, ['-D', cluster, ...flags], { cwd: '/', stdio: ['ignore', out, out], ...as(account) })
    fs.closeSync(out)
    child.on('error', () => {}) // shows as an early end below
    if (await isReady(cluster, child)) return child
    const said = fs.readFileSync(log, 'utf8')
    // The shared memory of a killed server lives until its last worker notices; the port may have gone to someone else meanwhile.
    if (attempt < 20 && /shared memory block|lock file|address already in use|could not bind/i.test(said)) await sleep(500)
    else throw explain(said, cluster) ?? new Failure(`The database does not start: ${lastLine(said)} (more in ${log}).`)
  }
}

async function isReady(cluster, child) {
  while (child.exitCode === null && child.signalCode === null && child.pid) {
    const lines = postmasterFile(cluster)
    if (Number(lines[0]) === child.pid && lines[7]?.trim() === 'ready') return true
    await sleep(30)
  }
  return false
}

const lastLine = (text) => text.trim().split('\n').findLast((line) => /FATAL|PANIC|ERROR/.test(line))?.replace(/^.*?(FATAL|PANIC|ERROR): +/, '') ?? 'it gave no reason'

function postmasterFile(cluster) {
  try {
    return fs.readFileSync(path.join(cluster, 'postmaster.pid'), 'utf8').split('\n')
  } catch {
    return []
  }
}

/** For the one who has the claim on the folder: a server that still runs on it has lost its owner, so end it the clean way. @param {string} cluster */
export async function stopOrphan(cluster) {
  const pid = Number(postmasterFile(cluster)[0])
  if (!pid) return
  const identity = identify(pid)
  if (identity && commandOf(pid).includes(cluster)) return stopServer(identity)
  fs.rmSync(path.join(cluster, 'postmaster.pid'), { force: true }) // stale: that number is nobody's now, or another program's
}

/** @param {import('./processes.mjs').Identity | null} identity the server's first process */
export async function stopServer(identity) {
  if (!identity) return
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGQUIT'])) { // fast, then immediate; a kill -9 would leave shared memory behind
    try {
      process.kill(identity.pid, signal)
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'ESRCH') return
      throw new Failure(`A database server of another account (process ${identity.pid}) uses these files: stop it first.`)
    }
    if (await gone(identity, 30_000)) return
  }
  throw new Failure(`The database server (process ${identity.pid}) does not stop: end it by hand and try again.`)
}

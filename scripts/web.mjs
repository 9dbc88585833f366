// The web server as a child of ours: started, waited for, and stopped in order with the database.
import './node-version.cjs'
import { randomBytes } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { makeFolder } from './database.mjs'
import { Failure, ROOT } from './failure.mjs'
import { isFree } from './ports.mjs'
import { identify, startApart, stopGroup, untilAskedToStop } from './processes.mjs'

/** Fails with a sentence naming the way out when a port is taken. @param {number} port @param {string} host @param {string} npmCommand for example 'npm run demo --' */
export async function checkPort(port, host, npmCommand) {
  if (await isFree(port, host)) return
  throw new Failure(`Port ${port} is taken by another program: stop that one, or choose another port with --port, for example ${npmCommand} --port ${port + 1}`)
}

/** @param {string | undefined} text @param {number} otherwise */
export function readPort(text, otherwise) {
  const port = text === undefined || text === '' ? otherwise : Number(text)
  if (!Number.isInteger(port) || port < 1 || port > 65535) throw new Failure(`A port is a number from 1 to 65535, and ${text} is not one.`)
  return port
}

/** The key that signs the session cookies, kept in the folder and made the first time. @param {string} folder @returns {{ secret: string, isNew: boolean, file: string }} */
export function rememberedSecret(folder) {
  const file = path.join(folder, 'session-secret.txt')
  const isNew = !fs.existsSync(file)
  if (isNew) {
    makeFolder(folder)
    fs.writeFileSync(file, randomBytes(48).toString('base64url'), { mode: 0o600 })
  }
  return { secret: fs.readFileSync(file, 'utf8').trim(), isNew, file }
}

/**
 * Starts Next.js and resolves when it answers.
 * @param {{ mode: 'start' | 'dev', host: string, port: number, env: Record<string, string>, log?: string }} options log: a file for what it prints; the terminal without one
 */
export async function startWeb({ mode, host, port, env, log }) {
  const out = log ? fs.openSync(log, 'w', 0o600) : 'inherit'
  const next = path.join(ROOT, 'node_modules/next/dist/bin/next')
  const args = ['--import', path.join(import.meta.dirname, 'leash.mjs'), next, mode, '-H', host, '-p', String(port)]
  const child = startApart(process.execPath, args, {
    cwd: ROOT, stdio: ['ignore', out, out, 'ipc'],
    env: { ...process.env, NODE_ENV: mode === 'dev' ? 'development' : 'production', NEXT_TELEMETRY_DISABLED: '1', TOELINE_LEASHED_BY: String(process.pid), ...env },
  })
  if (typeof out === 'number') fs.closeSync(out)
  const identity = identify(Number(child.pid))
  const stop = () => stopGroup(identity)
  /** @type {Promise<string>} */
  const ended = new Promise((resolve) => {
    child.once('exit', (code, signal) => resolve(`The web server ended unexpectedly (${signal ?? `code ${code}`})${log ? `: see ${log}` : ''}.`))
  })
  const trouble = await Promise.race([ended, answers(host, port)])
  if (trouble) {
    await stop()
    throw new Failure(trouble)
  }
  return { ended, stop }
}

// Any answer over HTTP will do: it listens and its first page is compiled.
async function answers(host, port) {
  const until = Date.now() + 120_000
  while (Date.now() < until) {
    try {
      await fetch(`http://${host === '0.0.0.0' ? '127.0.0.1' : host}:${port}/`, { redirect: 'manual', headers: { connection: 'close' }, signal: AbortSignal.timeout(60_000) })
      return null
    } catch {
      await sleep(100)
    }
  }
  return 'The web server does not answer after two minutes.'
}

/**
 * Keeps everything running until we are asked to stop or a part ends by itself; then stops the parts in the order given.
 * @param {{ ended?: Promise<string>, stop: () => Promise<void> }[]} parts the web server before the database
 */
export async function keepRunning(parts) {
  const trouble = await Promise.race([untilAskedToStop(), ...parts.flatMap(({ ended }) => (ended ? [ended] : []))])
  for (const part of parts) await part.stop()
  if (trouble) throw new Failure(trouble)
}

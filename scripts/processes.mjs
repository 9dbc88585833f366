import { execFileSync, spawn } from 'node:child_process'
import fs from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'

/**
 * A process as more than its number, because numbers are used again: the pid and when it started.
 * @typedef {{ pid: number, started: string }} Identity
 */

/** @param {number} pid @returns {Identity | null} null when no such process lives */
export function identify(pid) {
  const started = startedAt(pid)
  return started === null ? null : { pid, started }
}

/** @param {Identity | null | undefined} identity */
export function isAlive(identity) {
  return Boolean(identity && startedAt(identity.pid) === identity.started)
}

/** The command line of a process, '' when it is gone. @param {number} pid */
export function commandOf(pid) {
  try {
    if (process.platform === 'linux') return fs.readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ')
    return execFileSync('ps', ['-o', 'args=', '-p', String(pid)], { encoding: 'utf8' })
  } catch {
    return ''
  }
}

function startedAt(pid) {
  try {
    if (process.platform === 'linux') {
      const stat = fs.readFileSync(`/proc/${pid}/stat`, 'utf8')
      const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ') // the name before it may hold spaces
      return fields[0] === 'Z' ? null : `${fields[19]}`
    }
    return execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).trim() || null
  } catch {
    return null
  }
}

/**
 * Starts a program in a process group of its own: the terminal's Ctrl-C then reaches only us, and we end the others in order.
 * @param {string} command @param {string[]} args @param {import('node:child_process').SpawnOptions} [options]
 */
export function startApart(command, args, options = {}) {
  return spawn(command, args, { stdio: ['ignore', 'inherit', 'inherit'], ...options, detached: true })
}

/**
 * Ends a process group: asks, waits, then insists.
 * @param {Identity | null | undefined} identity its leader @param {{ patience?: number }} [options] milliseconds before SIGKILL
 */
export async function stopGroup(identity, { patience = 10_000 } = {}) {
  if (!identity || !isAlive(identity)) return
  signalGroup(identity.pid, 'SIGTERM')
  if (await gone(identity, patience)) return
  signalGroup(identity.pid, 'SIGKILL')
  await gone(identity, 2000)
}

/** Waits until a process is gone; false when it still lives after that time. @param {Identity} identity @param {number} milliseconds */
export async function gone(identity, milliseconds) {
  const until = Date.now() + milliseconds
  while (isAlive(identity)) {
    if (Date.now() > until) return false
    await sleep(50)
  }
  return true
}

function signalGroup(pid, signal) {
  try {
    process.kill(-pid, signal)
  } catch {
    // it went by itself in between
  }
}

/** Ends a child when we end before it. @template {import('node:child_process').ChildProcess} C @param {C} child @returns {C} */
export function endWithUs(child) {
  const onExit = () => child.kill('SIGTERM')
  process.once('exit', onExit)
  child.once('close', () => process.off('exit', onExit))
  return child
}

/**
 * Runs a program to its end and answers its exit code and what it printed.
 * @param {string} command @param {string[]} args @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<{ code: number | null, output: string }>}
 */
export function finish(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = endWithUs(spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'], ...options }))
    let output = ''
    child.stdout?.on('data', (chunk) => (output += chunk))
    child.stderr?.on('data', (chunk) => (output += chunk))
    child.on('error', reject)
    child.on('close', (code) => resolve({ code, output }))
  })
}

let whenAsked = () => process.exit(130)
let listening = false

/**
 * From now on Ctrl-C, a closed terminal and kill leave through process.exit, so that what we started is ended on the way out.
 * The same when npm started us and is gone, even by kill -9: what it started would live on unseen.
 */
export function leaveOnSignals() {
  if (listening) return
  listening = true
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => whenAsked())
  const parent = process.ppid
  if (process.env.npm_lifecycle_event) setInterval(() => process.ppid !== parent && whenAsked(), 500).unref()
}

/**
 * Resolves when this process is asked to stop. Later signals change nothing: npm and the terminal both pass Ctrl-C on, and
 * stopping has time limits of its own.
 * @returns {Promise<null>}
 */
export function untilAskedToStop() {
  leaveOnSignals()
  return new Promise((resolve) => {
    whenAsked = () => resolve(null)
  })
}

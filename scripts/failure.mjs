import './node-version.cjs'
import fs from 'node:fs'
import path from 'node:path'
import { leaveOnSignals } from './processes.mjs'

/** The checkout these scripts belong to. */
export const ROOT = path.resolve(import.meta.dirname, '..')

/** Something a person can put right: its message is one sentence and is shown without a stack. */
export class Failure extends Error {
  name = 'Failure'
}

/**
 * Turns what the operating system or PostgreSQL says into one sentence, or returns null when it is not a known trouble.
 * @param {unknown} error an Error, or the text a program printed
 * @param {string} place the folder (or thing) that was being worked on
 * @returns {Failure | null}
 */
export function explain(error, place) {
  const code = error instanceof Error && 'code' in error ? error.code : ''
  const text = error instanceof Error ? error.message : String(error)
  if (code === 'ENOSPC' || /no space left on device/i.test(text)) {
    return new Failure(`The disk that holds ${place} is full: free some space (about 300 MB) and try again.`)
  }
  if (code === 'EACCES' || code === 'EPERM' || /permission denied/i.test(text)) {
    return new Failure(`${place} cannot be written by this account: change its owner or its permissions, or run from a folder of your own.`)
  }
  if (code === 'EROFS' || /read-only file system/i.test(text)) {
    return new Failure(`${place} is on a read-only disk: run from a folder that can be written.`)
  }
  return null
}

/**
 * Runs a command's main function; a Failure ends it with one sentence on stderr and exit code 1.
 * @param {() => Promise<unknown>} main
 */
export async function run(main) {
  leaveOnSignals()
  try {
    await main()
  } catch (error) {
    const failure = error instanceof Failure ? error : explain(error, error instanceof Error && 'path' in error ? String(error.path) : ROOT)
    console.error(failure && isOperating(error) ? failure.message : error)
    process.exit(1)
  }
}

/** Whether a script was started by name rather than imported. @param {ImportMeta} meta its import.meta */
export function isCommand(meta) {
  const started = process.argv[1]
  return started !== undefined && fs.existsSync(started) && fs.realpathSync(started) === meta.filename
}

// A stray "permission denied" inside a programming error must not hide its stack.
function isOperating(error) {
  return error instanceof Failure || (error instanceof Error && 'syscall' in error && 'path' in error)
}

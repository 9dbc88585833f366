import fs from 'node:fs'
import path from 'node:path'
import { Failure } from './failure.mjs'
import { identify, isAlive } from './processes.mjs'

/**
 * Makes this process the only user of a data folder until it ends. A claim left by a process that is gone counts for nothing.
 * @param {string} folder
 * @returns {() => void} gives the folder back
 */
export function claim(folder) {
  const file = path.join(folder, 'in-use.json')
  for (;;) {
    try {
      fs.writeFileSync(file, JSON.stringify(identify(process.pid)), { flag: 'wx', mode: 0o600 })
      return () => fs.rmSync(file, { force: true })
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error
    }
    const holder = claimant(folder)
    if (isAlive(holder)) throw new Failure(`${folder} is in use by process ${holder?.pid}: stop that one first (Ctrl-C in its window, or kill ${holder?.pid}).`)
    fs.rmSync(file, { force: true })
  }
}

/** Who claims a folder, living or not. @param {string} folder @returns {import('./processes.mjs').Identity | null} */
export function claimant(folder) {
  try {
    return JSON.parse(fs.readFileSync(path.join(folder, 'in-use.json'), 'utf8'))
  } catch {
    return null
  }
}

// What every command needs before its own work: the packages of the lockfile, the generated database client, a production build.
// Generating and building leave a stamp of what they were made from and are skipped while that is unchanged.
import './node-version.cjs'
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { explain, Failure, ROOT } from './failure.mjs'
import { endWithUs } from './processes.mjs'

const SCHEMA = ['prisma/schema.prisma', 'prisma/models']
const at = (...parts) => path.join(ROOT, ...parts)

/** Installs and generates what is missing or out of date. @param {{ say?: (line: string) => void }} [options] */
export async function prepare({ say = console.log } = {}) {
  if (!isInstalled()) {
    say('Installing the packages of package-lock.json (a few minutes the first time) ...')
    await command('npm', ['ci', '--no-audit', '--no-fund'], { say })
  }
  await step(at('prisma/generated/.toeline-generated'), hashOf([...SCHEMA, 'package-lock.json']), async () => {
    // Any file that exists keeps Prisma from downloading a program that generating does not use.
    await command(process.execPath, [at('node_modules/prisma/build/index.js'), 'generate', '--no-hints'], {
      say, env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' },
    })
  })
}

/** Makes the production build, unless the one that is there was made from the same sources. Call prepare() first. @param {{ say?: (line: string) => void }} [options] */
export async function build({ say = console.log } = {}) {
  const sources = ['app', 'lib', 'public', ...SCHEMA, 'proxy.ts', 'instrumentation.ts', 'next.config.mjs', 'postcss.config.mjs', 'tsconfig.json', 'package-lock.json']
  await step(at('.next/toeline-built'), hashOf(sources), async () => {
    say('Building the application (about a minute) ...')
    fs.rmSync(at('.next/BUILD_ID'), { force: true })
    await command(process.execPath, [at('node_modules/next/dist/bin/next'), 'build'], { say, env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' } })
  })
}

// npm writes down what it has installed when it is done; that must be what the lockfile asks for.
function isInstalled() {
  if (!fs.existsSync(at('node_modules/.package-lock.json'))) return false
  const packagesOf = (file) => JSON.parse(fs.readFileSync(at(file), 'utf8')).packages
  const installed = packagesOf('node_modules/.package-lock.json')
  return Object.entries(packagesOf('package-lock.json')).every(([name, wanted]) => {
    const present = installed[name]
    if (name === '') return true
    if (!present) return wanted.optional || wanted.devOptional
    return present.version === wanted.version && present.integrity === wanted.integrity
  })
}

async function step(stamp, hash, work) {
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, 'utf8') === hash) return
  fs.rmSync(stamp, { force: true })
  await work()
  fs.writeFileSync(stamp, hash)
}

/** A fingerprint of files and folders: names and contents, not times. @param {string[]} names relative to the checkout; missing ones count as missing */
function hashOf(names) {
  const hash = createHash('sha256').update(process.version.split('.')[0] ?? '')
  const visit = (file) => {
    if (!fs.existsSync(file)) return
    if (!fs.statSync(file).isDirectory()) {
      hash.update(`${path.relative(ROOT, file)}\0`).update(fs.readFileSync(file)).update('\0')
      return
    }
    for (const name of fs.readdirSync(file).sort()) if (name !== 'generated') visit(path.join(file, name))
  }
  names.forEach((name) => visit(at(name)))
  return hash.digest('hex')
}

// Quiet when it works; the whole output when it does not.
function command(program, args, { say, env = process.env }) {
  return new Promise((resolve, reject) => {
    const child = endWithUs(spawn(program, args, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'pipe'] }))
    let output = ''
    child.stdout.on('data', (chunk) => (output += chunk))
    child.stderr.on('data', (chunk) => (output += chunk))
    child.on('error', (error) => reject(explain(error, ROOT) ?? error))
    child.on('close', (code, signal) => {
      if (code === 0) return resolve(undefined)
      const known = explain(/ENOSPC/.test(output) ? 'no space left on device' : /EACCES|EROFS/.test(output) ? 'permission denied' : '', ROOT)
      if (!known) say(output.trimEnd())
      reject(known ?? new Failure(`${path.basename(program)} ${args.map((arg) => path.basename(arg)).join(' ')} failed (${signal ?? `code ${code}`}): what it said is above.`))
    })
  })
}

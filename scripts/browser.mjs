// Finds a Chromium for the end-to-end tests, or gets one, or says how to get one.
import './node-version.cjs'
import fs from 'node:fs'
import path from 'node:path'
import { Failure, ROOT } from './failure.mjs'
import { finish, startApart } from './processes.mjs'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']
const MAC = ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium']

/** Root needs --no-sandbox; the rest keeps the browser from calling home. */
export const BROWSER_FLAGS = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic', '--disable-dev-shm-usage',
]

/**
 * The path of a Chromium that runs.
 * @param {{ get?: boolean, say?: (line: string) => void }} [options] get: whether one may be downloaded or installed
 * @returns {Promise<string>}
 */
export async function findBrowser({ get = false, say = console.log } = {}) {
  const named = process.env.CHROMIUM_PATH
  if (named) {
    if (await runs(named)) return named
    throw new Failure(`CHROMIUM_PATH is ${named}, and that is no browser that runs here.`)
  }
  const present = await firstThatRuns([...onPath(), ...MAC, await playwrights()])
  if (present) return present
  const got = get ? ((await download(say)) ?? (await installDebian(say))) : null
  if (got) return got
  throw new Failure('There is no Chromium for the end-to-end tests: install one (on Debian or Ubuntu: apt-get install chromium; elsewhere: npx playwright install --with-deps chromium), or set CHROMIUM_PATH to one.')
}

const onPath = () => NAMES.flatMap((name) => (process.env.PATH ?? '').split(path.delimiter).map((folder) => path.join(folder, name)))

async function playwrights() {
  const { chromium } = await import('@playwright/test')
  return chromium.executablePath()
}

async function firstThatRuns(places) {
  for (const place of places) if (await runs(place)) return place
  return null
}

async function runs(place) {
  if (!place || !fs.existsSync(place)) return false
  try {
    const { code, output } = await finish(place, ['--version'], { timeout: 20_000 })
    return code === 0 && /chrom/i.test(output)
  } catch {
    return false
  }
}

async function download(say) {
  say('Looking for a browser: none installed, trying Playwright\'s own download ...')
  const cli = path.join(ROOT, 'node_modules/@playwright/test/cli.js')
  await limited(process.execPath, [cli, 'install', 'chromium'], 4 * 60_000)
  return firstThatRuns([await playwrights()])
}

async function installDebian(say) {
  if (process.getuid?.() !== 0 || !fs.existsSync('/usr/bin/apt-get')) return null
  say('That did not work; installing the package chromium with apt-get ...')
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  await limited('/usr/bin/apt-get', ['update', '-qq'], 2 * 60_000, env)
  await limited('/usr/bin/apt-get', ['install', '-y', '-qq', '-o', 'DPkg::Lock::Timeout=120', '--no-install-recommends', 'chromium', 'fonts-liberation'], 6 * 60_000, env)
  return firstThatRuns(onPath())
}

/** Runs to the end or for a time; what it printed is shown only when it did not go well. */
function limited(command, args, milliseconds, env = process.env) {
  return new Promise((resolve) => {
    const child = startApart(command, args, { stdio: ['ignore', 'pipe', 'pipe'], env })
    let output = ''
    child.stdout?.on('data', (chunk) => (output += chunk))
    child.stderr?.on('data', (chunk) => (output += chunk))
    const timer = setTimeout(() => child.pid && process.kill(-child.pid, 'SIGKILL'), milliseconds)
    child.on('error', () => resolve(undefined))
    child.on('close', (code) => {
      clearTimeout(timer)
      if (code !== 0) console.log(output.trimEnd().split('\n').slice(-5).join('\n'))
      resolve(undefined)
    })
  })
}

// npm test: everything that must hold, one part after the other, all of them even when one fails.
//   node scripts/test.mjs [unit | e2e | lint | typecheck] [arguments for that part's runner]
// The last line is the count: `N passed, N failed`.
import './node-version.cjs'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { findBrowser } from './browser.mjs'
import { Failure, ROOT, run } from './failure.mjs'
import { build, prepare } from './prepare.mjs'
import { identify, startApart, stopGroup } from './processes.mjs'
import { fromExitCode, fromPlaywright, fromVitest } from './test-counts.mjs'

const MINUTE = 60_000
/** Longer than any of the tools takes on two slow cores; one that hangs is stopped. */
const PATIENCE_MINUTES = 20
const scratch = fs.mkdtempSync(path.join(os.tmpdir(), 'toeline-test-'))
const bin = (name) => path.join(ROOT, 'node_modules', name)

/**
 * One part of the run: answers its counts.
 * @typedef {import('./test-counts.mjs').Counts} Counts
 * @type {Record<string, (rest: string[]) => Promise<Counts>>}
 */
const parts = {
  lint: async (rest) => fromExitCode(await tool(bin('eslint/bin/eslint.js'), rest.length > 0 ? rest : ['.'])),
  typecheck: async (rest) => {
    await tool(bin('next/dist/bin/next'), ['typegen']) // the types of the routes, which only Next knows
    return fromExitCode(await tool(bin('typescript/bin/tsc'), ['--noEmit', '--pretty', 'false', '-p', 'tsconfig.check.json', ...rest]))
  },
  unit: async (rest) => {
    const report = path.join(scratch, 'vitest.json')
    const code = await tool(bin('vitest/vitest.mjs'), ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...rest])
    return fromVitest(readReport(report), code)
  },
  e2e: async (rest) => {
    const browser = await findBrowser({ get: true })
    await build()
    const report = path.join(scratch, 'playwright.json')
    const env = { CHROMIUM_PATH: browser, PLAYWRIGHT_JSON_OUTPUT_NAME: report }
    const code = await tool(bin('@playwright/test/cli.js'), ['test', '--reporter=list,json', ...rest], env)
    return fromPlaywright(readReport(report), code)
  },
}

/** Runs a program of node_modules to its end, printing as it goes; 1 when it does not end in time. */
async function tool(script, args, env = {}) {
  const child = startApart(process.execPath, [script, ...args], { cwd: ROOT, env: { ...process.env, CI: 'true', FORCE_COLOR: '0', NEXT_TELEMETRY_DISABLED: '1', ...env } })
  const identity = identify(Number(child.pid))
  const onExit = () => child.pid && process.kill(-child.pid, 'SIGTERM')
  process.once('exit', onExit)
  const timer = setTimeout(() => {
    console.error(`${path.basename(script)} did not end within ${PATIENCE_MINUTES} minutes and is stopped.`)
    void stopGroup(identity)
  }, PATIENCE_MINUTES * MINUTE)
  const code = await new Promise((resolve, reject) => child.once('error', reject).once('close', resolve))
  clearTimeout(timer)
  process.off('exit', onExit)
  return code ?? 1
}

function readReport(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

/** A part that breaks down counts as one failure and does not keep the others from running. */
async function count(name, rest) {
  console.log(`\n== ${name}`)
  const began = Date.now()
  let counts
  try {
    counts = await parts[name]?.(rest)
  } catch (error) {
    console.error(error instanceof Failure ? error.message : error)
  }
  const { passed, failed, notes } = counts ?? { passed: 0, failed: 1, notes: [`${name} did not run`] }
  for (const note of notes) console.log(note)
  console.log(`-- ${name}: ${passed} passed, ${failed} failed (${Math.round((Date.now() - began) / 1000)} s)`)
  return { passed, failed }
}

await run(async () => {
  const [asked, ...rest] = process.argv.slice(2)
  if (asked !== undefined && !(asked in parts)) throw new Failure(`The parts of the tests are ${Object.keys(parts).join(', ')}; ${asked} is none of them.`)
  const totals = { passed: 0, failed: 0 }
  try {
    await prepare()
    for (const name of asked === undefined ? Object.keys(parts) : [asked]) {
      const { passed, failed } = await count(name, rest)
      totals.passed += passed
      totals.failed += failed
    }
  } catch (error) {
    console.error(error instanceof Failure ? error.message : error)
    totals.failed += 1
  }
  fs.rmSync(scratch, { recursive: true, force: true })
  process.exitCode = totals.failed === 0 && totals.passed > 0 ? 0 : 1
  console.log(`\n${totals.passed} passed, ${totals.failed} failed`)
})

// npm run bench -- NAME: runs scripts/bench/NAME.ts and prints its rows as `name: value unit`.
import './node-version.cjs'
import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { Failure, ROOT, run } from './failure.mjs'
import { prepare } from './prepare.mjs'
import { endWithUs } from './processes.mjs'

const FOLDER = path.join(import.meta.dirname, 'bench')
const TYPESCRIPT = ['--conditions=react-server', '--import', 'tsx']

function fileOf(name) {
  const names = fs.existsSync(FOLDER) ? fs.readdirSync(FOLDER).filter((file) => file.endsWith('.ts')).map((file) => path.basename(file, '.ts')).sort() : []
  if (name && names.includes(name)) return path.join(FOLDER, `${name}.ts`)
  throw new Failure(`${name ? `There is no benchmark ${name}` : 'Name a benchmark, as in npm run bench -- NAME'}: there ${names.length === 1 ? 'is' : 'are'} ${names.join(', ') || 'none yet'}.`)
}

/** @param {import('./bench-row').BenchRow} row */
function print({ name, value, unit }) {
  if (!Number.isFinite(value)) throw new Failure(`The benchmark's row ${name} has no number: ${value}.`)
  console.log(`${name}: ${Number.isInteger(value) ? value : Number(value.toPrecision(4))} ${unit}`)
}

async function benchmark(file) {
  const { default: bench } = await import(pathToFileURL(file).href)
  let rows = 0
  for await (const row of await bench()) {
    print(row)
    rows += 1
  }
  if (rows === 0) throw new Failure('The benchmark gave no rows.')
}

// TypeScript needs Node to be started with its loader, so the second half of this file runs in a process of its own.
function again(name) {
  return new Promise((resolve, reject) => {
    const child = endWithUs(spawn(process.execPath, [...TYPESCRIPT, import.meta.filename, name], { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] }))
    child.on('error', reject)
    child.on('close', (code) => resolve(process.exitCode = code ?? 1))
  })
}

await run(async () => {
  const name = process.argv[2]
  const file = fileOf(name)
  if (process.execArgv.includes('tsx')) {
    await benchmark(file)
    process.exit(0) // whatever a benchmark left open must not keep the command alive
  }
  await prepare()
  await again(name)
})

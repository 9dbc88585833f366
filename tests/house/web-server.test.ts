import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { explain } from '../../scripts/failure.mjs'
import { gone, identify } from '../../scripts/processes.mjs'
import { checkPort, readPort, rememberedSecret } from '../../scripts/web.mjs'

const scripts = path.resolve(import.meta.dirname, '../../scripts')
const run = (...args: string[]): Promise<{ code: number | null; errors: string }> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, DATABASE_URL: '' } })
    let errors = ''
    child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()))
    child.on('close', (code) => resolve({ code, errors: errors.trim() }))
  })

describe('a taken port', () => {
  it('is said in one sentence that names the way out, before anything is built', async () => {
    const other = net.createServer()
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
    const { port } = other.address() as net.AddressInfo
    await expect(checkPort(port, '127.0.0.1', 'npm run demo --')).rejects.toThrow(`Port ${port} is taken by another program: stop that one, or choose another port with --port, for example npm run demo -- --port ${port + 1}`)
    expect(await run(path.join(scripts, 'demo.mjs'), '--port', String(port))).toEqual({
      code: 1,
      errors: `Port ${port} is taken by another program: stop that one, or choose another port with --port, for example npm run demo -- --port ${port + 1}`,
    })
    await new Promise((resolve) => other.close(resolve))
    await expect(checkPort(port, '127.0.0.1', 'npm run demo --')).resolves.toBeUndefined()
  })

  it.each(['0', '65536', '80.5', 'web', '-1'])('is not confused with a wrong one: %s', (text) => {
    expect(() => readPort(text, 3000)).toThrow(`A port is a number from 1 to 65535, and ${text} is not one.`)
  })

  it('is 3000 when none is asked for', () => {
    expect(readPort(undefined, 3000)).toBe(3000)
    expect(readPort('8080', 3000)).toBe(8080)
  })
})

describe('the commands', () => {
  it('say what start needs', async () => {
    const { code, errors } = await run(path.join(scripts, 'start.mjs'))
    expect(code).toBe(1)
    expect(errors).toMatch(/^Set DATABASE_URL to a PostgreSQL 15 or newer, .* npm run demo brings its own\.$/)
  })

  it('say what demo knows', async () => {
    expect((await run(path.join(scripts, 'demo.mjs'), '--frehs')).errors).toMatch(/^npm run demo knows --fresh \(begin anew\) and --port N/)
  })

  it('refuse an old Node with a sentence', async () => {
    const pretend = "Object.defineProperty(process.versions, 'node', { value: '18.20.4' })"
    const { code, errors } = await run('--import', `data:text/javascript,${encodeURIComponent(pretend)}`, path.join(scripts, 'run.cjs'), 'demo')
    expect(code).toBe(1)
    expect(errors).toBe('Toeline needs Node 20.19 or newer and this is Node 18.20.4: install a newer Node (24 is a good choice) and try again.')
  })
})

describe('the web server', () => {
  it('ends when the process that started it is killed', async () => {
    const server = "require('http').createServer(() => {}).listen(0, () => console.log(process.pid))"
    const parent = spawn(process.execPath, ['--input-type=module', '-e', `
      import { startApart } from '${scripts}/processes.mjs'
      startApart(process.execPath, ['--import', '${scripts}/leash.mjs', '-e', ${JSON.stringify(server)}], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'], env: { ...process.env, TOELINE_LEASHED_BY: String(process.pid) } })
    `], { stdio: ['ignore', 'pipe', 'inherit'] })
    const pid = await new Promise<number>((resolve) => parent.stdout.once('data', (chunk: Buffer) => resolve(Number(chunk.toString()))))
    const identity = identify(pid)
    expect(identity).not.toBeNull()
    parent.kill('SIGKILL')
    expect(identity !== null && (await gone(identity, 10_000))).toBe(true)
  })

  it('signs sessions with a key that only its owner can read and that stays the same', () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'toeline-secret-'))
    const first = rememberedSecret(folder)
    expect(first.isNew).toBe(true)
    expect(first.secret.length).toBeGreaterThanOrEqual(64)
    expect(statSync(first.file).mode & 0o777).toBe(0o600)
    expect(rememberedSecret(folder)).toEqual({ ...first, isNew: false })
    rmSync(folder, { recursive: true })
  })
})

describe('what the operating system says', () => {
  it.each([
    [Object.assign(new Error('x'), { code: 'ENOSPC' }), 'The disk that holds /data is full'],
    ['could not write to file "base/1/2": No space left on device', 'The disk that holds /data is full'],
    [Object.assign(new Error('x'), { code: 'EACCES' }), '/data cannot be written by this account'],
    ['initdb: error: could not change permissions of directory: Permission denied', '/data cannot be written by this account'],
    [Object.assign(new Error('x'), { code: 'EROFS' }), '/data is on a read-only disk'],
  ])('becomes a sentence to act on: %s', (error, sentence) => {
    expect(explain(error, '/data')?.message).toContain(sentence)
  })

  it('stays what it is when it is something else', () => {
    expect(explain(new Error('connection refused'), '/data')).toBeNull()
  })
})

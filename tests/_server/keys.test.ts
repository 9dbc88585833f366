import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'

/** Tables that belong to no program: their keys are their own. Adding one here is a decision, not a fix for this test. */
const GLOBAL = ['Program', 'RateLimit', '_prisma_migrations']

type Key = { table: string; key: string; kind: 'primary key' | 'unique' | 'index' | 'foreign key'; columns: string[]; target: string | null; targets: string[] | null }

const INDEXES = `
  select t.relname as "table", i.relname as "key", null as target, null as targets,
    case when x.indisprimary then 'primary key' when x.indisunique then 'unique' else 'index' end as kind,
    array(select coalesce(a.attname::text, '(expression)') from unnest(x.indkey) with ordinality k(number, place)
      left join pg_attribute a on a.attrelid = t.oid and a.attnum = k.number order by k.place) as columns
  from pg_index x join pg_class t on t.oid = x.indrelid join pg_class i on i.oid = x.indexrelid
  where t.relnamespace = 'public'::regnamespace`

const FOREIGN_KEYS = `
  select t.relname as "table", c.conname as "key", 'foreign key' as kind, r.relname as target,
    array(select a.attname::text from unnest(c.conkey) with ordinality k(number, place)
      join pg_attribute a on a.attrelid = c.conrelid and a.attnum = k.number order by k.place) as columns,
    array(select a.attname::text from unnest(c.confkey) with ordinality k(number, place)
      join pg_attribute a on a.attrelid = c.confrelid and a.attnum = k.number order by k.place) as targets
  from pg_constraint c join pg_class t on t.oid = c.conrelid join pg_class r on r.oid = c.confrelid
  where c.contype = 'f' and t.relnamespace = 'public'::regnamespace`

let database: TestDatabase
beforeAll(async () => {
  database = await testDatabase()
})

const keysOfTenants = async (): Promise<Key[]> => {
  const all = [...(await database.query<Key>(INDEXES)), ...(await database.query<Key>(FOREIGN_KEYS))]
  return all.filter(({ table }) => !GLOBAL.includes(table))
}

// A foreign key must carry programId from end to end: to another tenant's table as its programId, to Program as its id.
const beginsWithProgram = ({ columns, target, targets }: Key): boolean =>
  columns[0] === 'programId' && (targets === null || targets[0] === (target === 'Program' ? 'id' : 'programId'))

const violations = async (): Promise<string[]> =>
  (await keysOfTenants()).filter((key) => !beginsWithProgram(key)).map(({ table, kind, key, columns }) => `${table}: ${kind} ${key} (${columns.join(', ')})`)

describe('tenant in the key', () => {
  it('begins every primary key, unique key, index and foreign key of a tenant table with programId', async () => {
    expect(await violations()).toEqual([])
  })

  it('finds a primary key on every table, so that no table escapes the rule by having none', async () => {
    const tables = await database.query<{ name: string }>("select tablename as name from pg_tables where schemaname = 'public'")
    const keyed = new Set((await database.query<Key>(INDEXES)).filter(({ kind }) => kind === 'primary key').map(({ table }) => table))
    expect(tables.length).toBeGreaterThan(15)
    expect(tables.map(({ name }) => name).filter((name) => !keyed.has(name))).toEqual([])
  })

  it('would tell of a table whose keys do not begin with programId', async () => {
    await database.query('create table "Stray" (id uuid primary key, "programId" uuid, code text unique, "personId" uuid)')
    await database.query('alter table "Stray" add foreign key ("personId", "programId") references "Person" (id, "programId")')
    const found = await violations()
    await database.query('drop table "Stray"')
    expect(found.sort()).toEqual([
      'Stray: foreign key Stray_personId_programId_fkey (personId, programId)',
      'Stray: primary key Stray_pkey (id)',
      'Stray: unique Stray_code_key (code)',
    ])
  })
})

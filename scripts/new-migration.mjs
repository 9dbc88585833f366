// Writes the SQL that leads from the migrations to the schema as a new migration:  node scripts/new-migration.mjs add-gauge-photos
// Read the SQL before committing it: a rename shows as a drop and an add.
import './node-version.cjs'
import fs from 'node:fs'
import path from 'node:path'
import { startThrowawayDatabase } from './database.mjs'
import { Failure, run } from './failure.mjs'
import { drift } from './migrate.mjs'
import { MIGRATIONS, writeLock } from './schema-engine.mjs'

await run(async () => {
  const name = process.argv[2] ?? ''
  if (!/^[a-z0-9]+([-_][a-z0-9]+)*$/.test(name)) throw new Failure('Name the migration in lower case with hyphens, for example: node scripts/new-migration.mjs add-gauge-photos')
  const database = await startThrowawayDatabase()
  try {
    const sql = await drift(database.url)
    if (sql === '') {
      console.log('The migrations already lead to the schema: nothing to write.')
      return
    }
    const stamp = new Date().toISOString().replaceAll(/\D/g, '').slice(0, 14)
    const folder = path.join(MIGRATIONS, `${stamp}_${name.replaceAll('-', '_')}`)
    writeLock()
    fs.mkdirSync(folder)
    fs.writeFileSync(path.join(folder, 'migration.sql'), `${sql}\n`)
    console.log(`Wrote ${path.relative(process.cwd(), path.join(folder, 'migration.sql'))}. Read it before committing it.`)
  } finally {
    await database.stop()
  }
})

// The production build with a small invented school, for the end-to-end tests: everything it keeps is gone when it ends.
import './node-version.cjs'
import path from 'node:path'
import { startThrowawayDatabase } from './database.mjs'
import { Failure, run } from './failure.mjs'
import { build, prepare } from './prepare.mjs'
import { migrateAndSeed } from './seed.mjs'
import { keepRunning, startWeb } from './web.mjs'

await run(async () => {
  const port = Number(process.env.TOELINE_E2E_PORT)
  if (!port) throw new Failure('Playwright starts this server itself: run npm run test:e2e.')
  await prepare()
  await build()
  const database = await startThrowawayDatabase()
  const folder = path.dirname(database.cluster)
  const env = {
    TZ: 'UTC', DATABASE_URL: database.url, TOELINE_DATA: folder, LOG_LEVEL: 'warn',
    NEXTAUTH_URL: `http://127.0.0.1:${port}`, NEXTAUTH_SECRET: 'only for the end-to-end tests of this machine',
  }
  await migrateAndSeed(database, { folder, env, small: true })
  const web = await startWeb({ mode: 'start', host: '127.0.0.1', port, env })
  await keepRunning([web, database])
})

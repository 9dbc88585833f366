// npm run dev [-- --port N]: the application for working on it, with the invented school in a database of its own.
import './node-version.cjs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { DATA, startDatabase } from './database.mjs'
import { run } from './failure.mjs'
import { prepare } from './prepare.mjs'
import { migrateAndSeed } from './seed.mjs'
import { checkPort, keepRunning, readPort, rememberedSecret, startWeb } from './web.mjs'

const HOST = '127.0.0.1'
const folder = path.join(DATA, 'dev')

await run(async () => {
  const { port: asked } = parseArgs({ options: { port: { type: 'string' } } }).values
  const port = readPort(asked ?? process.env.PORT, 3000)
  await checkPort(port, HOST, 'npm run dev --')
  await prepare()
  const database = await startDatabase({ folder })
  const address = `http://localhost:${port}`
  const env = { NEXTAUTH_URL: address, NEXTAUTH_SECRET: rememberedSecret(folder).secret, DATABASE_URL: database.url, TOELINE_DATA: folder }
  const signIns = await migrateAndSeed(database, { folder, env })
  console.log(`DATABASE_URL=${database.url}\n\n${signIns}\n`)
  const web = await startWeb({ mode: 'dev', host: HOST, port, env })
  await keepRunning([web, database])
})

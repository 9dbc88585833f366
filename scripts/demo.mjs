// npm run demo [-- --fresh] [-- --port N]: the whole application with an invented school, on this machine only.
import './node-version.cjs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { DATA, removeDatabase, startDatabase } from './database.mjs'
import { Failure, run } from './failure.mjs'
import { build, prepare } from './prepare.mjs'
import { migrateAndSeed } from './seed.mjs'
import { checkPort, keepRunning, readPort, rememberedSecret, startWeb } from './web.mjs'

const HOST = '127.0.0.1'
const folder = path.join(DATA, 'demo')

function readOptions() {
  try {
    return parseArgs({ options: { fresh: { type: 'boolean', default: false }, port: { type: 'string' } } }).values
  } catch {
    throw new Failure('npm run demo knows --fresh (begin anew) and --port N, as in: npm run demo -- --fresh --port 3001')
  }
}

await run(async () => {
  const { fresh, port: asked } = readOptions()
  const port = readPort(asked ?? process.env.PORT, 3000)
  await checkPort(port, HOST, 'npm run demo --')
  await prepare()
  await build()
  if (fresh) await removeDatabase(folder)

  const database = await startDatabase({ folder })
  const address = `http://localhost:${port}`
  const env = { NEXTAUTH_URL: address, NEXTAUTH_SECRET: rememberedSecret(folder).secret, DATABASE_URL: database.url, TOELINE_DATA: folder }
  const signIns = await migrateAndSeed(database, { folder, env })
  const web = await startWeb({ mode: 'start', host: HOST, port, env, log: path.join(folder, 'server.log') })
  console.log(`\n${signIns}\n\nToeline is ready at ${address}\nCtrl-C stops it; the data stay. npm run demo -- --fresh begins anew.`)
  await keepRunning([web, database])
  console.log('Stopped.')
})

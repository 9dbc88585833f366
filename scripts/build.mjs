import './node-version.cjs'
import { run } from './failure.mjs'
import { build, prepare } from './prepare.mjs'

await run(async () => {
  await prepare()
  await build()
})

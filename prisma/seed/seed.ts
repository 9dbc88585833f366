// Fills an empty, migrated database with an invented welding school that looks alive at this moment:
//   DATABASE_URL=... TOELINE_DATA=... node --conditions=react-server --import tsx prisma/seed/seed.ts [--small] [--as-of 2026-11-25T18:40:00Z]
// Prints the sign-ins, and writes them to the file named by TOELINE_SIGN_INS when that is set.
import { randomBytes } from 'node:crypto'
import { writeFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import { db } from '@/app/_server/db'
import { env } from '@/app/_server/env'
import { NotEmpty, seedDatabase } from './seed-database'
import { signInText } from './sign-ins'

function readOptions(): { small: boolean; asOf: Date } {
  const { values } = parseArgs({ options: { small: { type: 'boolean', default: false }, 'as-of': { type: 'string' } } })
  const asOf = values['as-of'] === undefined ? new Date() : new Date(values['as-of'])
  if (Number.isNaN(asOf.getTime())) throw new RangeError('--as-of takes a moment such as 2026-11-25T18:40:00Z.')
  return { small: values.small, asOf: new Date(asOf.setUTCMilliseconds(0)) }
}

async function main(): Promise<void> {
  const { small, asOf } = readOptions()
  // The server's settings are checked as a whole; seeding signs nobody in, so these two only have to be well-formed.
  process.env.NEXTAUTH_SECRET ||= randomBytes(32).toString('hex')
  process.env.NEXTAUTH_URL ||= 'http://localhost:3000'
  const folder = env().TOELINE_DATA
  try {
    await seedDatabase({ asOf, small, folder, say: (line) => console.error(line) })
  } finally {
    await db().$disconnect()
  }
  const text = signInText(small)
  const file = process.env.TOELINE_SIGN_INS
  if (file) await writeFile(file, `${text}\n`, { mode: 0o600 })
  console.log(text)
}

main().catch((error: unknown) => {
  console.error(error instanceof NotEmpty || error instanceof RangeError ? error.message : error)
  process.exitCode = 1
})

import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import { Prisma, PrismaClient } from '@/prisma/generated/client'
import { env } from './env'

const held = globalThis as { toelineDatabase?: PrismaClient; toelineTables?: string }
const tables = Object.keys(Prisma.ModelName).join(' ')

/** A whole class sends at the same moment, and those behind wait for those before: patience before failure, in milliseconds. */
const PATIENCE = { maxWait: 15_000, timeout: 20_000 }

function connect(): PrismaClient {
  return new PrismaClient({ adapter: new PrismaPg({ connectionString: env().DATABASE_URL, max: 10 }), transactionOptions: PATIENCE })
}

/** The one database client of the process; kept over hot reloads so that development does not run out of connections. */
export function db(): PrismaClient {
  // In development the client may be generated anew under a running server: the one held would not know a new table.
  if (!held.toelineDatabase || held.toelineTables !== tables) held.toelineDatabase = connect()
  held.toelineTables = tables
  return held.toelineDatabase
}

/** What a transaction's callback receives: the client without the calls that make no sense inside one. */
export type Transaction = Parameters<Parameters<PrismaClient['$transaction']>[0]>[0]

/** Whether a write failed because a row of its unique key is there already: someone else was quicker, or the name is taken. */
export const isTaken = (error: unknown): boolean => error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002'

// For Prisma's own command line (prisma generate, prisma migrate deploy); the project's scripts do not need it.
import path from 'node:path'
import { defineConfig } from 'prisma/config'

export default defineConfig({
  schema: path.join('prisma'),
  migrations: { path: path.join('prisma', 'migrations') },
  ...(process.env.DATABASE_URL ? { datasource: { url: process.env.DATABASE_URL } } : {}),
})

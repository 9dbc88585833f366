// Once per run of the server tests: a throw-away PostgreSQL with one migrated database to clone.
import type { TestProject } from 'vitest/node'
import { startThrowawayDatabase } from '../../scripts/database.mjs'
import { migrate } from '../../scripts/migrate.mjs'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the migrated template database and of `postgres`, from which databases are made and dropped. */
    databaseServer: { template: string; maintenance: string }
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startThrowawayDatabase()
  try {
    await migrate(server.url)
  } catch (error) {
    await server.stop()
    throw error
  }
  project.provide('databaseServer', { template: server.url, maintenance: server.urlOf('postgres') })
  return server.stop
}

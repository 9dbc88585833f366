import { describe, expect, it } from 'vitest'
import { drift } from '../../scripts/migrate.mjs'
import { testDatabase } from '../support/database'

describe('schema and migrations', () => {
  it('agree: the migrations lead to the schema, and there is nothing left to migrate', async () => {
    const { url } = await testDatabase()
    expect(await drift(url)).toBe('')
  })
})

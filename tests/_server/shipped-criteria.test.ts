// A release's new criteria reach programs that were set up before it, and change nothing that is there.
import { randomUUID } from 'node:crypto'
import { beforeAll, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool } from '../support/school'
import { addShippedCriteria } from '@/app/_server/data/program'
import { db } from '@/app/_server/db'
import { allCriteria } from '@/lib/criteria/catalogue'

beforeAll(async () => {
  await testDatabase()
})

it('adds what a program lacks, once, and leaves what it has', async () => {
  const { programId } = await buildSchool(randomUUID())
  const older = { programId, id: 'iso5817-c', version: 1, title: 'As it was', document: { kept: true } }
  await db().criteriaSet.create({ data: older })
  await addShippedCriteria()
  const rows = await db().criteriaSet.findMany({ where: { programId } })
  for (const { id, version } of allCriteria()) expect(rows).toContainEqual(expect.objectContaining({ id, version }))
  expect(rows).toContainEqual(expect.objectContaining({ id: 'iso5817-c', version: 1, title: 'As it was', document: { kept: true } }))
  expect(await addShippedCriteria()).toBe(0)
  expect(await db().criteriaSet.count({ where: { programId } })).toBe(rows.length)
})

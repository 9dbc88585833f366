// The access matrix: every exported data function and every action, as every kind of person. A new export missing here fails.
import { randomUUID } from 'node:crypto'
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, couponForm, logAs, viewerOf, cleanReadings, type School } from '../support/school'
import { headersModule, requestFrom } from '../support/request'
import type { Viewer } from '@/app/_server/auth/viewer'
import { Refusal } from '@/app/_server/refusal'
import { DATA_ROWS, INTERNAL } from './access/data-rows'
import { ACTION_ROWS } from './access/action-rows'
import type { Fixture, Person } from './access/fixture'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

const dataModules = import.meta.glob<Record<string, unknown>>('../../app/_server/data/*.ts')
const actionModules = import.meta.glob<Record<string, unknown>>('../../app/**/actions.ts')
const nameOf = (path: string): string => path.split('/').at(-1)?.replace(/\.ts$/, '') ?? path

const PEOPLE = [
  'student', 'classmate', 'otherStudent', 'instructor', 'otherInstructor', 'coordinator',
  'foreign student', 'foreign instructor', 'foreign coordinator',
] as const satisfies readonly Person[]

let fixture: Fixture

async function build(): Promise<Fixture> {
  await testDatabase()
  const school = await buildSchool('north')
  const foreign = await buildSchool('south')
  const viewers = {} as Record<Person, Viewer>
  for (const who of ['student', 'classmate', 'otherStudent', 'instructor', 'otherInstructor', 'coordinator'] as const) viewers[who] = await viewerOf(school, who)
  for (const who of ['student', 'instructor', 'coordinator'] as const) viewers[`foreign ${who}`] = await viewerOf(foreign, who)
  const couponId = randomUUID()
  await logAs(school, viewers.student, couponId)
  const foreignCouponId = randomUUID()
  await logAs(foreign, viewers['foreign student'], foreignCouponId)
  return { school, foreign, viewers, couponId, foreignCouponId }
}

/** What a refusal looks like from outside: nothing, an empty list, or NOT_FOUND. */
async function saw(work: () => Promise<unknown>): Promise<boolean> {
  try {
    const result = await work()
    if (result === null || result === undefined) return false
    if (Array.isArray(result)) return result.length > 0
    if (result instanceof Map) return result.size > 0
    return true
  } catch (error) {
    if (error instanceof Refusal && error.code === 'NOT_FOUND') return false
    throw error
  }
}

beforeAll(async () => {
  fixture = await build()
})
afterEach(() => requestFrom(null))

describe('the list is whole', () => {
  it('names every exported data function', async () => {
    const exported: string[] = []
    for (const [path, load] of Object.entries(dataModules)) {
      for (const [name, value] of Object.entries(await load())) if (typeof value === 'function') exported.push(`${nameOf(path)}.${name}`)
    }
    expect(exported.length).toBeGreaterThan(20)
    expect([...Object.keys(DATA_ROWS), ...Object.keys(INTERNAL)].sort()).toEqual(exported.sort())
  })

  it('names every action', async () => {
    const exported: string[] = []
    for (const [path, load] of Object.entries(actionModules)) {
      const room = path.replace('../../app/', '').replace('/actions.ts', '')
      for (const [name, value] of Object.entries(await load())) if (typeof value === 'function') exported.push(`${room}.${name}`)
    }
    expect(Object.keys(ACTION_ROWS).sort()).toEqual(exported.sort())
  })
})

describe.each(Object.entries(DATA_ROWS))('%s', (_name, row) => {
  it.each(PEOPLE)('as %s', async (who) => {
    if (row.fresh) fixture = await build()
    const expected = (row.seenBy as readonly Person[]).includes(who)
    expect(await saw(() => row.call(fixture.viewers[who], fixture)), `${who} should ${expected ? '' : 'not '}get through`).toBe(expected)
  })
})

describe.each(Object.entries(ACTION_ROWS))('%s', (_name, row) => {
  it.each([...PEOPLE, 'nobody'] as const)('as %s', async (who) => {
    if (row.open !== undefined) return expect(row.open.length).toBeGreaterThan(10) // open to strangers: the reason is written beside it
    if (row.fresh) fixture = await build()
    const school: School = who.startsWith('foreign') ? fixture.foreign : fixture.school
    const person = who === 'nobody' ? null : { school, who: who.replace('foreign ', '') as keyof School['people'] }
    await requestFrom(person)
    const result = await row.call(fixture)
    if (who === 'nobody') return expect(result).toMatchObject({ ok: false, code: 'SIGNED_OUT' })
    if ((row.allowed as readonly Person[]).includes(who)) return expect(result).toMatchObject({ ok: true })
    return expect(result).toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })
})

it('keeps the matrix honest: the fixture’s forms are good ones', () => {
  expect(couponForm(fixture.school, randomUUID()).readings.stations).toHaveLength(5)
  expect(cleanReadings().lookedFor.length).toBeGreaterThan(0)
  expect(headersModule.cookies).toBeTypeOf('function')
})

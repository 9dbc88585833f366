// The route that a device's queue sends coupons to: JSON in, JSON out, whatever is sent.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { countRows } from '../support/rows'
import { buildSchool, couponForm, viewerOf, type School } from '../support/school'
import { POST } from '@/app/api/intake/coupons/route'
import { findEditable, saveVersion } from '@/app/_server/data/exercise-versions'
import { blankReadings } from '@/lib/schemas/readings'
import { INDICATION_KINDS } from '@/lib/scoring/types'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  await requestFrom({ school, who: 'student' })
})

const OURS = { 'sec-fetch-site': 'same-origin', 'content-type': 'application/json' }
const post = (body: string | Buffer | ReadableStream<Uint8Array>, headers: Record<string, string> = OURS): Promise<Response> =>
  POST(new Request('http://localhost:3000/api/intake/coupons', { method: 'POST', headers, body: body as BodyInit, duplex: 'half' } as RequestInit))
const answerTo = async (body: string | Buffer | ReadableStream<Uint8Array>, headers?: Record<string, string>) => {
  const answer = await post(body, headers)
  expect(answer.headers.get('content-type')).toContain('application/json')
  expect(answer.headers.get('cache-control')).toBe('no-store')
  return { status: answer.status, body: (await answer.json()) as unknown }
}
const coupons = async (): Promise<number> => (await countRows(database, school.programId)).Coupon

describe('a coupon', () => {
  it('is taken, and taken once', async () => {
    const form = couponForm(school, randomUUID())
    expect(await answerTo(JSON.stringify(form))).toEqual({ status: 200, body: { ok: true, value: { id: form.id, number: 1, created: true } } })
    expect(await answerTo(JSON.stringify(form))).toEqual({ status: 200, body: { ok: true, value: { id: form.id, number: 1, created: false } } })
    expect(await coupons()).toBe(1)
  })

  it('as full as one can be fits', async () => {
    const box = '1/1000000000000000000000000000000000000'
    const form = couponForm(school, randomUUID(), {
      ...blankReadings([]),
      stations: Array.from({ length: 60 }, (_, index) => ({ ...Object.fromEntries(Object.keys(blankReadings(['']).stations[0]!).map((key) => [key, box])), at: `${index}.5 mm` })) as never,
      indications: Array.from({ length: 200 }, (_, index) => ({ kind: 'undercut' as const, toe: 'A' as const, at: `${index}.5 mm`, length: box, depth: box, diameter: box, height: box })),
      lookedFor: [...INDICATION_KINDS],
    })
    const full = { ...form, note: 'ñ'.repeat(1000), passes: Array.from({ length: 40 }, () => form.passes[0]) }
    expect(JSON.stringify(full).length).toBeGreaterThan(60_000)
    expect(await answerTo(JSON.stringify(full))).toMatchObject({ status: 200 })
  })

  it('with something wrong in it is told at its field', async () => {
    expect(await answerTo(JSON.stringify({ ...couponForm(school, randomUUID()), note: 'x'.repeat(1001) }))).toEqual({
      status: 422, body: { ok: false, code: 'INVALID', message: 'Some of this needs another look.', fields: { note: 'Keep it under 1000 characters.' } },
    })
  })

  it('without its cautions confirmed is told so by its own status', async () => {
    await database.query('delete from "SafetyAcknowledgement" where "programId" = $1', [school.programId])
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())))).toMatchObject({ status: 428, body: { ok: false, code: 'SAFETY' } })
    await database.query(`update "Person" set locale = 'es' where "programId" = $1`, [school.programId])
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())))).toMatchObject({ body: { message: 'Primero lee y confirma las precauciones de este ejercicio. Lo que escribiste se conserva.' } })
  })

  it('of a class one is not in looks like one that does not exist', async () => {
    expect(await answerTo(JSON.stringify({ ...couponForm(school, randomUUID()), classId: school.otherClassId }))).toEqual(await answerTo(JSON.stringify({ ...couponForm(school, randomUUID()), classId: randomUUID() })))
    expect(await answerTo('{}')).toMatchObject({ status: 404, body: { code: 'NOT_FOUND' } })
  })
})

describe('a coupon from a device’s queue', () => {
  const queued = (coupon: object, given: object = {}) =>
    JSON.stringify({ schema: 1, personId: school.people.student, sentAt: new Date().toISOString(), coupon, ...given })

  it('is taken once however often it is sent, also at the same moment', async () => {
    const form = couponForm(school, randomUUID())
    const answers = await Promise.all(Array.from({ length: 5 }, () => answerTo(queued(form))))
    expect(answers.map(({ status, body }) => [status, (body as { value: { number: number } }).value.number])).toEqual(Array.from({ length: 5 }, () => [200, 1]))
    expect(await coupons()).toBe(1)
  })

  it('keeps the order of its queue', async () => {
    const forms = Array.from({ length: 6 }, () => couponForm(school, randomUUID()))
    for (const form of forms) await answerTo(queued(form))
    expect(await database.query('select id, number from "Coupon" where "programId" = $1 order by number', [school.programId])).toEqual(forms.map(({ id }, index) => ({ id, number: index + 1 })))
  })

  it('is never taken under the name of someone else who signed in meanwhile', async () => {
    const form = couponForm(school, randomUUID())
    for (const who of ['classmate', 'instructor', 'coordinator'] as const) {
      await requestFrom({ school, who })
      expect(await answerTo(queued(form)), who).toMatchObject({ status: 409, body: { ok: false, code: 'OTHER_PERSON' } })
    }
    expect(await coupons()).toBe(0)
    await requestFrom({ school, who: 'student' })
    expect(await answerTo(queued(form))).toMatchObject({ status: 200 })
    expect(await database.query('select "studentId" from "Coupon" where id = $1', [form.id])).toEqual([{ studentId: school.people.student }])
  })

  it('is answered as arrived although its class has ended and its exercise has gone since', async () => {
    const form = couponForm(school, randomUUID())
    await answerTo(queued(form))
    await database.query('update "Class" set "archivedAt" = now() where "programId" = $1', [school.programId])
    expect(await answerTo(queued(form))).toEqual({ status: 200, body: { ok: true, value: { id: form.id, number: 1, created: false } } })
    expect(await answerTo(queued(couponForm(school, randomUUID())))).toMatchObject({ status: 409, body: { code: 'CONFLICT', message: expect.stringMatching(/archived/) as string } })
  })

  it('is judged by the version it was welded to, although its exercise was edited while it waited', async () => {
    const form = { ...couponForm(school, randomUUID()), exerciseVersion: 1 }
    const instructor = await viewerOf(school, 'instructor')
    const found = await findEditable(instructor, school)
    if (!found) throw new Error('The exercise is not to be edited.')
    const { id: _id, version: fromVersion, ...facts } = found.exercise
    await saveVersion(instructor, { ...school, fromVersion, facts: { ...facts, nominalLegMm: 12.7 } })
    expect(await answerTo(queued(form))).toMatchObject({ status: 200 })
    const later = couponForm(school, randomUUID())
    expect(await answerTo(queued(later))).toMatchObject({ status: 200 })
    expect(await database.query('select id, "exerciseVersion", "selfVerdict" from "Coupon" where "programId" = $1 order by number', [school.programId])).toEqual([
      { id: form.id, exerciseVersion: 1, selfVerdict: 'accept' }, { id: later.id, exerciseVersion: 2, selfVerdict: 'reject' },
    ])
  })

  it('typed before some boxes existed is taken, with nothing measured in them', async () => {
    const form = couponForm(school, randomUUID())
    const without = <T extends object>(row: T, ...keys: string[]) => Object.fromEntries(Object.entries(row).filter(([key]) => !keys.includes(key)))
    const old = { ...form, passes: form.passes.map((pass) => without(pass, 'stickOut')), readings: { ...form.readings, stations: form.readings.stations.map((row) => without(row, 'underfill', 'misalignment')) } }
    expect(await answerTo(JSON.stringify(old)), 'the form itself sends every box').toMatchObject({ status: 422 })
    expect(await answerTo(queued(old))).toMatchObject({ status: 200 })
    const [row] = await database.query<{ readings: { inspection: { stations: object[] } } }>('select readings from "Inspection" where "couponId" = $1', [form.id])
    for (const station of row!.readings.inspection.stations) expect(Object.keys(station)).not.toContain('underfillMm')
  })

  it('of a newer version than ours is told so and stays where it is', async () => {
    expect(await answerTo(queued(couponForm(school, randomUUID()), { schema: 2 }))).toMatchObject({
      status: 409, body: { code: 'CONFLICT', message: 'This coupon was logged with a newer version of the app than the server runs. It stays on this device; send it again later.' },
    })
    expect(await coupons()).toBe(0)
  })

  it('from a clock a day ahead is put at its real time, and the server’s own time orders it', async () => {
    const tomorrow = (minutes: number) => new Date(Date.now() + 24 * 3600_000 - minutes * 60_000).toISOString()
    const form = { ...couponForm(school, randomUUID()), weldedAt: tomorrow(40) }
    expect(await answerTo(queued(form, { sentAt: tomorrow(0) }))).toMatchObject({ status: 200 })
    const [row] = await database.query<{ minutes: number }>('select extract(epoch from "receivedAt" - "weldedAt") / 60 as minutes from "Coupon" where id = $1', [form.id])
    expect(Number(row!.minutes)).toBeGreaterThan(39)
    expect(Number(row!.minutes)).toBeLessThan(41)
  })

  it.each([['no envelope at all', { schema: 0 }], ['a key too many', { mark: 100 }], ['nobody’s name', { personId: 'me' }]])('with %s is no coupon', async (_what, given) => {
    expect(await answerTo(queued(couponForm(school, randomUUID()), given))).toMatchObject({ status: 404 })
    expect(await coupons()).toBe(0)
  })
})

describe('what is no coupon', () => {
  it.each(['', '{', 'coupon', '{"id":}', "{'id':1}", '\u0000', '[1,2', '<xml/>'])('is refused as JSON: %o', async (body) => {
    expect(await answerTo(body)).toMatchObject({ status: 422, body: { ok: false, code: 'INVALID' } })
  })

  it.each([['null', 'null'], ['a number', '7'], ['a list', '[]'], ['a text', '"coupon"'], ['a deep nest', `${'['.repeat(100_000)}${']'.repeat(100_000)}`], ['bytes that are no text', Buffer.from([0x22, 0xff, 0xfe, 0x22])]])(
    'is refused: %s', async (_what, body) => {
      expect(await answerTo(body)).toMatchObject({ status: 404, body: { ok: false, code: 'NOT_FOUND' } })
      expect(await coupons()).toBe(0)
    })

  it('is refused before it is read to the end when it is too large', async () => {
    let read = 0
    const endless = () => new ReadableStream<Uint8Array>({
      pull(controller) {
        read += 64 * 1024
        controller.enqueue(new Uint8Array(64 * 1024).fill(0x20))
        if (read >= 40 * 1024 * 1024) controller.close()
      },
    })
    expect(await answerTo(endless())).toMatchObject({ status: 413, body: { ok: false, code: 'TOO_LARGE' } })
    expect(read).toBeLessThan(1024 * 1024)
    read = 0
    expect(await answerTo(endless(), { ...OURS, 'content-length': '41943040' })).toMatchObject({ status: 413 })
    expect(read).toBeLessThanOrEqual(2 * 64 * 1024)
  })
})

describe('who may send', () => {
  it('is nobody signed out, who is answered in JSON and not sent to a page', async () => {
    await requestFrom(null)
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())))).toMatchObject({ status: 401, body: { ok: false, code: 'SIGNED_OUT' } })
    expect(await coupons()).toBe(0)
  })

  it.each([[{}], [{ 'sec-fetch-site': 'cross-site' }], [{ 'sec-fetch-site': 'same-site' }], [{ origin: 'https://evil.example' }]])('is nobody from another site: %o', async (headers) => {
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())), { 'content-type': 'application/json', ...headers })).toMatchObject({ status: 404 })
    expect(await coupons()).toBe(0)
  })

  it('is no instructor, and nobody whose password another person chose', async () => {
    await requestFrom({ school, who: 'instructor' })
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())))).toMatchObject({ status: 404 })
    await database.query('update "Person" set "mustChangePassword" = true where id = $1', [school.people.student])
    await requestFrom({ school, who: 'student' })
    expect(await answerTo(JSON.stringify(couponForm(school, randomUUID())))).toMatchObject({ status: 403, body: { code: 'NEW_PASSWORD' } })
    expect(await coupons()).toBe(0)
  })

  it('is told about an ended session, and the same coupon is taken after signing in again', async () => {
    const form = couponForm(school, randomUUID())
    await database.query('update "SignInSession" set "endedAt" = now() where "programId" = $1', [school.programId])
    expect(await answerTo(JSON.stringify(form))).toMatchObject({ status: 401 })
    await requestFrom({ school, who: 'student' })
    expect(await answerTo(JSON.stringify(form))).toMatchObject({ status: 200 })
  })
})

// Photos in an S3-compatible store: signed, whole or not at all, and served only through our own route. The store of the test works
// the signature out by itself.
import { createHash, randomUUID } from 'node:crypto'
import { readdir } from 'node:fs/promises'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { twoHalves } from '../support/pictures'
import { requestFrom } from '../support/request'
import { startStore, type TestStore } from '../support/s3-server'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let store: TestStore
let database: TestDatabase
let school: School
beforeAll(async () => {
  store = await startStore()
  database = await testDatabase()
  school = await buildSchool('stored')
})
afterAll(() => store.close())
beforeEach(() => {
  store.trouble = null
  store.objects.clear()
  store.seen.length = 0
  vi.resetModules()
})

const NAMES = ['ENDPOINT', 'BUCKET', 'REGION', 'ACCESS_KEY_ID', 'SECRET_ACCESS_KEY'] as const
type Name = (typeof NAMES)[number]
function environment(values: Partial<Record<Name, string>>): void {
  for (const name of NAMES) vi.stubEnv(`TOELINE_S3_${name}`, values[name] ?? '')
}
const whole = (): Record<Name, string> => ({
  ENDPOINT: store.settings.endpoint, BUCKET: store.settings.bucket, REGION: store.settings.region,
  ACCESS_KEY_ID: store.settings.accessKeyId, SECRET_ACCESS_KEY: store.settings.secretAccessKey,
})
const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')
const bytes = Buffer.from('a picture, as far as a store knows')
const key = (sha256: string): string => `/coupon-photos/photos/${sha256.slice(0, 2)}/${sha256}.webp`

describe('the store itself', () => {
  const open = async (changed: Partial<TestStore['settings']> = {}) => (await import('@/app/_server/photo-store-s3')).s3Store({ ...store.settings, ...changed })

  it('keeps a photo under its hash and gives it back whole', async () => {
    const photos = await open()
    await photos.put(hashOf(bytes), bytes)
    expect([...store.objects]).toEqual([[key(hashOf(bytes)), { bytes, type: 'image/webp' }]])
    const kept = await photos.get(hashOf(bytes))
    expect(kept?.byteSize).toBe(bytes.length)
    expect(Buffer.from(await new Response(kept?.body).arrayBuffer())).toEqual(bytes)
  })

  it('gives nothing for a photo that is not there', async () => {
    expect(await (await open()).get('f'.repeat(64))).toBeNull()
    expect(store.seen).toEqual([`GET ${key('f'.repeat(64))} 404`])
  })

  it('is down, not empty, when the bucket is not there', async () => {
    await expect((await open({ bucket: 'elsewhere' })).get('f'.repeat(64))).rejects.toThrow(/refused to give a photo: 404, NoSuchBucket/)
  })

  it.each([['secret', { secretAccessKey: 'another' }], ['key', { accessKeyId: 'AKOTHER' }], ['region', { region: 'test-2' }]])('lets nobody in with a wrong %s', async (_, changed) => {
    const photos = await open(changed)
    await expect(photos.put(hashOf(bytes), bytes)).rejects.toThrow(/refused to keep a photo: 403, SignatureDoesNotMatch/)
    await expect(photos.get(hashOf(bytes))).rejects.toThrow(/403/)
    expect(store.objects.size).toBe(0)
  })

  it('refuses bytes that are not those of the hash, and keeps none of them', async () => {
    await expect((await open()).put('0'.repeat(64), bytes)).rejects.toThrow(/400, XAmzContentSHA256Mismatch/)
    expect(store.objects.size).toBe(0)
  })

  it('is asked again when it is busy', async () => {
    const photos = await open()
    store.trouble = { status: 503, code: 'SlowDown', once: true }
    await photos.put(hashOf(bytes), bytes)
    expect(store.objects.size).toBe(1)
    expect(store.seen.map((line) => line.slice(-3))).toEqual(['503', '200'])
  })

  it('is down when it hangs up, and when nobody is there', async () => {
    store.trouble = 'hang up'
    await expect((await open()).put(hashOf(bytes), bytes)).rejects.toThrow(/does not answer/)
    await expect((await open({ endpoint: 'http://127.0.0.1:9' })).get(hashOf(bytes))).rejects.toThrow('The photo store at http://127.0.0.1:9 does not answer.')
  })
})

describe('chosen by the environment', () => {
  const chosen = async (): Promise<unknown> => (await import('@/app/_server/env')).photoStoreSettings()

  it('is used when all names are set, and a folder when none is', async () => {
    environment(whole())
    expect(await chosen()).toEqual(store.settings)
    vi.resetModules()
    environment({})
    expect(await chosen()).toBeNull()
  })

  it.each(NAMES)('is not used without its %s, and says which name is missing', async (name) => {
    environment({ ...whole(), [name]: '' })
    await expect(chosen()).rejects.toThrow(`The photo store is half set up: set TOELINE_S3_${name} too`)
  })

  it.each<[Name, string, RegExp]>([
    ['ENDPOINT', 's3.example.org', /TOELINE_S3_ENDPOINT must be the address/],
    ['ENDPOINT', 'ftp://s3.example.org', /TOELINE_S3_ENDPOINT must be the address/],
    ['BUCKET', '../Photos', /TOELINE_S3_BUCKET must be the name of a bucket/],
  ])('is not used with a %s of %s', async (name, value, sentence) => {
    environment({ ...whole(), [name]: value })
    await expect(chosen()).rejects.toThrow(sentence)
  })
})

describe('through the application', () => {
  const routes = async () => ({ ...(await import('@/app/api/photos/route')), ...(await import('@/app/api/photos/[photoId]/route')) })
  let couponId: string
  beforeEach(async () => {
    environment(whole())
    couponId = randomUUID()
    await logAs(school, await viewerOf(school, 'student'), couponId)
    await requestFrom({ school, who: 'student' })
  })
  const send = async (id: string): Promise<Response> => (await routes()).POST(new Request(`http://localhost:3000/api/photos?coupon=${couponId}&id=${id}`, {
    method: 'POST', headers: { 'sec-fetch-site': 'same-origin' }, body: new Uint8Array(await twoHalves().jpeg().toBuffer()),
  }))
  const look = async (photoId: string): Promise<Response> => (await routes()).GET(new Request(`http://localhost:3000/api/photos/${photoId}`), { params: Promise.resolve({ photoId }) })
  const rows = () => database.query('select 1 as row from "Photo" where "couponId" = $1', [couponId])

  it('a photo goes to the store, to no folder, and comes back through the route', async () => {
    const id = randomUUID()
    expect((await send(id)).status).toBe(200)
    const [object] = [...store.objects.values()]
    const answer = await look(id)
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'image/webp'])
    expect(Buffer.from(await answer.arrayBuffer())).toEqual(object?.bytes)
    expect(await readdir(process.env.TOELINE_DATA!)).not.toContain('photos')
  })

  it('nobody else gets it, and the store is not even asked', async () => {
    const id = randomUUID()
    await send(id)
    store.seen.length = 0
    await requestFrom({ school, who: 'classmate' })
    expect((await look(id)).status).toBe(404)
    expect(store.seen).toEqual([])
  })

  it('a store that is down is said, nothing half-written stays, and the same photo can be sent again', async () => {
    const id = randomUUID()
    store.trouble = { status: 500, code: 'InternalError' }
    const answer = await send(id)
    expect([answer.status, await answer.json()]).toEqual([503, {
      ok: false, code: 'UNAVAILABLE', message: 'Photos cannot be kept or shown just now. Nothing is lost; try again in a few minutes.', fields: {},
    }])
    expect(await rows()).toEqual([])
    store.trouble = null
    expect((await send(id)).status).toBe(200)
    store.trouble = 'hang up'
    expect((await look(id)).status).toBe(503)
    store.trouble = null
    store.objects.clear()
    expect((await look(id)).status, 'an object that is gone').toBe(404)
  })
})

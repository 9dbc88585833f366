// Photos: judged by their content, re-encoded, stripped, sized, and shown to no one but those who may see the coupon.
import { randomUUID } from 'node:crypto'
import { readdir, rm } from 'node:fs/promises'
import path from 'node:path'
import sharp, { type Metadata } from 'sharp'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { blackPng, twoHalves } from '../support/pictures'
import { requestFrom } from '../support/request'
import { buildSchool, logAs, schoolWithCoupon, viewerOf, type School } from '../support/school'
import { POST } from '@/app/api/photos/route'
import { GET } from '@/app/api/photos/[photoId]/route'
import nextConfig from '@/next.config.mjs'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
let couponId: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  ;({ school, couponId } = await schoolWithCoupon())
  await requestFrom({ school, who: 'student' })
})

const OURS = { 'sec-fetch-site': 'same-origin' }
type Body = Buffer | string | ReadableStream<Uint8Array>
function post(body: Body, { id = randomUUID() as string, coupon = couponId, headers = OURS as Record<string, string> } = {}): Promise<Response> {
  const of = new URLSearchParams({ coupon, id })
  return POST(new Request(`http://localhost:3000/api/photos?${of}`, { method: 'POST', headers, body: body as BodyInit, duplex: 'half' } as RequestInit))
}
const get = (photoId: string): Promise<Response> => GET(new Request(`http://localhost:3000/api/photos/${photoId}`), { params: Promise.resolve({ photoId }) })
const rows = () => database.query<{ id: string; widthPx: number; heightPx: number; byteSize: number; sha256: string }>(
  'select id, "widthPx", "heightPx", "byteSize", sha256 from "Photo" where "couponId" = $1 order by "createdAt", id', [couponId])
const files = async (): Promise<string[]> => (await readdir(path.join(process.env.TOELINE_DATA!, 'photos'), { recursive: true }).catch(() => [])).filter((name) => name.includes('.'))

async function taken(body: Body): Promise<{ bytes: Buffer; picture: Metadata }> {
  const id = randomUUID()
  const answer = await post(body, { id })
  expect([answer.status, await answer.json()]).toEqual([200, { ok: true, value: { id } }])
  const bytes = Buffer.from(await (await get(id)).arrayBuffer())
  return { bytes, picture: await sharp(bytes).metadata() }
}

async function refused(body: Body, status: number, sentence: string): Promise<void> {
  const before = await files()
  const answer = await post(body)
  expect(answer.status).toBe(status)
  expect(await answer.json()).toMatchObject({ ok: false, message: sentence, fields: { photo: sentence } })
  expect(await rows()).toEqual([])
  expect(await files()).toEqual(before)
}

const NO_PICTURE = 'This file is not a JPEG, PNG or WebP picture. Choose a photo.'
const DAMAGED = 'This picture is damaged or far too large to open. Take it again.'
const TOO_LARGE = 'This photo is over 15 MB. Take it again at a smaller size.'

describe('a picture', () => {
  it.each([['JPEG', () => twoHalves().jpeg().toBuffer()], ['PNG', () => twoHalves().png().toBuffer()], ['WebP', () => twoHalves().webp().toBuffer()]])('as %s is kept as WebP', async (_kind, make) => {
    const { picture, bytes } = await taken(await make())
    expect(picture).toMatchObject({ format: 'webp', width: 60, height: 40 })
    expect(await rows()).toMatchObject([{ widthPx: 60, heightPx: 40, byteSize: bytes.length }])
    expect(await database.query(`select action, after->>'sha256' as sha256 from "AuditEvent" where action = 'photo.add' and "subjectId" = $1`, [couponId]))
      .toEqual([{ action: 'photo.add', sha256: (await rows())[0]?.sha256 }])
  })

  it('loses where and when it was taken, and by which device', async () => {
    const exif = { IFD0: { Make: 'Box brownie', Copyright: 'me' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '41/1 50/1 0/1' } }
    const original = await twoHalves().withExif(exif).withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/">secret place</x:xmpmeta>').withIccProfile('p3').jpeg().toBuffer()
    expect(Object.keys(await sharp(original).metadata())).toEqual(expect.arrayContaining(['exif', 'xmp', 'icc']))
    const { picture, bytes } = await taken(original)
    for (const block of ['exif', 'xmp', 'icc', 'iptc', 'comments']) expect(picture, block).not.toHaveProperty(block)
    for (const word of ['Box brownie', 'secret place', 'Exif', 'GPS']) expect(bytes.includes(word), word).toBe(false)
  })

  it('loses what is appended to it', async () => {
    const { bytes } = await taken(Buffer.concat([await twoHalves().jpeg().toBuffer(), Buffer.from('<script>alert(1)</script>')]))
    expect(bytes.includes('<script>')).toBe(false)
  })

  it('taken on its side is turned upright', async () => {
    // Exif orientation 6: the camera was turned; the top of the scene is the right edge of the data.
    const { picture, bytes } = await taken(await twoHalves().withMetadata({ orientation: 6 }).jpeg({ quality: 100 }).toBuffer())
    expect([picture.width, picture.height, picture.orientation]).toEqual([40, 60, undefined])
    const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true })
    const red = (x: number, y: number): boolean => (data[(y * info.width + x) * info.channels] ?? 0) > 128
    expect([red(35, 30), red(4, 30)], 'the upper half is now the right one').toEqual([true, false])
  })

  it('larger than a screen is sized to 2048 pixels, and a smaller one is not blown up', async () => {
    expect((await taken(await twoHalves(4000, 1000).jpeg().toBuffer())).picture).toMatchObject({ width: 2048, height: 512 })
    expect((await taken(await twoHalves(20, 2000).jpeg().toBuffer())).picture).toMatchObject({ width: 20, height: 2000 })
  })

  it('of 49 megapixels, as the largest phones take, is kept', async () => {
    expect((await taken(blackPng(7000, 7000))).picture).toMatchObject({ width: 2048, height: 2048 })
  })
})

describe('what is no picture, or hides something', () => {
  it.each([
    ['nothing', ''],
    ['text', 'hello'],
    ['a page', '<!doctype html><html><script>alert(1)</script></html>'],
    ['a drawing that runs scripts', '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'],
    ['a drawing with its declaration', '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="10" height="10"/>'],
    ['a program', '\u007fELF\u0002\u0001\u0001'],
    ['an animation of another kind', Buffer.from('GIF89a\u0001\u0000\u0001\u0000\u0000\u0000\u0000;', 'latin1')],
    ['a camera format whose decoder we do not need', Buffer.from('\u0000\u0000\u0000\u0018ftypheic\u0000\u0000\u0000\u0000heicmif1', 'latin1')],
    ['a document', '%PDF-1.7\n'],
  ])('is refused: %s', (_what, body) => refused(typeof body === 'string' ? Buffer.from(body, 'latin1') : body, 422, NO_PICTURE))

  it.each([
    ['only a signature', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex')],
    ['a page behind a signature', Buffer.concat([Buffer.from('ffd8ffe000104a464946', 'hex'), Buffer.from('<script>alert(1)</script>')])],
    ['a header that claims 60000 by 60000', blackPng(60_000, 60_000, 1)],
    ['a real 400 megapixels in a few kilobytes', blackPng(20_000, 20_000)],
    ['fewer rows than the header says', blackPng(500, 500, 20)],
  ])('is refused: %s', async (_what, body) => {
    expect(body.length).toBeLessThan(200_000)
    await refused(body, 422, DAMAGED)
  })

  it.each(['jpeg', 'png', 'webp'] as const)('is refused: a %s cut off on its way', async (format) => {
    const noise = sharp({ create: { width: 400, height: 400, channels: 3, background: '#777', noise: { type: 'gaussian', mean: 120, sigma: 60 } } })
    const whole = await noise.toFormat(format).toBuffer()
    await refused(whole.subarray(0, Math.floor(whole.length * 0.6)), 422, DAMAGED)
  })
})

describe('40 MB', () => {
  const endless = () => {
    const read = { bytes: 0, cancelled: false }
    const stream = new ReadableStream<Uint8Array>({
      pull(controller) {
        read.bytes += 64 * 1024
        controller.enqueue(new Uint8Array(64 * 1024))
        if (read.bytes >= 40 * 1024 * 1024) controller.close()
      },
      cancel() { read.cancelled = true },
    })
    return { read, stream }
  }

  it('are not read to the end when their size was not told', async () => {
    const { read, stream } = endless()
    await refused(stream, 413, TOO_LARGE)
    expect(read.bytes).toBeLessThan(16 * 1024 * 1024)
    expect(read.cancelled).toBe(true)
  })

  it('are not read at all when it was', async () => {
    const { read, stream } = endless()
    const answer = await post(stream, { headers: { ...OURS, 'content-length': String(40 * 1024 * 1024) } })
    expect(answer.status).toBe(413)
    expect(read.bytes).toBeLessThanOrEqual(2 * 64 * 1024) // what the stream itself holds ready
  })

  it('are not read at all for a coupon one may not see', async () => {
    await requestFrom({ school, who: 'classmate' })
    const { read, stream } = endless()
    expect((await post(stream)).status).toBe(404)
    expect(read.bytes).toBeLessThanOrEqual(2 * 64 * 1024)
  })
})

describe('sending again', () => {
  it('is harmless with the same id, one after the other and at the same moment', async () => {
    const picture = await twoHalves().jpeg().toBuffer()
    const id = randomUUID()
    expect((await post(picture, { id })).status).toBe(200)
    expect((await Promise.all(Array.from({ length: 4 }, () => post(picture, { id })))).map(({ status }) => status)).toEqual([200, 200, 200, 200])
    expect(await rows()).toHaveLength(1)
    expect(await database.query(`select 1 as row from "AuditEvent" where action = 'photo.add' and "subjectId" = $1`, [couponId])).toHaveLength(1)
  })

  it('stops at eight of one coupon, even at the same moment, and still answers for those that are there', async () => {
    const picture = await twoHalves().jpeg().toBuffer()
    const ids = Array.from({ length: 12 }, () => randomUUID())
    const statuses = (await Promise.all(ids.map((id) => post(picture, { id })))).map(({ status }) => status)
    expect(statuses.toSorted()).toEqual([...Array.from({ length: 8 }, () => 200), ...Array.from({ length: 4 }, () => 429)])
    expect((await post(picture, { id: ids[statuses.indexOf(200)]! })).status, 'its answer was lost on the way').toBe(200)
    expect(await rows()).toHaveLength(8)
  })

  it('with another’s id tells nothing', async () => {
    const picture = await twoHalves().jpeg().toBuffer()
    const id = randomUUID()
    await post(picture, { id })
    await requestFrom({ school, who: 'classmate' })
    const own = randomUUID()
    await logAs(school, await viewerOf(school, 'classmate'), own)
    expect((await post(picture, { id, coupon: own })).status).toBe(404)
  })
})

describe('a photo from a device’s queue', () => {
  it('goes only under the name of who took it, also when the one signed in may see the coupon', async () => {
    const picture = await twoHalves().jpeg().toBuffer()
    const queued = (id: string) => POST(new Request(`http://localhost:3000/api/photos?${new URLSearchParams({ coupon: couponId, id, person: school.people.student })}`, { method: 'POST', headers: OURS, body: new Uint8Array(picture) }))
    const id = randomUUID()
    await requestFrom({ school, who: 'instructor' })
    const answer = await queued(id)
    expect([answer.status, await answer.json()]).toEqual([409, expect.objectContaining({ ok: false, code: 'OTHER_PERSON' })])
    expect(await rows()).toEqual([])
    await requestFrom({ school, who: 'student' })
    expect([(await queued(id)).status, (await queued(id)).status]).toEqual([200, 200])
    expect((await rows()).map((row) => row.id)).toEqual([id])
  })
})

describe('who may send', () => {
  it.each([[{}], [{ 'sec-fetch-site': 'cross-site' }], [{ origin: 'https://evil.example' }]])('is nobody from another site: %o', async (headers) => {
    const answer = await post(await twoHalves().jpeg().toBuffer(), { headers })
    expect(answer.status).toBe(404)
    expect(await rows()).toEqual([])
  })

  it('is nobody signed out, who is told so that the device keeps the photo', async () => {
    await requestFrom(null)
    const answer = await post(await twoHalves().jpeg().toBuffer())
    expect([answer.status, await answer.json()]).toEqual([401, expect.objectContaining({ ok: false, code: 'SIGNED_OUT' })])
  })

  it('is the student and the class’s instructor, and nobody else', async () => {
    const picture = await twoHalves().jpeg().toBuffer()
    const status = async (who: keyof School['people'], of = school) => {
      await requestFrom({ school: of, who })
      return (await post(picture)).status
    }
    const foreign = await buildSchool(randomUUID())
    expect([await status('student'), await status('instructor')]).toEqual([200, 200])
    expect([await status('classmate'), await status('otherInstructor'), await status('coordinator'), await status('student', foreign), await status('coordinator', foreign)]).toEqual([404, 404, 404, 404, 404])
  })

  it('is nobody whose password another person chose', async () => {
    await database.query('update "Person" set "mustChangePassword" = true where id = $1', [school.people.student])
    expect((await post(await twoHalves().jpeg().toBuffer())).status).toBe(403)
  })

  it.each([['no uuid', { id: '1', coupon: '2' }], ['a path', { id: '../../x', coupon: '../..' }], ['nothing', { id: '', coupon: '' }]])('is nobody with ids that are %s', async (_what, ids) => {
    expect((await post(await twoHalves().jpeg().toBuffer(), ids)).status).toBe(404)
  })

  it('is told in their own language', async () => {
    await database.query(`update "Person" set locale = 'es' where id = $1`, [school.people.student])
    const sentence = 'Este archivo no es una imagen JPEG, PNG o WebP. Elige una foto.'
    await refused(Buffer.from('hola'), 422, sentence)
  })
})

describe('looking at one', () => {
  let photoId: string
  beforeEach(async () => {
    photoId = randomUUID()
    await post(await twoHalves().jpeg().toBuffer(), { id: photoId })
  })

  it('is for those who may see the coupon, and like a missing one for anyone else', async () => {
    const foreign = await buildSchool(randomUUID())
    const look = async (who: keyof School['people'] | null, of = school) => {
      await requestFrom(who && { school: of, who })
      const answer = await get(photoId)
      return [answer.status, answer.status === 200 ? '' : await answer.text()]
    }
    const missing = await get(randomUUID())
    const lost = [404, await missing.text()]
    expect([await look('student'), await look('instructor'), await look('coordinator')].map(([status]) => status)).toEqual([200, 200, 200])
    for (const who of ['classmate', 'otherInstructor', 'otherStudent', null] as const) expect(await look(who), String(who)).toEqual(lost)
    for (const who of ['student', 'instructor', 'coordinator'] as const) expect(await look(who, foreign), `foreign ${who}`).toEqual(lost)
    for (const id of ['1', '../secret', '', "' or 1=1"]) expect([(await get(id)).status, await (await get(id)).text()], id).toEqual(lost)
  })

  it('ends with the session, and with a password that must be replaced', async () => {
    await database.query('update "Person" set "mustChangePassword" = true where id = $1', [school.people.student])
    expect((await get(photoId)).status).toBe(404)
  })

  it('comes as a picture and nothing else, kept by no shared cache', async () => {
    const { headers, status } = await get(photoId)
    expect(status).toBe(200)
    expect(Object.fromEntries(headers)).toEqual({
      'content-type': 'image/webp', 'content-length': String((await rows())[0]?.byteSize), 'content-disposition': 'inline; filename="coupon.webp"', 'cache-control': 'private, max-age=86400, immutable',
      'content-security-policy': "default-src 'none'; sandbox", 'cross-origin-resource-policy': 'same-origin',
    })
    const everywhere = await nextConfig.headers?.()
    expect(everywhere?.find(({ source }) => source === '/:path*')?.headers).toContainEqual({ key: 'X-Content-Type-Options', value: 'nosniff' })
  })

  it('is a missing one when its file is gone', async () => {
    await rm(path.join(process.env.TOELINE_DATA!, 'photos'), { recursive: true })
    expect((await get(photoId)).status).toBe(404)
  })
})

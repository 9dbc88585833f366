// What people measure on photos: reckoned anew from the marks, kept once, shown to those who may see it when they may.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { marksOf } from '../support/photo-marks'
import { requestFrom } from '../support/request'
import { buildSchool, cleanReadings, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import { POST } from '@/app/api/photos/[photoId]/marks/route'
import { submitInspection } from '@/app/_server/data/inspections'
import { listMeasurements } from '@/app/_server/data/photo-measurements'
import { addPhoto } from '@/app/_server/data/photos'
import { inspectionSchema } from '@/lib/schemas/inspection'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
let couponId: string
let photoId: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  couponId = randomUUID()
  photoId = randomUUID()
  const student = await viewerOf(school, 'student')
  await logAs(school, student, couponId)
  await addPhoto(student, { id: photoId, couponId, photo: { sha256: 'a'.repeat(64), widthPx: 2000, heightPx: 1200, byteSize: 1 } })
})

const STUDENT = marksOf([{ atMm: 20, widthMm: 7 }, { atMm: 60, widthMm: 8 }])
const INSPECTOR = marksOf([{ atMm: 20, widthMm: 6 }])
async function send(body: unknown, who: keyof School['people'] | null = 'student', headers: Record<string, string> = { 'sec-fetch-site': 'same-origin' }, id = photoId) {
  await requestFrom(who && { school, who })
  const answer = await POST(new Request(`http://localhost:3000/api/photos/${id}/marks`, { method: 'POST', headers, body: typeof body === 'string' ? body : JSON.stringify(body) }), { params: Promise.resolve({ photoId: id }) })
  return { status: answer.status, body: (await answer.json()) as { ok: boolean; message?: string } }
}
const seenBy = async (who: keyof School['people']) => (await listMeasurements(await viewerOf(school, who), couponId)).map(({ person, measurement }) => [person.name, measurement.widths.map(({ widthMm }) => widthMm)])
const audits = () => database.query(`select 1 as row from "AuditEvent" where action = 'photo.measure' and "subjectId" = $1`, [couponId])
async function inspect(revision = 1, who: 'instructor' | 'otherInstructor' = 'instructor'): Promise<void> {
  const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: 0.79 } as const
  await submitInspection(await viewerOf(school, who), inspectionSchema(frame).parse({ couponId, revision, comment: '', readings: cleanReadings() }))
}

describe('marks that are sent', () => {
  it('are measured here and kept with the version of the geometry', async () => {
    expect(await send(STUDENT)).toEqual({ status: 200, body: { ok: true, value: {} } })
    const [kept] = await listMeasurements(await viewerOf(school, 'student'), couponId)
    expect(kept).toMatchObject({ photoId, own: true, measurement: { version: 1, geometry: 'photo-geometry 1', marks: STUDENT, length: { mm: 200 } } })
    expect(kept?.measurement.widths.map(({ atMm, widthMm }) => [atMm, widthMm])).toEqual([[20, 7], [60, 8]])
    expect(kept?.measurement.widths.every(({ widthSdMm }) => widthSdMm > 0.25 && widthSdMm < 0.5)).toBe(true)
  })

  it('are kept once, however often they arrive, even at the same moment', async () => {
    const statuses = await Promise.all([send(STUDENT), send(STUDENT), send(STUDENT)])
    expect(statuses.map(({ status }) => status)).toEqual([200, 200, 200])
    expect((await send(STUDENT)).status).toBe(200)
    expect(await audits()).toHaveLength(1)
  })

  it('give way to later ones while the coupon waits, with a trace of both', async () => {
    await send(STUDENT)
    await send(INSPECTOR)
    expect(await seenBy('student')).toEqual([['student Test', [6]]])
    const [, second] = await database.query<{ before: unknown; after: unknown }>(`select before, after from "AuditEvent" where action = 'photo.measure' and "subjectId" = $1 order by at`, [couponId])
    expect(second).toMatchObject({ before: { photoId, widthsMm: [7, 8] }, after: { photoId, geometry: 'photo-geometry 1', widthsMm: [6] } })
  })

  it('stay as they are once the coupon was inspected; those that arrive late for the first time are kept', async () => {
    await send(STUDENT)
    await inspect()
    expect(await send(INSPECTOR)).toEqual({ status: 409, body: expect.objectContaining({ message: 'This coupon was inspected: the marks of its photo stay as they are.' }) as object })
    expect((await send(STUDENT)).status, 'the same again').toBe(200)
    await database.query('delete from "PhotoMeasurement" where "photoId" = $1', [photoId])
    expect((await send(STUDENT)).status, 'from a device that was offline').toBe(200)
  })

  it.each<[string, unknown, RegExp]>([
    ['nothing', '', /not marks of this photo/],
    ['no JSON', '{', /not marks of this photo/],
    ['widths of their own', { ...STUDENT, widths: [] }, /not marks of this photo/],
    ['a mark outside the picture', { ...STUDENT, ends: [{ tap: { x: -40, y: 1 }, snapped: null, sdPx: 1 }, STUDENT.ends[1]] }, /not marks of this photo/],
    ['a place that is no number', { ...STUDENT, ends: [{ tap: { x: 'NaN', y: 1 }, snapped: null, sdPx: 1 }, STUDENT.ends[1]] }, /not marks of this photo/],
    ['no pair at all', { ...STUDENT, pairs: [] }, /not marks of this photo/],
    ['61 pairs', { ...STUDENT, pairs: Array.from({ length: 61 }, () => STUDENT.pairs[0]) }, /not marks of this photo/],
    ['a scale of zero', { ...STUDENT, scale: { ...STUDENT.scale, distanceMm: 0 } }, /between 0\.1 mm and 10 m/],
    ['a weld without length', { ...STUDENT, ends: [STUDENT.ends[0], STUDENT.ends[0]] }, /start and the end of the weld are at the same place/],
    ['a picture of another shape', { ...STUDENT, picture: { widthPx: 1000, heightPx: 1000 } }, /another shape/],
    ['far too much', JSON.stringify({ ...STUDENT, note: 'x'.repeat(200_000) }), /not marks of this photo/],
  ])('are refused with %s', async (_, body, sentence) => {
    const answer = await send(body)
    expect([answer.status, answer.body.message]).toEqual([422, expect.stringMatching(sentence)])
    expect(await database.query('select 1 as row from "PhotoMeasurement" where "photoId" = $1', [photoId])).toEqual([])
  })

  it('are the student’s and the inspector’s to send, and nobody else’s', async () => {
    const statuses: Record<string, number> = {}
    for (const who of ['student', 'instructor', 'classmate', 'otherInstructor', 'coordinator'] as const) statuses[who] = (await send(STUDENT, who)).status
    expect(statuses).toEqual({ student: 200, instructor: 200, classmate: 404, otherInstructor: 404, coordinator: 404 })
    expect((await send(STUDENT, null)).status).toBe(401)
    expect((await send(STUDENT, 'student', { 'sec-fetch-site': 'cross-site' })).status).toBe(404)
    expect((await send(STUDENT, 'student', undefined, '../x')).status).toBe(404)
  })
})

describe('marks that are shown', () => {
  beforeEach(async () => {
    await send(STUDENT)
    await send(INSPECTOR, 'instructor')
  })

  it('are everyone’s own alone while the coupon waits', async () => {
    expect(await seenBy('student')).toEqual([['student Test', [7, 8]]])
    expect(await seenBy('instructor')).toEqual([['instructor Test', [6]]])
    expect([await seenBy('coordinator'), await seenBy('classmate'), await seenBy('otherInstructor')]).toEqual([[], [], []])
  })

  it('are both, to those who may see the coupon, after the inspection', async () => {
    await inspect()
    const both = [['student Test', [7, 8]], ['instructor Test', [6]]]
    expect([await seenBy('student'), await seenBy('instructor'), await seenBy('coordinator')]).toEqual([both, both, both])
    expect([await seenBy('classmate'), await seenBy('otherInstructor')]).toEqual([[], []])
  })

  it('are kept from a second reader until that look is in, and from nobody else', async () => {
    await inspect()
    const both = [['student Test', [7, 8]], ['instructor Test', [6]]]
    await database.query('insert into "ClassInstructor" ("programId", "classId", "personId") values ($1, $2, $3)', [school.programId, school.classId, school.people.otherInstructor])
    expect(await seenBy('otherInstructor')).toEqual(both)
    await database.query('update "Coupon" set "secondWaitingSince" = now() where id = $1', [couponId])
    expect([await seenBy('student'), await seenBy('instructor'), await seenBy('coordinator')]).toEqual([both, both, both])
    expect(await seenBy('otherInstructor')).toEqual([])
  })

  it('of a second reader are for the staff', async () => {
    await database.query('insert into "ClassInstructor" ("programId", "classId", "personId") values ($1, $2, $3)', [school.programId, school.classId, school.people.otherInstructor])
    await inspect()
    await database.query('update "Coupon" set "secondWaitingSince" = now() where id = $1', [couponId])
    await send(marksOf([{ atMm: 20, widthMm: 9 }]), 'otherInstructor')
    expect(await seenBy('instructor'), 'nothing of a look that is not in yet').toHaveLength(2)
    await inspect(1, 'otherInstructor')
    expect(await seenBy('otherInstructor')).toHaveLength(3)
    expect(await seenBy('instructor')).toHaveLength(3)
    expect(await seenBy('student')).toHaveLength(2)
  })
})

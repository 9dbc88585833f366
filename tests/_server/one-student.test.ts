// What staff read of one student, and what must not spoil a look they may still give.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, cleanReadings, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { addComment, listRemarks } from '@/app/_server/data/comments'
import { listComparedLooks } from '@/app/_server/data/compared-looks'
import { submitInspection } from '@/app/_server/data/inspections'
import { listPassUse } from '@/app/_server/data/pass-use'
import { takeCoupon } from '@/app/_server/data/waiting-coupons'
import { db } from '@/app/_server/db'
import { oneStudent } from '@/app/_server/views/one-student'
import { inspectionSchema } from '@/lib/schemas/inspection'

const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: 0.79 } as const

let school: School
let student: Viewer
let first: Viewer
let second: Viewer
let coordinator: Viewer

beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(`s${randomUUID().slice(0, 8)}`)
  await db().program.update({ where: { id: school.programId }, data: { secondReadShare: 0 } })
  await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: school.people.otherInstructor } })
  student = await viewerOf(school, 'student')
  first = await viewerOf(school, 'instructor')
  second = await viewerOf(school, 'otherInstructor')
  coordinator = await viewerOf(school, 'coordinator')
})

/** A coupon the student has looked at and an instructor has graded, with a remark. */
async function graded(comment: string): Promise<string> {
  const couponId = randomUUID()
  await logAs(school, student, couponId)
  await submitInspection(first, inspectionSchema(frame).parse({ couponId, revision: 1, comment, readings: cleanReadings() }))
  return couponId
}

const seen = async (viewer: Viewer) => (await listComparedLooks(viewer, school.people.student, 10)).map(({ key }) => key)
const read = async (viewer: Viewer) => (await listRemarks(viewer, school.people.student, { most: 10, after: null })).map(({ body }) => body)

describe('how a student sees their own welds, read by staff', () => {
  it('takes in no coupon before an instructor has looked at it', async () => {
    const couponId = randomUUID()
    await logAs(school, student, couponId)
    for (const viewer of [first, second, coordinator, student]) expect(await seen(viewer)).toEqual([])
  })

  it('is the same for everyone of the class once one has', async () => {
    const couponId = await graded('')
    for (const viewer of [first, second, coordinator, student]) expect(await seen(viewer)).toEqual([couponId])
  })

  it('gives nothing away of a coupon that waits for a second reader, but to whoever will not be that reader', async () => {
    const couponId = await graded('')
    await db().coupon.updateMany({ where: { id: couponId }, data: { secondWaitingSince: new Date() } })
    expect(await seen(second)).toEqual([])
    for (const viewer of [first, coordinator, student]) expect(await seen(viewer)).toEqual([couponId])
  })

  it('gives nothing away of a graded coupon that waits once more', async () => {
    const couponId = await graded('')
    await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: new Date() } })
    expect(await seen(first)).toEqual([])
    expect(await seen(student)).toEqual([couponId])
  })
})

describe('remarks on a student’s coupons', () => {
  it('come newest first, a page after the other, without the student’s own', async () => {
    for (const body of ['one', 'two', 'three']) await addComment(student, { couponId: await graded(body), body: 'thanks' })
    const page = (after: string | null) => listRemarks(second, school.people.student, { most: 2, after })
    const newest = await page(null)
    expect(newest.map(({ body }) => body)).toEqual(['three', 'two'])
    const meanwhile = await graded('four')
    expect((await page(newest.at(-1)?.id ?? null)).map(({ body }) => body), 'one that came meanwhile moves nothing').toEqual(['one'])
    expect((await page(null))[0]?.coupon).toEqual({ id: meanwhile, number: 4, exerciseTitle: '2F lap, E71T-11 0.045', verdict: 'accept' })
  })

  it('stay away from whoever may still have to look', async () => {
    const couponId = await graded('Cold at the start.')
    await db().coupon.updateMany({ where: { id: couponId }, data: { secondWaitingSince: new Date() } })
    expect(await read(second)).toEqual([])
    expect(await read(first)).toEqual(['Cold at the start.'])
    await db().coupon.updateMany({ where: { id: couponId }, data: { secondWaitingSince: null } })
    expect(await read(second)).toEqual(['Cold at the start.'])
  })
})

describe('what wire a student used', () => {
  it('is read by their staff as far as they teach them', async () => {
    await graded('')
    expect(await listPassUse(first, school.people.student)).toHaveLength(1)
    await db().classInstructor.deleteMany({ where: { classId: school.classId, personId: school.people.otherInstructor } })
    expect(await listPassUse(second, school.people.student)).toEqual([])
    expect(await listPassUse(await viewerOf(school, 'classmate'), school.people.student)).toEqual([])
  })
})

describe('the page of one student', () => {
  const page = (viewer: Viewer) => oneStudent(viewer, school.people.student, { exerciseId: null, remarksAfter: null }, new Date('2026-11-25T18:00:00Z'))

  it('begins with what waits for the reader, and who has it open', async () => {
    const couponId = randomUUID()
    await logAs(school, student, couponId)
    await takeCoupon(second, couponId)
    expect((await page(first))?.now).toMatchObject([{ classId: school.classId, asked: false, waiting: [{ id: couponId, what: '2F lap, E71T-11 0.045, no.\u00a01', taken: 'other.instructor Test has it open.' }] }])
    expect((await page(second))?.now[0]?.waiting[0]?.taken).toBeNull()
  })

  it('asks nothing of who does not teach, and tells them the rest', async () => {
    await graded('Even.')
    await logAs(school, student, randomUUID())
    const known = await page(coordinator)
    expect(known).toMatchObject({ now: [], elsewhere: 0, answer: 'No exercise is at the point where a test is suggested.', places: [{ cautions: { signed: 1, of: 1 } }] })
    expect(known?.remarks.rows.map(({ body, verdict }) => [body, verdict?.word])).toEqual([['Even.', 'Accept']])
  })

  it('says how many coupons were made where the reader does not look', async () => {
    await graded('')
    await db().coupon.updateMany({ where: { studentId: school.people.student }, data: { classId: school.otherClassId } })
    expect((await page(first))?.elsewhere).toBe(1)
    expect((await page(coordinator))?.elsewhere).toBe(0)
  })

  it('is nobody’s whose student it is not', async () => {
    expect(await page(await viewerOf(school, 'classmate'))).toBeNull()
    expect(await page(await viewerOf(await buildSchool(`x${randomUUID().slice(0, 8)}`), 'coordinator'))).toBeNull()
  })
})

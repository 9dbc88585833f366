// A coupon read twice: offered in silence, read blind, kept beside the first look, and nothing of it where the student looks.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, cleanReadings, logAs, readingsOfWidth, schoolWithCoupon, viewerOf, type School } from '../support/school'
import { viewerForPerson, type Viewer } from '@/app/_server/auth/viewer'
import { findBlindCoupon, listBlindWaiting } from '@/app/_server/data/blind-coupons'
import { listComments } from '@/app/_server/data/comments'
import { findCoupon, listStory } from '@/app/_server/data/coupon-record'
import { submitInspection } from '@/app/_server/data/inspections'
import { listJudgedCoupons } from '@/app/_server/data/judged-coupons'
import { listCouponVerdicts } from '@/app/_server/data/pass-counts'
import { listQueue, queueState } from '@/app/_server/data/queue'
import { findElsewhere, findOwnReading, listElsewhere } from '@/app/_server/data/second-readings'
import { setSecondShare } from '@/app/_server/data/second-share'
import { findReadiness, listStudentSkills } from '@/app/_server/data/skills'
import { listStaffNotes } from '@/app/_server/data/staff-notes'
import { listWaiting, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { couponResult } from '@/app/_server/views/coupon-result'
import { readinessReport } from '@/app/_server/views/readiness-report'
import { db } from '@/app/_server/db'
import { sendInspection } from '@/app/teach/actions'
import { inspectionSchema } from '@/lib/schemas/inspection'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

type Who = keyof School['people']
let database: TestDatabase
let school: School
let couponId: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  ;({ school, couponId } = await schoolWithCoupon())
  await setSecondShare(await viewerOf(school, 'coordinator'), { share: 1 })
})

/** A bead far outside the band. */
const wide = () => readingsOfWidth('0.4567')

async function look(who: Who, { revision = 1, readings = cleanReadings(), comment = '', id = couponId } = {}) {
  await requestFrom({ school, who })
  return sendInspection({ couponId: id, revision, comment, readings })
}
const teach = (who: Who) => db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: school.people[who] } })
const coupon = () => db().coupon.findFirstOrThrow({ where: { id: couponId } })
const kinds = async () => (await db().inspection.findMany({ where: { couponId }, orderBy: { submittedAt: 'asc' } })).map(({ kind, revision, supersededAt }) => `${kind} ${revision}${supersededAt ? ' replaced' : ''}`)
const hidden = { ok: false, code: 'NOT_FOUND' }
/** One more instructor of the program, who teaches no class. */
async function third(): Promise<Viewer> {
  const { programId } = school
  const { id } = await db().person.create({ data: { programId, signInName: 'third', givenName: 'third', familyName: 'Test', memberships: { create: { role: 'instructor' } } } })
  const viewer = await viewerForPerson(programId, id)
  if (!viewer) throw new Error('The third instructor cannot sign in.')
  return viewer
}

describe('the offer', () => {
  const isOffered = async (): Promise<boolean> => (await coupon()).secondWaitingSince !== null

  it('is made with the first look, and not before', async () => {
    expect(await isOffered()).toBe(false)
    await look('instructor')
    expect(await coupon()).toMatchObject({ waitingSince: null, verdict: 'accept', secondWaitingSince: expect.any(Date) as Date })
  })

  it('follows the share: none at 0, some at a half, by the id alone', async () => {
    const coordinator = await viewerOf(school, 'coordinator')
    await setSecondShare(coordinator, { share: 0 })
    await look('instructor')
    expect(await isOffered()).toBe(false)
    await setSecondShare(coordinator, { share: 0.5 })
    const student = await viewerOf(school, 'student')
    const ids = Array.from({ length: 16 }, () => randomUUID())
    for (const id of ids) {
      await logAs(school, student, id)
      await look('instructor', { id })
    }
    const waiting = await db().coupon.count({ where: { id: { in: ids }, secondWaitingSince: { not: null } } })
    expect(waiting).toBeGreaterThan(0) // all or none of sixteen: once in 32,768 runs
    expect(waiting).toBeLessThan(16)
  })

  it('is made where somebody else teaches the class, and then only to them', async () => {
    await teach('otherInstructor')
    const outsider = await third()
    await look('instructor')
    expect(await isOffered()).toBe(true)
    expect((await listWaiting(await viewerOf(school, 'otherInstructor'), school.classId)).map(({ id }) => id)).toEqual([couponId])
    expect(await listElsewhere(await viewerOf(school, 'otherInstructor')), 'it stands in the class’s own queue').toEqual([])
    expect(await listElsewhere(outsider)).toEqual([])
  })

  it('goes to any instructor of the program where a class has one alone', async () => {
    await look('instructor')
    expect(await listElsewhere(await viewerOf(school, 'otherInstructor'))).toMatchObject([{ id: couponId, className: 'Class one', booth: 1, number: 1, exerciseTitle: '2F lap, E71T-11 0.045' }])
    expect(JSON.stringify(await listElsewhere(await viewerOf(school, 'otherInstructor'))), 'whose it is').not.toContain('student')
    for (const who of ['instructor', 'coordinator', 'student', 'classmate'] as const) expect(await listElsewhere(await viewerOf(school, who)), who).toEqual([])
  })

  it('counts nobody whose account is disabled, neither as a reader nor as a teacher of the class', async () => {
    await teach('otherInstructor')
    await db().person.updateMany({ where: { id: school.people.otherInstructor }, data: { disabledAt: new Date() } })
    await look('instructor')
    expect(await isOffered(), 'nobody is left who could').toBe(false)
    const outsider = await third()
    couponId = randomUUID()
    await logAs(school, await viewerOf(school, 'student'), couponId)
    await look('instructor')
    expect(await isOffered(), 'the class has one who can sign in: others may').toBe(true)
    expect((await listElsewhere(outsider)).map(({ id }) => id)).toEqual([couponId])
  })

  it('is not made to the student who made it, even where they teach', async () => {
    await db().person.updateMany({ where: { id: school.people.otherInstructor }, data: { disabledAt: new Date() } })
    await db().membership.create({ data: { programId: school.programId, personId: school.people.student, role: 'instructor' } })
    await look('instructor')
    expect(await isOffered()).toBe(false)
    await db().coupon.updateMany({ where: { id: couponId }, data: { secondWaitingSince: new Date() } })
    const both = await viewerOf(school, 'student')
    expect(await listElsewhere(both)).toEqual([])
    expect(await look('student')).toMatchObject(hidden)
    await teach('student')
    expect((await listWaiting(both, school.classId)).map(({ id }) => id)).toEqual([])
    expect(await look('student')).toMatchObject(hidden)
  })

  it('is made once: a correction offers nothing and takes nothing back', async () => {
    await look('instructor')
    const { secondWaitingSince } = await coupon()
    await look('instructor', { revision: 2, readings: wide() })
    expect(await coupon()).toMatchObject({ secondWaitingSince, verdict: 'reject' })
    await look('otherInstructor')
    await look('instructor', { revision: 3 })
    expect(await isOffered()).toBe(false)
  })

  it('is told to those who listen to the class', async () => {
    await teach('otherInstructor')
    const heard = await database.query<{ def: string }>(`select pg_get_triggerdef(oid) as def from pg_trigger where tgname = 'tell_class' and tgrelid = '"Coupon"'::regclass`)
    expect(heard[0]?.def).toContain('"secondWaitingSince"')
    const second = await viewerOf(school, 'otherInstructor')
    await look('instructor')
    const before = await queueState(second, school.classId)
    await look('otherInstructor')
    expect(await queueState(second, school.classId)).not.toBe(before)
  })
})

describe('the second reader, until their look is in', () => {
  let second: Viewer
  beforeEach(async () => {
    await teach('otherInstructor')
    second = await viewerOf(school, 'otherInstructor')
  })

  it('finds the coupon where it waited before, looking as it did', async () => {
    const before = { queue: await listQueue(second, school.classId), grid: await listBlindWaiting(second, school), coupon: await findBlindCoupon(second, couponId) }
    await look('instructor', { readings: wide(), comment: 'Too wide by far.' })
    expect(await listQueue(second, school.classId)).toEqual(before.queue)
    expect(await listBlindWaiting(second, school)).toEqual(before.grid)
    expect(await findBlindCoupon(second, couponId)).toEqual(before.coupon)
    expect(await listWaiting(await viewerOf(school, 'instructor'), school.classId), 'the first reader is done with it').toEqual([])
  })

  it('sees nothing of the first look anywhere else', async () => {
    const { programId, exerciseId, people } = school
    await look('instructor', { readings: wide(), comment: 'Too wide by far.' })
    const key = { studentId: people.student, exerciseId }
    const seen = async (viewer: Viewer) => ({
      coupon: await findCoupon(viewer, couponId), result: await couponResult(viewer, couponId), comments: await listComments(viewer, couponId), story: await listStory(viewer, key, 5), verdicts: await listCouponVerdicts(viewer, people.student),
      judged: await listJudgedCoupons(viewer, { exerciseId }, 10), evidence: (await findReadiness(viewer, key, new Date()))?.evidence, report: (await readinessReport(viewer, key, new Date()))?.evidence,
    })
    const first = JSON.stringify(await seen(await viewerOf(school, 'instructor')))
    for (const told of ['reject', '0.4567', 'Too wide']) expect(first, `the search would find ${told}`).toContain(told)
    const blind = await seen(second)
    for (const secret of ['reject', '0.4567', 'Too wide', 'instructor Test']) expect(JSON.stringify(blind), secret).not.toContain(secret)
    expect(blind).toMatchObject({ coupon: null, result: null, comments: [], story: [{ number: 1, waiting: true, verdict: null, mark: null, counts: null }], verdicts: [{ verdict: null, mark: null }], judged: [] })
    expect(await db().coupon.count({ where: { programId, id: couponId, verdict: 'reject' } }), 'it was graded').toBe(1)
    expect(await listStudentSkills(second, people.student)).toMatchObject([{ couponCount: 1, inspectedCount: 0, acceptedCount: 0 }])
    expect(await listStudentSkills(await viewerOf(school, 'instructor'), people.student)).toMatchObject([{ couponCount: 1, inspectedCount: 1, acceptedCount: 0 }])
    // One who coordinates as well sees no more.
    await db().membership.create({ data: { programId, personId: people.otherInstructor, role: 'coordinator' } })
    expect(JSON.stringify(await seen(await viewerOf(school, 'otherInstructor')))).not.toMatch(/reject|0\.4567|Too wide/)
    // To a coordinator who reads no coupons it is no secret.
    expect(JSON.stringify(await seen(await viewerOf(school, 'coordinator')))).toContain('0.4567')
  })

  it('may hold it, for others to see; a correction meanwhile leaves it with them', async () => {
    await look('instructor')
    expect(await takeCoupon(second, couponId)).toMatchObject({ self: true })
    expect(await takeCoupon(await viewerOf(school, 'instructor'), couponId), 'it does not wait for the first').toBeNull()
    await look('instructor', { revision: 2 })
    expect(await coupon()).toMatchObject({ takenById: school.people.otherInstructor })
  })
})

describe('a second reading', () => {
  beforeEach(() => teach('otherInstructor'))

  it('is stored beside the first look, judged by the same criteria, with its audit row', async () => {
    await look('instructor')
    expect(await look('otherInstructor', { readings: wide() })).toMatchObject({ ok: true, value: { couponId, verdict: 'reject' } })
    expect(await kinds()).toEqual(['self 1', 'instructor 1', 'second 1'])
    const cards = await db().scorecard.findMany({ where: { inspection: { couponId, kind: { not: 'self' } } }, include: { findings: true } })
    expect(new Set(cards.map(({ criteriaId, criteriaVersion }) => `${criteriaId} ${criteriaVersion}`))).toEqual(new Set(['shop-bead 1']))
    expect(cards.map(({ findings }) => findings.length)).toEqual([cards[0]?.findings.length, cards[0]?.findings.length])
    const { people } = school
    expect(await db().auditEvent.findMany({ where: { action: 'inspection.second', subjectId: couponId } })).toMatchObject([{ actorId: people.otherInstructor, after: { verdict: 'reject' } }])
  })

  it('changes no grade, no mark, no standing, and nothing the student can read', async () => {
    const student = await viewerOf(school, 'student')
    const key = { studentId: school.people.student, exerciseId: school.exerciseId }
    const theirs = async () => ({
      coupon: await findCoupon(student, couponId), result: await couponResult(student, couponId), story: await listStory(student, key, 5), comments: await listComments(student, couponId),
      notes: await listStaffNotes(student, student.personId), readiness: await findReadiness(student, key, new Date('2026-12-01T00:00:00Z')), standing: await db().skillSummary.findMany({ where: { ...key } }),
    })
    await look('instructor', { readings: wide() })
    const before = await theirs()
    await look('otherInstructor', { comment: 'I would take this one.' })
    expect(await theirs()).toEqual(before)
    expect(await coupon()).toMatchObject({ verdict: 'reject', secondWaitingSince: null, takenById: null })
    expect(before.result).toMatchObject({ lead: { kind: 'instructor' }, other: { kind: 'self' }, second: null, superseded: [] })
  })

  it('keeps what its reader remarked for the staff', async () => {
    await look('instructor')
    await look('otherInstructor', { comment: 'I would take this one.' })
    expect(await listStaffNotes(await viewerOf(school, 'instructor'), school.people.student)).toMatchObject([{ body: 'Second reading of 2F lap, no. 1: I would take this one.', author: 'other.instructor Test' }])
    expect(await listComments(await viewerOf(school, 'student'), couponId)).toEqual([])
  })

  it('is shown to the staff of the class with the first, once it is in', async () => {
    await look('instructor')
    const staff = ['instructor', 'otherInstructor', 'coordinator'] as const
    const second = async (who: Who) => (await couponResult(await viewerOf(school, who), couponId))?.second ?? null
    expect(await second('instructor')).toBeNull()
    await look('otherInstructor', { readings: wide() })
    for (const who of staff) expect(await second(who), who).toMatchObject({ inspector: 'other.instructor Test', scorecard: { verdict: 'reject' } })
    expect((await couponResult(await viewerOf(school, 'instructor'), couponId))?.lead).toMatchObject({ kind: 'instructor', scorecard: { verdict: 'accept' } })
    expect(await second('student')).toBeNull()
    // Whoever also teaches does not see it on their own coupon either.
    await db().membership.create({ data: { programId: school.programId, personId: school.people.student, role: 'coordinator' } })
    expect(await second('student')).toBeNull()
  })

  it('stands when the first look is corrected later', async () => {
    await look('instructor')
    await look('otherInstructor', { readings: wide() })
    expect(await look('instructor', { revision: 2 })).toMatchObject({ ok: true })
    expect(await kinds()).toEqual(['self 1', 'instructor 1 replaced', 'second 1', 'instructor 2'])
  })

  it('is what a look becomes that was begun as the first and comes second', async () => {
    const form = { couponId, revision: 1, comment: '', readings: wide() }
    await requestFrom({ school, who: 'otherInstructor' })
    expect((await findBlindCoupon(await viewerOf(school, 'otherInstructor'), couponId))?.nextRevision).toBe(form.revision)
    await look('instructor')
    await requestFrom({ school, who: 'otherInstructor' })
    expect(await sendInspection(form)).toMatchObject({ ok: true, value: { verdict: 'reject' } })
    expect(await kinds()).toEqual(['self 1', 'instructor 1', 'second 1'])
    expect(await coupon()).toMatchObject({ verdict: 'accept' })
  })

  it('is one: of two sent at the same moment the second is told', async () => {
    const other = await third()
    await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: other.personId } })
    await look('instructor')
    const input = inspectionSchema({ locale: 'en', units: 'in', lengthMm: 203.2, gaugeResolutionMm: 0.79 }).parse({ couponId, revision: 1, comment: 'Mine.', readings: cleanReadings() })
    const answers = await Promise.allSettled([await viewerOf(school, 'otherInstructor'), other].map((viewer) => submitInspection(viewer, input)))
    expect(answers.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(answers.find(({ status }) => status === 'rejected')).toMatchObject({ reason: { code: 'CONFLICT' } })
    expect(await kinds()).toEqual(['self 1', 'instructor 1', 'second 1'])
    expect(await db().staffNote.count({ where: { studentId: school.people.student } })).toBe(1)
  })

  it('is not sent twice, nor as a correction', async () => {
    await look('instructor')
    expect(await look('otherInstructor', { revision: 2 })).toMatchObject({ ok: false, code: 'CONFLICT' })
    await look('otherInstructor')
    expect(await look('otherInstructor')).toMatchObject({ ok: false, code: 'CONFLICT' })
    expect(await kinds()).toEqual(['self 1', 'instructor 1', 'second 1'])
  })
})

describe('a reader from another class', () => {
  it('sees the weld and nobody’s name, and afterwards their own reading alone', async () => {
    const other = await viewerOf(school, 'otherInstructor')
    await look('instructor', { readings: wide(), comment: 'Too wide by far.' })
    expect(await findBlindCoupon(other, couponId)).toBeNull()
    const shown = await findElsewhere(other, couponId)
    expect(shown).toMatchObject({ id: couponId, className: 'Class one', booth: 1, number: 1, exercise: { title: '2F lap, E71T-11 0.045' } })
    expect(JSON.stringify(shown)).not.toMatch(/student|reject|0\.4567|Too wide/)
    expect(await findOwnReading(other, couponId)).toBeNull()
    expect(await look('otherInstructor', { comment: 'Even toes.' })).toMatchObject({ ok: true })
    expect([await listElsewhere(other), await findElsewhere(other, couponId), await findCoupon(other, couponId)]).toEqual([[], null, null])
    expect((await findOwnReading(other, couponId))?.inspections).toMatchObject([{ kind: 'second', inspector: 'other.instructor Test', scorecard: { verdict: 'accept' } }])
    expect(await listStaffNotes(await viewerOf(school, 'instructor'), school.people.student)).toHaveLength(1)
  })

  it('is told when another one was quicker', async () => {
    const late = await third()
    await look('instructor')
    await look('otherInstructor')
    expect([await findElsewhere(late, couponId), await takeCoupon(late, couponId), await findOwnReading(late, couponId)]).toEqual([null, null, null])
  })

  it('may not read where the class has a second instructor, nor once they have lost the role', async () => {
    await look('instructor')
    const other = await viewerOf(school, 'otherInstructor')
    const { personId } = await third()
    await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId } })
    expect([await findElsewhere(other, couponId), await look('otherInstructor')]).toMatchObject([null, hidden])
    await db().classInstructor.deleteMany({ where: { personId } })
    expect(await findElsewhere(other, couponId)).not.toBeNull()
    await db().membership.updateMany({ where: { personId: school.people.otherInstructor }, data: { role: 'student' } })
    expect(await findElsewhere(await viewerOf(school, 'otherInstructor'), couponId)).toBeNull()
  })

  it('is never of another program', async () => {
    await look('instructor')
    const foreign = await viewerOf(await buildSchool(randomUUID()), 'instructor')
    expect([await listElsewhere(foreign), await findElsewhere(foreign, couponId), await findOwnReading(foreign, couponId)]).toEqual([[], null, null])
  })
})

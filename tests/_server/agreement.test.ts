// How alike people judge, from what is stored: which looks count, whose eyes may see them, and the coordinator's file.
import { randomUUID } from 'node:crypto'
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, cleanReadings, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import { GET } from '@/app/api/exports/agreement/route'
import type { Viewer } from '@/app/_server/auth/viewer'
import { listOwnReadTwice, listReadTwice, listSelfCompared } from '@/app/_server/data/agreement'
import { submitInspection } from '@/app/_server/data/inspections'
import { overrideVerdict } from '@/app/_server/data/overrides'
import { setSecondShare } from '@/app/_server/data/second-share'
import { ownAgreement, programAgreement } from '@/app/_server/views/agreement'
import { classEyes, programEyes } from '@/app/_server/views/own-eyes'
import { db } from '@/app/_server/db'
import { inspectionSchema } from '@/lib/schemas/inspection'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { fromInches } from '@/lib/units/length'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: 0.79 } as const
let school: School
let viewers: Readonly<Record<'student' | 'classmate' | 'instructor' | 'otherInstructor' | 'coordinator', Viewer>>

/** A clean bead, of this width, with undercut deeper than the shop rule allows or without. */
const bead = (width: string, undercut = false): ReadingsForm => ({
  ...cleanReadings(),
  stations: cleanReadings().stations.map((row) => ({ ...row, width })),
  indications: undercut ? [{ kind: 'undercut', toe: 'A', at: '2', length: '1/2', depth: '1/16', diameter: '', height: '' }] : [],
})

async function look(viewer: Viewer, couponId: string, readings: ReadingsForm, revision = 1): Promise<void> {
  await submitInspection(viewer, inspectionSchema(frame).parse({ couponId, revision, comment: '', readings }))
}

/** A coupon logged by a student and read by both instructors. */
async function readTwice(first: ReadingsForm, second: ReadingsForm, { student = viewers.student, own = bead('0.25') } = {}): Promise<string> {
  const couponId = randomUUID()
  await logAs(school, student, couponId, own)
  await look(viewers.instructor, couponId, first)
  await look(viewers.otherInstructor, couponId, second)
  return couponId
}

const inOrder = <T>(n: number, make: (i: number) => Promise<T>): Promise<T[]> =>
  Array.from({ length: n }, (_, i) => i).reduce(async (done, i) => [...(await done), await make(i)], Promise.resolve<T[]>([]))

beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  const who = async (name: keyof School['people']): Promise<Viewer> => viewerOf(school, name)
  viewers = { student: await who('student'), classmate: await who('classmate'), instructor: await who('instructor'), otherInstructor: await who('otherInstructor'), coordinator: await who('coordinator') }
  await setSecondShare(viewers.coordinator, { share: 1 })
  // Of twelve coupons the second reader finds undercut on eight, the first on none; the second reads 0.01 in wider.
  await inOrder(12, (i) => readTwice(bead('0.25'), bead('0.26', i < 8), { own: bead('0.25', i === 0) }))
})
afterEach(() => requestFrom(null))

describe('coupons read twice', () => {
  it('say by rule and by pair how alike the two are, who leans, and who reads wider', async () => {
    const { report, teller, leanings } = await programAgreement(viewers.coordinator, undefined)
    expect(report.all.coupons).toBe(12)
    expect(report.all.verdicts).toMatchObject({ compared: 12, alike: 4, leftOut: 0 })
    expect(report.all.rules[0]).toMatchObject({ rule: 'Undercut', figures: { compared: 12, alike: 4 } })
    expect(report.pairs.map(({ readerIds }) => [...readerIds].sort())).toEqual([[school.people.instructor, school.people.otherInstructor].sort()])
    expect(leanings.lines.map(({ text }) => text)).toContain('Instructor Test accepts undercut that other.instructor Test rejects: 8 of the 8 coupons on which they parted over it, of 12 compared.')
    const own = report.readers.find(({ readerId }) => readerId === school.people.otherInstructor)
    expect(own?.widths).toMatchObject({ coupons: 12, places: 60 })
    expect(own?.widths.found?.bias.mean).toBeCloseTo(fromInches(0.01), 6)
    expect(teller.nameOf(school.people.instructor)).toBe('instructor Test')
  })

  it('are spoken of to each reader from their side', async () => {
    const first = await ownAgreement(viewers.instructor)
    const second = await ownAgreement(viewers.otherInstructor)
    expect(first.leanings.lines.map(({ text }) => text)).toContain('You accept undercut that other.instructor Test rejects: 8 of the 8 coupons on which you parted over it, of 12 compared.')
    expect(second.leanings.lines.map(({ text }) => text)).toContain('You reject undercut that instructor Test accepts: 8 of the 8 coupons on which you parted over it, of 12 compared.')
    // The first teaches the class and knows whose coupon it is; the second need not.
    expect(first.leanings.lines[0]?.coupons[0]?.label).toMatch(/^student Test, 2F lap no\. \d+$/)
    expect(second.leanings.lines[0]?.coupons[0]?.label).toMatch(/^2F lap no\. \d+$/)
  })

  it('do not change when somebody who has seen both corrects the first look, or decides the verdict', async () => {
    const couponId = (await db().coupon.findFirstOrThrow({ where: { number: 1, studentId: school.people.student } })).id
    const before = await programAgreement(viewers.coordinator, undefined)
    await look(viewers.instructor, couponId, bead('0.25', true), 2)
    const looks = await db().inspection.findMany({ where: { couponId, kind: 'instructor' } })
    expect(looks).toHaveLength(2)
    const standing = looks.find(({ supersededAt }) => supersededAt === null)
    await overrideVerdict(viewers.instructor, { couponId, inspectionId: standing?.id ?? '', verdict: 'accept', reason: 'The depth was read at a stop.' })
    const after = await programAgreement(viewers.coordinator, undefined)
    expect(after.report.all.rules).toEqual(before.report.all.rules)
    expect(after.report.all.verdicts).toEqual(before.report.all.verdicts)
  })

  it('are of the chosen term, and an unknown one is all of them', async () => {
    const spring = await db().term.create({ data: { programId: school.programId, name: 'Spring', startsOn: new Date('2026-01-12'), endsOn: new Date('2026-05-08') } })
    await db().class.create({ data: { programId: school.programId, termId: spring.id, name: 'Early class' } })
    expect((await programAgreement(viewers.coordinator, spring.id)).report.all.coupons).toBe(0)
    expect((await programAgreement(viewers.coordinator, school.termId)).report.all.coupons).toBe(12)
    expect(await programAgreement(viewers.coordinator, 'no-such-term')).toMatchObject({ term: null, report: { all: { coupons: 12 } } })
  })

  it('are listed newest first, and no more than asked for', async () => {
    const listed = await listReadTwice(viewers.coordinator, { termId: null }, 5)
    expect(listed.map(({ number }) => number)).toEqual([12, 11, 10, 9, 8])
  })
})

describe('who sees them', () => {
  it('a reader those they read, in whoever’s class; another instructor none; a student none, even of their own work as a coordinator', async () => {
    const { programId } = school
    const { id } = await db().person.create({ data: { programId, signInName: 'third', givenName: 'third', familyName: 'Test', memberships: { create: { role: 'instructor' } } } })
    await db().classInstructor.create({ data: { programId, classId: school.classId, personId: id } })
    const third = { ...viewers.instructor, personId: id, roles: ['instructor'] } as Viewer
    expect(await listOwnReadTwice(third, 50)).toEqual([])
    expect(await listOwnReadTwice(viewers.otherInstructor, 50)).toHaveLength(12)
    expect(await listReadTwice(viewers.instructor, { termId: null }, 50)).toEqual([])
    for (const viewer of [viewers.student, viewers.classmate]) expect(await listOwnReadTwice(viewer, 50)).toEqual([])
    expect(await listReadTwice({ ...viewers.student, roles: ['student', 'coordinator'] } as Viewer, { termId: null }, 50)).toEqual([])
  })

  it('nobody a coupon whose second reading has not been given', async () => {
    const couponId = randomUUID()
    await logAs(school, viewers.classmate, couponId)
    await look(viewers.instructor, couponId, bead('0.25'))
    expect((await listReadTwice(viewers.coordinator, { termId: null }, 50)).map((each) => each.couponId)).not.toContain(couponId)
  })
})

describe('students against their instructors', () => {
  it('compare the student’s look with the one that stands, in classes of the viewer only', async () => {
    const eyes = await classEyes(viewers.instructor, school.classId)
    expect(eyes.compared.verdicts).toMatchObject({ compared: 13, onlyFirst: [], alike: 13 })
    expect((await classEyes(viewers.otherInstructor, school.classId)).compared.coupons).toBe(0)
    expect((await classEyes(viewers.coordinator, school.classId)).compared.coupons).toBe(13)
    expect((await programEyes(viewers.coordinator, undefined)).compared.coupons).toBe(13)
    expect(await listSelfCompared(viewers.student, { classId: school.classId }, 50)).toEqual([])
  })

  it('name each student, with no rate for one coupon', async () => {
    const { students } = await classEyes(viewers.instructor, school.classId)
    expect(students.map(({ name, eye }) => [name, eye.compared, eye.agreement === null])).toEqual([['classmate Test', 1, true], ['student Test', 12, false]])
  })

  it('leave out what the viewer may still have to read blind', async () => {
    const { programId, classId, people } = school
    await db().classInstructor.create({ data: { programId, classId, personId: people.otherInstructor } })
    const seen = await listSelfCompared(viewers.otherInstructor, { classId }, 50)
    const waiting = await db().coupon.findFirstOrThrow({ where: { classId, secondWaitingSince: { not: null } } })
    expect(seen).toHaveLength(12)
    expect(seen.map(({ couponId }) => couponId)).not.toContain(waiting.id)
    await db().classInstructor.deleteMany({ where: { programId, classId, personId: people.otherInstructor } })
  })
})

describe('the file', () => {
  const ask = (query = ''): Promise<Response> => GET(new Request(`http://localhost:3000/api/exports/agreement${query}`))

  it('holds the numbers of the screen', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const response = await ask('?term=all')
    expect(response.headers.get('content-disposition')).toContain('agreement.csv')
    expect(response.headers.get('cache-control')).toBe('no-store')
    const lines = (await response.text()).replace('\uFEFF', '').split('\r\n')
    expect(lines[1]).toMatch(/^all,,,whole coupon,12,4,0\.3333,/)
    expect(lines.some((line) => line.startsWith('all,,,Undercut,12,4,0.3333,'))).toBe(true)
    expect(lines.filter((line) => line.startsWith('reader and all others,'))).toHaveLength(2)
  })

  it.each(['student', 'instructor', null] as const)('is not there for %s', async (who) => {
    await requestFrom(who && { school, who })
    expect((await ask()).status).toBe(404)
  })
})

// An instructor's look: it decides, it is never overwritten, and it is made without the student's own.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { countRows, withoutAudit } from '../support/rows'
import { buildSchool, cleanReadings, couponForm, logAs, readingsOfWidth, schoolWithCoupon, viewerOf, type School } from '../support/school'
import { sendInspection } from '@/app/teach/actions'
import { findBlindCoupon } from '@/app/_server/data/blind-coupons'
import { findCoupon } from '@/app/_server/data/coupon-record'
import { listWaiting, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { db } from '@/app/_server/db'

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
  await requestFrom({ school, who: 'instructor' })
})

const hidden = { ok: false, code: 'NOT_FOUND', message: 'This is not here, or not yours to see.', fields: {} }
/** A bead a good third too wide: rejected by the band of widths. */
const wideReadings = () => readingsOfWidth('3/8')
const look = (revision: number, readings = cleanReadings(), comment = '') => ({ couponId, revision, comment, readings })
const couponRow = async () =>
  (await database.query('select verdict, mark, "selfVerdict", "selfMark", "waitingSince", "takenById" from "Coupon" where id = $1', [couponId]))[0]
const inspections = () => database.query<{ id: string; revision: number; superseded: boolean; verdict: string }>(
  `select i.id, i.revision, i."supersededAt" is not null as superseded, s.verdict::text from "Inspection" i
   join "Scorecard" s on s."inspectionId" = i.id where i."couponId" = $1 and i.kind = 'instructor' order by i.revision`, [couponId])

describe('the first look', () => {
  it('gives the coupon its verdict and mark and ends its waiting', async () => {
    const instructor = await viewerOf(school, 'instructor')
    await takeCoupon(instructor, couponId)
    expect(await listWaiting(instructor, school.classId)).toMatchObject([{ id: couponId, number: 1, booth: 1, takenBy: { self: true } }])
    expect(await sendInspection(look(1, wideReadings()))).toMatchObject({ ok: true, value: { couponId, verdict: 'reject' } })
    expect(await listWaiting(instructor, school.classId)).toEqual([])
    const row = await couponRow()
    expect(row).toMatchObject({ verdict: 'reject', selfVerdict: 'accept', waitingSince: null, takenById: null })
    expect(row?.['mark']).toBeLessThan(Number(row?.['selfMark']))
    expect(await database.query('select "inspectedCount", "acceptedCount", "waitingCount", "lastVerdict" from "SkillSummary" where "programId" = $1', [school.programId]))
      .toEqual([{ inspectedCount: 1, acceptedCount: 0, waitingCount: 0, lastVerdict: 'reject' }])
  })

  it('writes its comment and its audit rows with it', async () => {
    await sendInspection(look(1, wideReadings(), '  Slow down less.  '))
    const coupon = await findCoupon(await viewerOf(school, 'student'), couponId)
    expect(coupon?.inspections.map(({ kind, revision, superseded }) => ({ kind, revision, superseded }))).toEqual([
      { kind: 'self', revision: 1, superseded: false }, { kind: 'instructor', revision: 1, superseded: false },
    ])
    expect(await database.query('select body, "authorId" from "Comment" where "couponId" = $1', [couponId])).toEqual([{ body: 'Slow down less.', authorId: school.people.instructor }])
    expect(await database.query(`select action, before->>'verdict' as before, after->>'verdict' as after from "AuditEvent" where "subjectId" = $1 and "actorId" = $2 order by action`, [couponId, school.people.instructor]))
      .toEqual([{ action: 'comment.add', before: null, after: null }, { action: 'inspection.submit', before: null, after: 'reject' }])
  })

  it('leaves nothing at all when its audit row cannot be written', async () => {
    const before = await countRows(database, school.programId)
    const row = await couponRow()
    expect(String(await withoutAudit(database, () => sendInspection(look(1, wideReadings(), 'Never seen.'))))).toContain('the audit trail is full')
    expect(await countRows(database, school.programId)).toEqual(before)
    expect(await couponRow()).toEqual(row)
  })

  it('is told at its field what cannot be used, and stores nothing', async () => {
    const before = await countRows(database, school.programId)
    const readings = cleanReadings()
    const answer = await sendInspection(look(1, { ...readings, stations: readings.stations.map((row, index) => (index === 1 ? { ...row, legA: 'big' } : row)) }))
    expect(answer).toMatchObject({ ok: false, code: 'INVALID', fields: { 'readings.stations.1.legA': '“big” is not a length. Write it like 5/16, .312 or 8 mm.' } })
    expect(await sendInspection({ ...look(1), verdict: 'accept' })).toMatchObject({ ok: false, code: 'INVALID' })
    expect(await sendInspection(look(0))).toMatchObject({ ok: false, code: 'INVALID' })
    expect(await countRows(database, school.programId)).toEqual(before)
  })
})

describe('two who grade one coupon', () => {
  const told = 'Someone submitted an inspection of this coupon while you had it open. Yours is not saved; what you typed is still here.'

  it('tell the second that the first was quicker, and keep nothing of the second', async () => {
    await sendInspection(look(1))
    const before = await countRows(database, school.programId)
    const row = await couponRow()
    expect(await sendInspection(look(1, wideReadings(), 'Too late.'))).toEqual({ ok: false, code: 'CONFLICT', message: told, fields: {} })
    expect(await countRows(database, school.programId)).toEqual(before)
    expect(await couponRow()).toEqual(row)
  })

  it('keep exactly one of four looks sent at the same moment', async () => {
    const answers = await Promise.all([cleanReadings(), wideReadings(), cleanReadings(), wideReadings()].map((readings) => sendInspection(look(1, readings, 'Mine.'))))
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(answers.filter((answer) => !answer.ok && answer.code === 'CONFLICT')).toHaveLength(3)
    expect(await inspections()).toHaveLength(1)
    expect(await countRows(database, school.programId)).toMatchObject({ Inspection: 2, Scorecard: 2, Comment: 1 })
    const [kept] = await inspections()
    expect(await couponRow()).toMatchObject({ verdict: kept?.verdict })
  })

  it('keep exactly one of two corrections sent at the same moment', async () => {
    await sendInspection(look(1))
    const answers = await Promise.all([sendInspection(look(2, wideReadings())), sendInspection(look(2))])
    expect(answers.map((answer) => (answer.ok ? 'kept' : answer.code)).sort()).toEqual(['CONFLICT', 'kept'])
    expect((await inspections()).map(({ revision, superseded }) => [revision, superseded])).toEqual([[1, true], [2, false]])
  })

  it('are refused a revision that skips one', async () => {
    expect(await sendInspection(look(2))).toMatchObject({ ok: false, code: 'CONFLICT' })
    await sendInspection(look(1))
    expect(await sendInspection(look(3))).toMatchObject({ ok: false, code: 'CONFLICT' })
  })
})

describe('a correction', () => {
  it('supersedes the look before it and leaves that one as it was', async () => {
    await sendInspection(look(1, wideReadings()))
    const before = await database.query(`select to_json(s) as scorecard, to_json(f) as finding from "Scorecard" s join "Finding" f using ("programId", "inspectionId")`)
    const coupon = await findBlindCoupon(await viewerOf(school, 'instructor'), couponId)
    expect(coupon?.nextRevision).toBe(2)
    expect(coupon?.standing).toMatchObject({ revision: 1, scorecard: { verdict: 'reject' } })
    expect(await sendInspection(look(2))).toMatchObject({ ok: true })
    expect((await inspections()).map(({ revision, superseded, verdict }) => ({ revision, superseded, verdict }))).toEqual([
      { revision: 1, superseded: true, verdict: 'reject' }, { revision: 2, superseded: false, verdict: 'accept' },
    ])
    const after = await database.query(`select to_json(s) as scorecard, to_json(f) as finding from "Scorecard" s join "Finding" f using ("programId", "inspectionId")`)
    for (const row of before) expect(after).toContainEqual(row)
    expect(await couponRow()).toMatchObject({ verdict: 'accept' })
    expect((await findCoupon(await viewerOf(school, 'student'), couponId))?.inspections.filter(({ kind }) => kind === 'instructor').map(({ superseded, scorecard }) => [superseded, scorecard.verdict]))
      .toEqual([[true, 'reject'], [false, 'accept']])
    expect(await database.query(`select before->>'verdict' as before, after->>'verdict' as after from "AuditEvent"
      where action = 'inspection.correct' and "subjectId" = $1`, [couponId])).toEqual([{ before: 'reject', after: 'accept' }])
  })

  it('counts once in the student’s standing', async () => {
    await sendInspection(look(1, wideReadings()))
    await sendInspection(look(2))
    expect(await database.query('select "inspectedCount", "acceptedCount" from "SkillSummary" where "programId" = $1', [school.programId])).toEqual([{ inspectedCount: 1, acceptedCount: 1 }])
  })
})

describe('before the look is submitted', () => {
  it('shows nothing of what the student read, wrote or concluded', async () => {
    const student = await viewerOf(school, 'student')
    const telling = cleanReadings()
    const form = couponForm(school, randomUUID(), {
      ...telling, stations: telling.stations.map((row) => ({ ...row, width: '0.2417', legA: '6.1357 mm' })),
      indications: [{ kind: 'arc-strike', toe: null, at: '5.4321', length: '', depth: '', diameter: '', height: '' }],
    })
    await requestFrom({ school, who: 'student' })
    const { sendCoupon } = await import('@/app/learn/actions')
    expect(await sendCoupon({ ...form, note: 'my secret note' })).toMatchObject({ ok: true })
    const seen = await findCoupon(student, form.id)
    expect(JSON.stringify(seen), 'the search would find it').toMatch(/0\.2417.*6\.1357/s)
    const blind = JSON.stringify(await findBlindCoupon(await viewerOf(school, 'instructor'), form.id))
    for (const secret of ['0.2417', '6.1357', String(0.2417 * 25.4).slice(0, 6), '5.4321', 'arc-strike', 'secret', 'self', '"verdict":"accept"', '"verdict":"reject"', `"mark":${seen?.selfMark}`]) {
      expect(blind, secret).not.toContain(secret)
    }
    expect(JSON.parse(blind)).toMatchObject({ id: form.id, verdict: null, mark: null, standing: null, nextRevision: 1 })
    expect(JSON.parse(blind)).not.toHaveProperty('note')
    expect(JSON.parse(blind)).not.toHaveProperty('selfVerdict')
  })
})

describe('who may', () => {
  const refused = async (): Promise<void> => {
    const before = await countRows(database, school.programId)
    expect(await sendInspection(look(1))).toEqual(hidden)
    expect(await countRows(database, school.programId)).toEqual(before)
  }

  it('is not an instructor taken off the class in the middle of a session', async () => {
    const instructor = await viewerOf(school, 'instructor')
    expect(await findBlindCoupon(instructor, couponId)).not.toBeNull()
    await database.query('delete from "ClassInstructor" where "classId" = $1 and "personId" = $2', [school.classId, school.people.instructor])
    expect(await findBlindCoupon(instructor, couponId)).toBeNull()
    expect(await findCoupon(instructor, couponId)).toBeNull()
    await refused()
  })

  it('is not an instructor whose role was taken in the middle of a session', async () => {
    await database.query(`delete from "Membership" where "personId" = $1`, [school.people.instructor])
    const answer = await sendInspection(look(1))
    expect(answer).toMatchObject({ ok: false, code: 'SIGNED_OUT' })
    expect(await inspections()).toEqual([])
  })

  it('is not the instructor of another class, nor the coordinator, nor the student', async () => {
    for (const who of ['otherInstructor', 'coordinator', 'student'] as const) {
      await requestFrom({ school, who })
      await refused()
    }
  })

  it('is never oneself: an instructor who practises too cannot grade their own coupon', async () => {
    const { programId, classId, people } = school
    await db().membership.create({ data: { programId, personId: people.student, role: 'instructor' } })
    await db().classInstructor.create({ data: { programId, classId, personId: people.student } })
    const both = await viewerOf(school, 'student')
    expect(both.roles.toSorted()).toEqual(['instructor', 'student'])
    await requestFrom({ school, who: 'student' })
    await refused()
    expect(await findBlindCoupon(both, couponId)).toBeNull()
    expect((await listWaiting(both, classId)).map(({ id }) => id)).not.toContain(couponId)
    const classmates = randomUUID()
    await logAs(school, await viewerOf(school, 'classmate'), classmates)
    expect(await sendInspection({ ...look(1), couponId: classmates }), 'a classmate’s they may').toMatchObject({ ok: true })
  })

  it('is nobody of another program', async () => {
    const foreign = await buildSchool(randomUUID())
    for (const who of ['instructor', 'coordinator', 'student'] as const) {
      await requestFrom({ school: foreign, who })
      await refused()
      expect(await findCoupon(await viewerOf(foreign, who), couponId)).toBeNull()
    }
  })

  it.each(['12', '', '00000000-0000-4000-8000-000000000000', "' or 1=1"])('meets a coupon id that is none, as %o, like a missing coupon', async (id) => {
    expect(await sendInspection({ ...look(1), couponId: id })).toEqual(hidden)
  })
})

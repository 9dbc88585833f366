// Gauge studies: who reads what and when, what stays covered, and what closing comes to.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { withoutAudit } from '../support/rows'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'
import { beginStudy, endStudy, sendReading } from '@/app/teach/studies/actions'
import { closeStudy, findStudy, listCouponChoices, listProgramStudies, listTaughtStudies } from '@/app/_server/data/gauge-studies'
import { addReading } from '@/app/_server/data/study-readings'
import { db } from '@/app/_server/db'
import { readingOrder, type Turn } from '@/lib/reports/gauge-study-order'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

type Who = keyof School['people']
let database: TestDatabase
let school: School
let couponIds: string[]
let studyId: string

beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  couponIds = [randomUUID(), randomUUID()]
  for (const id of couponIds) await logAs(school, await viewerOf(school, 'student'), id)
  // Two instructors of the class: whoever measures must be measured against someone.
  await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: school.people.otherInstructor } })
  studyId = randomUUID()
  await requestFrom({ school, who: 'instructor' })
})

const form = () => ({ id: studyId, classId: school.classId, name: 'Week 14', place: '2 in from the start', rounds: '2', couponIds })
const open = () => beginStudy(form())
const viewer = (who: Who) => viewerOf(school, who)
const turnsOf = (who: Who): Turn[] => [1, 2].flatMap((round) => readingOrder({ id: studyId, rounds: 2, couponIds }, school.people[who], round).map((couponId) => ({ couponId, round })))
const read = async (who: Who, turn: Turn | undefined, width: number) => {
  if (!turn) throw new Error('There is no such turn.')
  return addReading(await viewer(who), { studyId, ...turn, width })
}
async function readAll(who: Who, width: (turn: Turn, at: number) => number): Promise<void> {
  for (const [at, turn] of turnsOf(who).entries()) await read(who, turn, width(turn, at))
}
const removed = (who: Who) => db().classInstructor.deleteMany({ where: { classId: school.classId, personId: school.people[who] } })
const archived = () => db().class.updateMany({ where: { programId: school.programId, id: school.classId }, data: { archivedAt: new Date() } })
const audited = (action: string) => db().auditEvent.count({ where: { programId: school.programId, subjectId: studyId, action } })

describe('opening', () => {
  it('keeps the coupons in the order they were chosen and is audited; sent again it is the same study', async () => {
    expect(await open()).toMatchObject({ ok: true, value: { created: true } })
    expect(await open()).toMatchObject({ ok: true, value: { id: studyId, created: false } })
    const study = await findStudy(await viewer('instructor'), studyId)
    expect(study).toMatchObject({ name: 'Week 14: 2 in from the start', rounds: 2, closedAt: null, archived: false })
    expect(study?.coupons.map(({ id, sequence }) => [id, sequence])).toEqual(couponIds.map((id, index) => [id, index + 1]))
    expect(study?.readers.map(({ reads, done }) => [reads, done.length])).toEqual([[true, 0], [true, 0]])
    expect(await audited('study.open')).toBe(1)
  })

  it('sent from two tabs at once opens one', async () => {
    const answers = await Promise.all([open(), open(), open()])
    expect(answers.map(({ ok }) => ok)).toEqual([true, true, true])
    expect(await db().gaugeStudy.count({ where: { id: studyId } })).toBe(1)
    expect(await db().gaugeStudyCoupon.count({ where: { studyId } })).toBe(2)
  })

  it('takes no coupon of another class, nothing in an archived class, and no id that somebody else has', async () => {
    const elsewhere = await db().coupon.findFirstOrThrow({ where: { id: couponIds[0] ?? '' } })
    await db().coupon.create({ data: { ...elsewhere, id: randomUUID(), classId: school.otherClassId, studentId: school.people.otherStudent } })
    const foreign = await db().coupon.findFirstOrThrow({ where: { classId: school.otherClassId } })
    expect(await beginStudy({ ...form(), couponIds: [couponIds[0] ?? '', foreign.id] })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await open()
    await requestFrom({ school, who: 'otherInstructor' })
    expect(await open()).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await requestFrom({ school, who: 'instructor' })
    await archived()
    expect(await beginStudy({ ...form(), id: randomUUID() })).toMatchObject({ ok: false, code: 'CONFLICT', message: expect.stringContaining('archived') as string })
    expect(await db().gaugeStudy.count({ where: { programId: school.programId } })).toBe(1)
  })

  it('says what is missing at the field', async () => {
    expect(await beginStudy({ ...form(), name: '', place: ' ', rounds: '1', couponIds: [couponIds[0]] })).toMatchObject({
      ok: false, code: 'INVALID', fields: { name: expect.any(String), place: expect.any(String), rounds: expect.any(String), couponIds: expect.any(String) },
    })
  })

  it('leaves nothing behind where it cannot be audited', async () => {
    expect(String(await withoutAudit(database, open))).toContain('the audit trail is full')
    expect(await db().gaugeStudy.count({ where: { id: studyId } })).toBe(0)
  })
})

describe('reading', () => {
  beforeEach(open)

  it('goes turn by turn, tells what comes next, and shows no width to anyone', async () => {
    const turns = turnsOf('instructor')
    expect(await read('instructor', turns[0], 5.4321)).toEqual({ next: turns[1], done: 1 })
    expect(await audited('study.read')).toBe(1)
    for (const who of ['instructor', 'otherInstructor', 'coordinator'] as const) {
      const study = await findStudy(await viewer(who), studyId)
      expect(study?.readings).toEqual([])
      expect(JSON.stringify(study)).not.toContain('5.4321')
      expect(study?.readers.find(({ id }) => id === school.people.instructor)?.done).toEqual([turns[0]])
    }
    await readAll('instructor', () => 5.4321)
    expect(await read('instructor', turns[3], 5.4321)).toEqual({ next: null, done: 4 })
  })

  it('takes a turn sent twice, or from two tabs at once, as one reading', async () => {
    const [turn] = turnsOf('instructor')
    const answers = await Promise.all([1, 2, 3].map(() => read('instructor', turn, 6.35)))
    expect(answers.map(({ done }) => done)).toEqual([1, 1, 1])
    expect(await db().studyReading.count({ where: { studyId } })).toBe(1)
    expect(await audited('study.read')).toBe(1)
  })

  it('changes no width: another one for a turn that was read is refused, also from two tabs at once', async () => {
    const [turn] = turnsOf('instructor')
    const settled = await Promise.allSettled([read('instructor', turn, 6.35), read('instructor', turn, 7.1)])
    expect(settled.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    await expect(read('instructor', turn, 9)).rejects.toMatchObject({ code: 'CONFLICT', message: expect.stringContaining('never changed') as string })
    expect(await db().studyReading.count({ where: { studyId } })).toBe(1)
  })

  it('takes nothing out of turn, and no coupon or round that the study does not have', async () => {
    const [, second] = turnsOf('instructor')
    await expect(read('instructor', second, 6.35)).rejects.toMatchObject({ code: 'CONFLICT', message: expect.stringContaining('comes first') as string })
    await expect(read('instructor', { couponId: randomUUID(), round: 1 }, 6.35)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await expect(read('instructor', { couponId: couponIds[0] ?? '', round: 3 }, 6.35)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await db().studyReading.count({ where: { studyId } })).toBe(0)
  })

  it('says a bad width at its field: nothing, nought, words, a slipped point', async () => {
    const [turn] = turnsOf('instructor')
    for (const width of ['', ' ', '0', 'wide', '1/64', '7', '-1/4', '1/0', '2,5 in 3']) {
      expect(await sendReading({ studyId, ...turn, width }), width).toMatchObject({ ok: false, code: 'INVALID', fields: { width: expect.stringMatching(/\w/) } })
    }
    expect(await sendReading({ studyId, ...turn, width: '1/4' })).toMatchObject({ ok: true, value: { done: 1 } })
    expect((await db().studyReading.findFirstOrThrow({ where: { studyId } })).widthMm).toBeCloseTo(6.35, 9)
  })

  it('ends at the next request for whoever is taken off the class, and nobody waits for the rest', async () => {
    const turns = turnsOf('otherInstructor')
    await read('otherInstructor', turns[0], 6.2)
    await removed('otherInstructor')
    await expect(read('otherInstructor', turns[1], 6.2)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await findStudy(await viewer('otherInstructor'), studyId)).toBeNull()
    const study = await findStudy(await viewer('instructor'), studyId)
    expect(study?.readers.find(({ id }) => id === school.people.otherInstructor)).toMatchObject({ reads: false, done: [turns[0]] })
  })

  it('ends when the class is archived, or the study closed under an open form; what was read before is still the same reading', async () => {
    const [first, second] = turnsOf('instructor')
    await read('instructor', first, 6.35)
    await archived()
    await expect(read('instructor', second, 6.35)).rejects.toMatchObject({ code: 'CONFLICT', message: expect.stringContaining('archived') as string })
    await closeStudy(await viewer('coordinator'), { studyId, as: 'given-up' })
    await expect(read('instructor', second, 6.35)).rejects.toMatchObject({ code: 'CONFLICT', message: expect.stringContaining('closed meanwhile') as string })
    expect(await read('instructor', first, 6.35)).toEqual({ next: null, done: 1 })
  })
})

describe('closing', () => {
  beforeEach(open)
  const close = (as: string) => endStudy({ studyId, as })

  it('of a whole study shows every width to those who may see it, and nobody reads on', async () => {
    await readAll('instructor', (_, at) => 6 + at / 10)
    expect(await close('complete')).toMatchObject({ ok: false, code: 'CONFLICT' })
    await readAll('otherInstructor', (_, at) => 6.1 + at / 10)
    expect(await close('early')).toMatchObject({ ok: false, code: 'CONFLICT' })
    expect(await close('complete')).toMatchObject({ ok: true })
    expect(await close('complete')).toMatchObject({ ok: true }) // closed meanwhile: nothing more happens
    expect(await audited('study.close')).toBe(1)
    for (const who of ['instructor', 'otherInstructor', 'coordinator'] as const) expect((await findStudy(await viewer(who), studyId))?.readings).toHaveLength(8)
  })

  it('early leaves out who has not read everything; with fewer than two who have, it is given up', async () => {
    await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: school.people.coordinator } })
    await db().membership.create({ data: { programId: school.programId, personId: school.people.coordinator, role: 'instructor' } })
    await readAll('instructor', () => 6)
    expect(await close('early')).toMatchObject({ ok: false, code: 'CONFLICT' })
    await readAll('otherInstructor', () => 6.2)
    expect(await close('given-up')).toMatchObject({ ok: false, code: 'CONFLICT' })
    expect(await close('early')).toMatchObject({ ok: true })
  })

  it('does not wait for an instructor whose account is disabled', async () => {
    await readAll('instructor', () => 6)
    await readAll('otherInstructor', () => 6.2)
    const { id } = await db().person.create({ data: { programId: school.programId, signInName: 'third', givenName: 'Third', familyName: 'Test', disabledAt: new Date(), memberships: { create: { role: 'instructor' } } } })
    await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: id } })
    expect(await close('complete')).toMatchObject({ ok: true })
  })

  it('and a last reading at the same moment: either it is in the closed study or it was refused', async () => {
    await readAll('instructor', () => 6)
    const turns = turnsOf('otherInstructor')
    for (const turn of turns.slice(0, 3)) await read('otherInstructor', turn, 6.2)
    const [closing, reading] = await Promise.allSettled([closeStudy(await viewer('instructor'), { studyId, as: 'given-up' }), read('otherInstructor', turns[3], 6.2)])
    const { closedAt } = await db().gaugeStudy.findFirstOrThrow({ where: { id: studyId } })
    const inside = await db().studyReading.count({ where: { studyId } })
    // Closed first: the reading is told. Read first: closing would now come to something else, and is told.
    expect([closing.status, reading.status, closedAt !== null, inside]).toEqual(closing.status === 'fulfilled' ? ['fulfilled', 'rejected', true, 7] : ['rejected', 'fulfilled', false, 8])
  })
})

describe('lists', () => {
  beforeEach(open)

  it('tell each reader how far they are, open studies before closed ones', async () => {
    await read('instructor', turnsOf('instructor')[0], 6.35)
    const closed = randomUUID()
    await beginStudy({ ...form(), id: closed })
    await closeStudy(await viewer('instructor'), { studyId: closed, as: 'given-up' })
    const mine = await listTaughtStudies(await viewer('instructor'))
    expect(mine.map(({ id }) => id)).toEqual([studyId, closed])
    expect(mine[0]).toMatchObject({ own: { reads: true, done: 1 }, finished: 0, readers: 2, coupons: 2, rounds: 2 })
    expect((await listTaughtStudies(await viewer('otherInstructor')))[0]).toMatchObject({ own: { reads: true, done: 0 } })
    expect((await listProgramStudies(await viewer('coordinator')))[0]).toMatchObject({ own: { reads: false, done: 0 }, readers: 2 })
    expect(await listTaughtStudies(await viewer('coordinator'))).toEqual([])
    expect(await listProgramStudies(await viewer('instructor'))).toEqual([])
  })

  it('offer the coupons of the class, newest first', async () => {
    expect((await listCouponChoices(await viewer('instructor'), school.classId)).map(({ id }) => id)).toEqual([...couponIds].reverse())
    expect(await listCouponChoices(await viewer('coordinator'), school.classId)).toEqual([])
  })
})

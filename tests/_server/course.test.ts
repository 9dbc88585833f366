// The course of a class: its list, the versions of its exercises, and coupons logged while somebody edits.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, cleanReadings, couponForm, viewerOf, type School } from '../support/school'
import { sendCoupon } from '@/app/learn/actions'
import { addClass, addTerm, archiveClass, saveClass } from '@/app/program/classes/actions'
import { sendInspection } from '@/app/teach/actions'
import { addLibraryExercise, addToList, checkExercise, chooseOpensAfter, copyClassList, moveInList, removeFromList, saveExercise } from '@/app/teach/course/actions'
import { findEditable, listVersions } from '@/app/_server/data/exercise-versions'
import { listQueue } from '@/app/_server/data/queue'
import { db } from '@/app/_server/db'
import { taughtClasses } from '@/app/_server/views/class-board'
import { classCourse } from '@/app/_server/views/class-course'
import { exerciseHistory } from '@/app/_server/views/exercise-editor'
import { LIBRARY } from '@/lib/course/library'
import { typedExercise, type TypedExercise } from '@/lib/course/typed-exercise'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let school: School
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  await requestFrom({ school, who: 'instructor' })
})

const key = () => ({ classId: school.classId, exerciseId: school.exerciseId })
async function typed(over: Partial<TypedExercise> = {}, fromVersion = 1) {
  const found = await findEditable(await viewerOf(school, 'instructor'), key())
  if (!found) throw new Error('The exercise is not there.')
  return { ...key(), fromVersion, ...typedExercise(found.exercise, 'in'), ...over }
}
const list = (classId = school.classId) =>
  db().classExercise.findMany({ where: { classId }, orderBy: { sequence: 'asc' }, select: { exerciseId: true, opensAfterId: true } })
const ids = async (classId = school.classId) => (await list(classId)).map(({ exerciseId }) => exerciseId)
const audit = (action: string) => db().auditEvent.findMany({ where: { programId: school.programId, action }, select: { after: true } })
async function fromLibrary(index = 0): Promise<string> {
  const result = await addLibraryExercise({ classId: school.classId, key: LIBRARY[index]?.key })
  if (!result.ok) throw new Error(result.message)
  return result.value.exerciseId
}

describe('the list of a class', () => {
  it('takes exercises from the library, moves them and says what opens what', async () => {
    const [second, third] = [await fromLibrary(0), await fromLibrary(1)]
    expect(await moveInList({ classId: school.classId, exerciseId: third, to: 'up' })).toMatchObject({ ok: true })
    expect(await ids()).toEqual([school.exerciseId, third, second])
    expect(await chooseOpensAfter({ classId: school.classId, exerciseId: second, opensAfterId: third })).toMatchObject({ ok: true })
    expect(await chooseOpensAfter({ classId: school.classId, exerciseId: third, opensAfterId: school.exerciseId })).toMatchObject({ ok: true })
    expect(await chooseOpensAfter({ ...key(), opensAfterId: second })).toMatchObject({ ok: false, code: 'INVALID', fields: { opensAfterId: expect.stringContaining('wait for each other') } })
    expect(await audit('course.add')).toHaveLength(2)
    expect(await audit('course.move')).toHaveLength(1)
  })

  it('loses an exercise but never its coupons, and what waited for it waits for what it waited for', async () => {
    const [second, third] = [await fromLibrary(0), await fromLibrary(1)]
    await chooseOpensAfter({ classId: school.classId, exerciseId: second, opensAfterId: school.exerciseId })
    await chooseOpensAfter({ classId: school.classId, exerciseId: third, opensAfterId: second })
    expect(await removeFromList({ classId: school.classId, exerciseId: second })).toMatchObject({ ok: true })
    expect(await list()).toEqual([{ exerciseId: school.exerciseId, opensAfterId: null }, { exerciseId: third, opensAfterId: school.exerciseId }])
    await requestFrom({ school, who: 'student' })
    const coupon = randomUUID()
    expect(await sendCoupon(couponForm(school, coupon))).toMatchObject({ ok: true })
    await requestFrom({ school, who: 'instructor' })
    await removeFromList(key())
    expect(await db().coupon.count({ where: { id: coupon } })).toBe(1)
    expect(await addToList(key())).toMatchObject({ ok: true })
    expect(await addToList(key())).toMatchObject({ ok: false, code: 'CONFLICT' })
  })

  it('copies another class’s list once, whatever is asked twice', async () => {
    const added = await fromLibrary(0)
    await requestFrom({ school, who: 'otherInstructor' })
    expect(await copyClassList({ classId: school.otherClassId, from: school.classId })).toMatchObject({ ok: true, value: { added: 1 } })
    expect(await copyClassList({ classId: school.otherClassId, from: school.classId })).toMatchObject({ ok: true, value: { added: 0 } })
    expect(await ids(school.otherClassId)).toEqual([school.exerciseId, added])
  })

  it('keeps both of two exercises added in the same moment', async () => {
    await Promise.all([fromLibrary(0), fromLibrary(1)])
    expect(await ids()).toHaveLength(3)
  })
})

describe('a version of an exercise', () => {
  it('is the next one, leaves the last as it was and says what changed', async () => {
    expect(await saveExercise(await typed({ voltsMax: '19', nominalLeg: '5/16' }))).toMatchObject({ ok: true, value: { version: 2 } })
    const versions = await listVersions(await viewerOf(school, 'instructor'), key())
    expect(versions.map(({ exercise }) => [exercise.version, exercise.boothCard.volts?.max])).toEqual([[2, 19], [1, 18]])
    expect(versions[0]?.by).toBe('instructor Test')
    expect(await audit('exercise.save')).toEqual([{ after: { version: 2, changes: ['Fillet leg: 1/4 in became 5/16 in.', 'Voltage: 15 V to 18 V became 15 V to 19 V.'] } }])
  })

  it('tells the second of two who save that somebody was first, and keeps one version', async () => {
    const [one, two] = [await typed({ title: 'One' }), await typed({ title: 'Two' })]
    const answers = await Promise.all([saveExercise(one), saveExercise(two)])
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ code: 'CONFLICT', fields: { version: '2' } })
    expect(await db().exerciseVersion.count({ where: { exerciseId: school.exerciseId } })).toBe(2)
  })

  it('says at the box what cannot be read and saves nothing', async () => {
    const result = await saveExercise(await typed({ nominalLeg: 'a bit', voltsMin: '30', electrodeClass: 'X99', passCount: '0', plateThickness: '' }))
    expect(result).toMatchObject({ ok: false, code: 'INVALID' })
    if (!result.ok) expect(Object.keys(result.fields).sort()).toEqual(['electrodeClass', 'nominalLeg', 'passCount', 'plateThickness', 'voltsMax'])
    expect(await saveExercise(await typed())).toMatchObject({ ok: false, message: expect.stringContaining('Nothing is different') })
    expect(await saveExercise(await typed({ criteria: 'none@1' }))).toMatchObject({ ok: false, fields: { criteria: expect.any(String) } })
    expect(await db().exerciseVersion.count({ where: { exerciseId: school.exerciseId } })).toBe(1)
    expect((await db().exercise.findFirstOrThrow({ where: { id: school.exerciseId } })).currentVersion).toBe(1)
  })

  it('warns of the wrong polarity with a source, and saves it all the same', async () => {
    const wrong = await typed({ polarity: 'DCEP' })
    const checked = await checkExercise(wrong)
    expect(checked.ok && checked.value.warnings.some(({ text, source }) => /E71T-11/.test(text) && /A5\.20/.test(source))).toBe(true)
    expect(await saveExercise(wrong)).toMatchObject({ ok: true, value: { version: 2 } })
  })
})

describe('the coordinator', () => {
  it('keeps the course of a class they do not teach, and is named in its versions', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const second = await fromLibrary(0)
    expect(await moveInList({ classId: school.classId, exerciseId: second, to: 'up' })).toMatchObject({ ok: true })
    expect(await chooseOpensAfter({ ...key(), opensAfterId: second })).toMatchObject({ ok: true })
    expect(await list()).toEqual([{ exerciseId: second, opensAfterId: null }, { exerciseId: school.exerciseId, opensAfterId: second }])
    expect(await saveExercise(await typed({ title: 'From the office' }))).toMatchObject({ ok: true, value: { version: 2 } })
    const history = await exerciseHistory(await viewerOf(school, 'instructor'), key())
    expect(history?.versions[0]).toMatchObject({ version: 2, facts: expect.stringContaining('coordinator Test') as string, changes: [expect.stringContaining('From the office')] })
  })

  it('of another program, and the instructor of another class, change nothing', async () => {
    const form = await typed({ title: 'Not theirs' })
    const other = await buildSchool(randomUUID())
    for (const from of [{ school, who: 'otherInstructor' }, { school: other, who: 'coordinator' }] as const) {
      await requestFrom(from)
      expect(await saveExercise(form)).toMatchObject({ ok: false, code: 'NOT_FOUND' })
      expect(await removeFromList(key())).toMatchObject({ ok: false, code: 'NOT_FOUND' })
      expect(await classCourse(await viewerOf(from.school, from.who), school.classId)).toBeNull()
    }
    expect(await ids()).toEqual([school.exerciseId])
  })
})

describe('a coupon logged while its exercise is edited', () => {
  it('belongs to the version its form was opened with; without one, to the current', async () => {
    await saveExercise(await typed({ title: 'Edited' }))
    await requestFrom({ school, who: 'student' })
    const [older, newer, never] = [randomUUID(), randomUUID(), randomUUID()]
    expect(await sendCoupon({ ...couponForm(school, older), exerciseVersion: 1 })).toMatchObject({ ok: true })
    expect(await sendCoupon(couponForm(school, newer))).toMatchObject({ ok: true })
    expect(await sendCoupon({ ...couponForm(school, never), exerciseVersion: 3 })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    const rows = await db().coupon.findMany({ where: { id: { in: [older, newer, never] } }, orderBy: { number: 'asc' }, select: { id: true, exerciseVersion: true } })
    expect(rows).toEqual([{ id: older, exerciseVersion: 1 }, { id: newer, exerciseVersion: 2 }])
  })
})

describe('an exercise taken off the list under an open log form', () => {
  it('says so to whoever confirmed its cautions, and nothing to anyone else', async () => {
    await removeFromList(key())
    await requestFrom({ school, who: 'student' })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'CONFLICT', message: expect.stringContaining('no longer on the list') as string })
    await db().safetyAcknowledgement.deleteMany({ where: { programId: school.programId, studentId: school.people.classmate } })
    for (const who of ['classmate', 'otherStudent'] as const) {
      await requestFrom({ school, who })
      expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    }
    expect(await db().coupon.count({ where: { classId: school.classId } })).toBe(0)
  })
})

describe('a coupon that waits in an archived class', () => {
  it('is still reached from the instructor’s classes and graded: its record is finished, nothing new begins', async () => {
    const couponId = randomUUID()
    await requestFrom({ school, who: 'student' })
    expect(await sendCoupon(couponForm(school, couponId))).toMatchObject({ ok: true })
    await requestFrom({ school, who: 'coordinator' })
    await archiveClass({ classId: school.classId, archived: true })
    const instructor = await viewerOf(school, 'instructor')
    const classes = async () => (await taughtClasses(instructor)).map(({ record, waiting }) => [record.id, record.archived, waiting])
    expect(await classes()).toEqual([[school.classId, true, 1]])
    expect((await listQueue(instructor, school.classId)).map(({ id }) => id)).toEqual([couponId])
    expect(await taughtClasses(await viewerOf(school, 'otherInstructor'))).toMatchObject([{ record: { id: school.otherClassId } }])

    await requestFrom({ school, who: 'instructor' })
    expect(await sendInspection({ couponId, revision: 1, comment: '', readings: cleanReadings() })).toMatchObject({ ok: true })
    expect(await classes()).toEqual([])
  })
})

describe('terms and classes', () => {
  const made = async (over: object = {}) =>
    addClass({ termId: school.termId, instructorId: school.people.instructor, copyFrom: school.classId, name: 'Evenings', room: '', meets: 'Tue', ...over })

  it('are made by the coordinator, from another class’s list', async () => {
    await requestFrom({ school, who: 'coordinator' })
    const term = await addTerm({ name: 'Spring', startsOn: '2027-01-11', endsOn: '2027-05-14' })
    const result = await made({ termId: term.ok ? term.value.termId : '' })
    expect(result).toMatchObject({ ok: true, value: { exercises: 1 } })
    expect(await ids(result.ok ? result.value.classId : '')).toEqual([school.exerciseId])
    expect(await addTerm({ name: 'Spring', startsOn: '2027-01-11', endsOn: '2027-01-10' })).toMatchObject({ fields: { endsOn: expect.any(String) } })
    expect(await addTerm({ name: 'Spring', startsOn: '2027-01-11', endsOn: '2027-05-14' })).toMatchObject({ fields: { name: expect.any(String) } })
    expect(await made({ name: 'Class one' })).toMatchObject({ ok: false, fields: { name: expect.stringContaining('of this name') } })
    expect(await saveClass({ classId: school.classId, name: 'Class two', room: '', meets: '' })).toMatchObject({ ok: false, fields: { name: expect.any(String) } })
    expect(await saveClass({ classId: school.classId, name: 'Mornings', room: 'Bay 2', meets: '' })).toMatchObject({ ok: true })
  })

  it('archived under an open form refuse what is sent and keep their record', async () => {
    await requestFrom({ school, who: 'student' })
    const coupon = randomUUID()
    expect(await sendCoupon(couponForm(school, coupon))).toMatchObject({ ok: true })
    const form = await typed({ title: 'Too late' })
    await requestFrom({ school, who: 'coordinator' })
    expect(await archiveClass({ classId: school.classId, archived: true })).toMatchObject({ ok: true })
    await requestFrom({ school, who: 'instructor' })
    expect(await saveExercise(form)).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    expect(await addLibraryExercise({ classId: school.classId, key: LIBRARY[0]?.key })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await requestFrom({ school, who: 'student' })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'CONFLICT', message: expect.stringContaining('archived') as string })
    await requestFrom({ school, who: 'otherStudent' })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await requestFrom({ school, who: 'student' })
    expect(await db().coupon.count({ where: { classId: school.classId } })).toBe(1)
    await requestFrom({ school, who: 'coordinator' })
    expect(await archiveClass({ classId: school.classId, archived: false })).toMatchObject({ ok: true })
    expect(await audit('class.archive')).toHaveLength(1)
    await requestFrom({ school, who: 'student' })
    expect(await sendCoupon(couponForm(school, randomUUID()))).toMatchObject({ ok: true })
  })
})

// What is printed for a class: for those who teach it and for the coordinator, and for nobody else.
import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, cleanReadings, LENGTH_MM, logAs, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { submitInspection } from '@/app/_server/data/inspections'
import { listStaffNotes, takeDownStaffNote, writeStaffNote } from '@/app/_server/data/staff-notes'
import { db } from '@/app/_server/db'
import { blankSheet } from '@/app/_server/views/blank-sheet'
import { classPaper } from '@/app/_server/views/class-paper'
import { classProgress } from '@/app/_server/views/class-progress'
import { classSheet } from '@/app/_server/views/class-sheet'
import { couponTags } from '@/app/_server/views/coupon-tags'
import { studentPlaces } from '@/app/_server/views/student-places'
import { inspectionSchema } from '@/lib/schemas/inspection'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'
import { readQr } from '../support/read-qr'

let school: School
let instructor: Viewer
const asOf = new Date()
const NOT_THEIRS = ['student', 'classmate', 'otherStudent', 'otherInstructor'] as const

beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  instructor = await viewerOf(school, 'instructor')
  const student = await viewerOf(school, 'student')
  await db().safetyAcknowledgement.deleteMany({ where: { studentId: school.people.classmate } })
  const [first, second] = [randomUUID(), randomUUID()]
  await logAs(school, student, first, cleanReadings())
  await logAs(school, student, second, cleanReadings())
  const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') } as const
  await submitInspection(instructor, inspectionSchema(frame).parse({ couponId: first, revision: 1, comment: '', readings: cleanReadings() }))
})

describe('the class sheet', () => {
  it('gives every student their counts and says whose cautions are unsigned', async () => {
    const sheet = await classSheet(instructor, school.classId, asOf)
    const cellOf = (id: string) => sheet?.pages[0]?.rows.find(({ key }) => key === id)?.cells.find(({ exerciseId }) => exerciseId === school.exerciseId)
    expect(cellOf(school.people.student)).toMatchObject({ logged: 2, inspected: 1, accepted: 1, unsigned: false, standing: { probability: null } })
    expect(cellOf(school.people.classmate)).toMatchObject({ logged: 0, inspected: 0, unsigned: true })
    expect(sheet?.printedAt).toMatch(/\d{4}, \d{1,2}:\d\d [AP]M C[DS]T$/)
  })

  it.each(NOT_THEIRS)('is not there for the %s', async (who) => {
    expect(await classSheet(await viewerOf(school, who), school.classId, asOf)).toBeNull()
  })
})

describe('the blank inspection sheet', () => {
  it('has a place for each station and names the rules with their limits in every language asked for', async () => {
    const sheet = await blankSheet(instructor, school.classId, school.exerciseId, 'both', asOf)
    expect(sheet?.languages.map(({ locale }) => locale)).toEqual(['en', 'es'])
    expect(sheet?.places).toHaveLength(sheet?.along.length ?? NaN)
    const [english, spanish] = sheet?.languages ?? []
    expect(english?.sizes).toContain('Width')
    expect(spanish?.sizes).toContain('Ancho')
    // AWS D1.1/D1.1M, visual acceptance, item 1: any crack is unacceptable. The set the class uses is the structural one.
    expect(english?.rules.find(({ name }) => name === 'Cracks')?.limit).toBe('none allowed')
    expect(spanish?.rules.map(({ key }) => key)).toEqual(english?.rules.map(({ key }) => key))
  })

  it.each(NOT_THEIRS)('is not there for the %s', async (who) => {
    expect(await blankSheet(await viewerOf(school, who), school.classId, school.exerciseId, undefined, asOf)).toBeNull()
  })
})

describe('coupon tags', () => {
  it('have a symbol that reads as the address of the log of their exercise', async () => {
    const tags = await couponTags(instructor, school.classId, school.exerciseId, asOf)
    expect(tags?.address.endsWith(`/learn/${school.classId}/${school.exerciseId}/log`)).toBe(true)
    expect(tags && readQr(tags.qr)).toBe(tags?.address)
    expect(tags?.pages.flat().map(({ key }) => key).sort()).toEqual([school.people.student, school.people.classmate].sort())
  })

  it.each(NOT_THEIRS)('are not there for the %s', async (who) => {
    expect(await couponTags(await viewerOf(school, who), school.classId, school.exerciseId, asOf)).toBeNull()
  })

  it('are not there for an exercise that is not of the class', async () => {
    expect(await couponTags(instructor, school.classId, randomUUID(), asOf)).toBeNull()
  })
})

describe('the whole class in one document', () => {
  it('has one summary for each active student', async () => {
    const progress = await classProgress(instructor, school.classId, 'letter', asOf)
    expect(progress?.summaries.map(({ studentId, summary }) => [studentId, summary.coupons]).sort()).toEqual([[school.people.student, 2], [school.people.classmate, 0]].sort())
  })

  it.each(NOT_THEIRS)('is not there for the %s', async (who) => {
    expect(await classProgress(await viewerOf(school, who), school.classId, 'letter', asOf)).toBeNull()
  })
})

describe('the coordinator', () => {
  it('prints for a class they do not teach what its instructor prints, and nothing of another program', async () => {
    const papersOf = (viewer: Viewer) => Promise.all([
      classSheet(viewer, school.classId, asOf), blankSheet(viewer, school.classId, school.exerciseId, 'both', asOf), couponTags(viewer, school.classId, school.exerciseId, asOf),
      classProgress(viewer, school.classId, 'letter', asOf), classPaper(viewer, school.classId),
    ])
    const coordinator = await viewerOf(school, 'coordinator')
    expect(await papersOf(coordinator)).toEqual(await papersOf(instructor))
    expect(await papersOf(await viewerOf(await buildSchool('south'), 'coordinator'))).toEqual([null, null, null, null, null])
  })
})

describe('notes for staff', () => {
  it('keep the row and two audit entries when one is taken down', async () => {
    const { id } = await writeStaffNote(instructor, { studentId: school.people.student, body: 'Needs a left-hand glove.' })
    expect(await listStaffNotes(instructor, school.people.student)).toMatchObject([{ id, body: 'Needs a left-hand glove.' }])
    await takeDownStaffNote(instructor, { noteId: id })
    await takeDownStaffNote(instructor, { noteId: id })
    expect(await listStaffNotes(instructor, school.people.student)).toEqual([])
    expect(await db().staffNote.findFirstOrThrow({ where: { id } })).toMatchObject({ body: 'Needs a left-hand glove.', withdrawnAt: expect.any(Date) as Date })
    const audited = await db().auditEvent.findMany({ where: { subjectId: school.people.student, action: { startsWith: 'staff-note.' } }, orderBy: { at: 'asc' } })
    expect(audited.map(({ action }) => action)).toEqual(['staff-note.write', 'staff-note.take-down'])
  })
})

describe('the classes of a student', () => {
  it.each(['instructor', 'coordinator'] as const)('say which cautions are unsigned to the %s of the class', async (role) => {
    const viewer = await viewerOf(school, role)
    const of = async (id: string) => (await studentPlaces(viewer, id)).map(({ classId, active, cautions }) => [classId, active, cautions?.unsigned])
    expect(await of(school.people.student)).toEqual([[school.classId, true, []]])
    expect(await of(school.people.classmate)).toEqual([[school.classId, true, ['2F lap, E71T-11 0.045']]])
  })

  it('never call cautions signed that the viewer cannot see', async () => {
    expect(await studentPlaces(await viewerOf(school, 'student'), school.people.student)).toMatchObject([{ classId: school.classId, cautions: null }])
    expect(await studentPlaces(await viewerOf(school, 'otherInstructor'), school.people.student)).toEqual([])
  })
})

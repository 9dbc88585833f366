// What a class is told and asks for: notes by the program's calendar, one waiting request a student, cautions once a term.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { withoutAudit } from '../support/rows'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { listCurrentNotes, listNotes, takeDownClassNote, writeClassNote } from '@/app/_server/data/class-notes'
import { answerLook, askForLook, findOwnLook, listWaitingLooks, takeBackLook } from '@/app/_server/data/look-requests'
import { listUnsignedCautions } from '@/app/_server/data/safety'
import { db } from '@/app/_server/db'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'

let database: TestDatabase
let school: School
let instructor: Viewer
let student: Viewer
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  ;[instructor, student] = await Promise.all([viewerOf(school, 'instructor'), viewerOf(school, 'student')])
})

const NOW = new Date('2026-11-26T03:30:00Z') // still the 25th in Chicago
const note = (over: Record<string, unknown> = {}) => writeClassNote(instructor, { classId: school.classId, kind: 'message', onDate: null, exerciseId: null, body: 'Bring gloves.', replaces: null, ...over }, NOW)
const bodies = async (viewer: Viewer, at = NOW) => (await listCurrentNotes(viewer, school.classId, at)).map(({ body }) => body)

describe('notes', () => {
  it('are of the day at the program’s place', async () => {
    await note({ kind: 'demo', body: 'Restarts.' })
    expect(await listCurrentNotes(student, school.classId, NOW)).toMatchObject([{ onDate: '2026-11-25', kind: 'demo' }])
    expect(await bodies(student, new Date('2026-11-26T07:00:00Z')), 'a demo is of its day only').toEqual([])
  })

  it('stay on the first screen for a week as messages, and a demo to come is not told before its day', async () => {
    await note()
    await note({ kind: 'demo', onDate: '2026-11-28', body: 'Vertical down.' })
    expect(await bodies(student)).toEqual(['Bring gloves.'])
    expect(await bodies(student, new Date('2026-12-01T18:00:00Z'))).toEqual(['Bring gloves.'])
    expect(await bodies(student, new Date('2026-12-03T18:00:00Z'))).toEqual([])
    const all = (viewer: Viewer) => listNotes(viewer, school.classId, NOW, { most: 10, after: null }).then((rows) => rows.map(({ body }) => body))
    expect(await all(student)).toEqual(['Bring gloves.'])
    expect(await all(instructor)).toEqual(['Vertical down.', 'Bring gloves.'])
  })

  it('are for the class: not for others, nor for who has left it', async () => {
    await note()
    expect(await bodies(await viewerOf(school, 'otherStudent'))).toEqual([])
    await database.query('update "Enrolment" set "withdrawnAt" = now() where "classId" = $1 and "personId" = $2', [school.classId, student.personId])
    expect(await bodies(student)).toEqual([])
  })

  it('are never written over: new words keep the old ones, taken down', async () => {
    const { id } = await note()
    await note({ replaces: id, body: 'Bring gloves and a jacket.' })
    expect(await bodies(student)).toEqual(['Bring gloves and a jacket.'])
    expect(await db().classNote.count({ where: { programId: school.programId } })).toBe(2)
    await expect(note({ replaces: id })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    const [standing] = await listCurrentNotes(instructor, school.classId, NOW)
    await takeDownClassNote(instructor, { noteId: standing!.id })
    expect(await bodies(student)).toEqual([])
  })

  it('are written by whoever teaches the class at this moment', async () => {
    await db().classInstructor.deleteMany({ where: { classId: school.classId } })
    await expect(note()).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  it('leave an audit row, or nothing', async () => {
    expect(await withoutAudit(database, () => note())).toBeInstanceOf(Error)
    expect(await db().classNote.count({ where: { programId: school.programId } })).toBe(0)
  })
})

describe('asking for a look', () => {
  const ask = (over: Record<string, unknown> = {}) => askForLook(student, { classId: school.classId, exerciseId: null, note: null, ...over })

  it('twice, or twice at once, is one request with its first words', async () => {
    const [first, second, third] = await Promise.all([ask({ note: 'Restart' }), ask({ note: 'Restart' }), ask({ note: 'Restart' })])
    expect(new Set([first.id, second.id, third.id]).size).toBe(1)
    expect(await ask({ note: 'Something else' })).toEqual(first)
    expect(await listWaitingLooks(instructor, school.classId)).toMatchObject([{ booth: 1, note: 'Restart', student: { id: student.personId } }])
  })

  it('ends when the instructor was there, or when the student needs it no more, and may begin again', async () => {
    const { id } = await ask()
    await answerLook(instructor, { lookId: id })
    await answerLook(instructor, { lookId: id }) // pressed twice
    expect(await findOwnLook(student, school.classId)).toBeNull()
    const again = await ask()
    expect(again.id).not.toBe(id)
    await takeBackLook(student, { classId: school.classId })
    expect(await listWaitingLooks(instructor, school.classId)).toEqual([])
    expect(await db().auditEvent.findMany({ where: { programId: school.programId, action: { startsWith: 'look.' } }, orderBy: { at: 'asc' }, select: { action: true } }))
      .toEqual(['look.ask', 'look.answer', 'look.ask', 'look.take-back'].map((action) => ({ action })))
  })

  it('is for a class one is in, about an exercise of it', async () => {
    await expect(ask({ classId: school.otherClassId })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await expect(ask({ exerciseId: randomUUID() })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await ask()
    await database.query('update "Enrolment" set "withdrawnAt" = now() where "classId" = $1 and "personId" = $2', [school.classId, student.personId])
    expect(await listWaitingLooks(instructor, school.classId), 'who has left waits no longer').toEqual([])
    await expect(ask()).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  it('is answered by whoever teaches the class', async () => {
    const { id } = await ask()
    await expect(answerLook(await viewerOf(school, 'otherInstructor'), { lookId: id })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect(await listWaitingLooks(await viewerOf(school, 'otherInstructor'), school.classId)).toEqual([])
  })
})

describe('cautions', () => {
  it('are asked for again in a new term: without them no coupon is taken', async () => {
    expect(await logAs(school, student, randomUUID())).toMatchObject({ created: true })
    const term = await db().term.create({ data: { programId: school.programId, name: 'Next', startsOn: new Date('2027-01-10'), endsOn: new Date('2027-05-20') } })
    await database.query('update "Class" set "termId" = $2 where id = $1', [school.classId, term.id])
    await expect(logAs(school, student, randomUUID())).rejects.toMatchObject({ code: expect.any(String) })
    expect((await listUnsignedCautions(instructor, school.classId, CAUTIONS_VERSION)).length).toBeGreaterThan(0)
  })
})

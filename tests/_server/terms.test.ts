// Terms: changed with what overlaps said, archived with their classes, deleted only while they have none.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { setArchived } from '@/app/_server/data/class-admin'
import { changeTerm, listTerms, makeTerm, removeTerm, setTermArchived } from '@/app/_server/data/terms'
import { db } from '@/app/_server/db'
import { changedTermSchema } from '@/lib/schemas/term-form'

let school: School
let coordinator: Viewer
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  coordinator = await viewerOf(school, 'coordinator')
})

const audited = async (): Promise<string[]> =>
  (await db().auditEvent.findMany({ where: { programId: school.programId }, orderBy: [{ at: 'asc' }, { id: 'asc' }] })).map(({ action }) => action)
const spring = { name: 'Spring', startsOn: '2027-01-11', endsOn: '2027-05-14' }
const openClasses = (): Promise<number> => db().class.count({ where: { programId: school.programId, archivedAt: null } })

describe('a term', () => {
  it('is given another name and other days, with what was there before', async () => {
    await changeTerm(coordinator, { termId: school.termId, name: 'Autumn', startsOn: '2026-08-31', endsOn: '2026-12-11' })
    await changeTerm(coordinator, { termId: school.termId, name: 'Autumn', startsOn: '2026-08-31', endsOn: '2026-12-11' })
    expect(await listTerms(coordinator)).toMatchObject([{ name: 'Autumn', startsOn: new Date('2026-08-31'), endsOn: new Date('2026-12-11'), classes: 2, archived: false }])
    expect(await db().auditEvent.findMany({ where: { programId: school.programId }, select: { action: true, before: true } })).toEqual([
      { action: 'term.change', before: { name: 'Fall', startsOn: '2026-08-24', endsOn: '2026-12-18' } },
    ])
  })

  it('says which other terms it shares a day with, the first and the last day included', async () => {
    const made = await makeTerm(coordinator, spring)
    expect(made.overlaps).toEqual([])
    expect((await changeTerm(coordinator, { ...spring, termId: made.termId, startsOn: '2026-12-18' })).overlaps).toEqual(['Fall'])
    expect((await changeTerm(coordinator, { ...spring, termId: made.termId, startsOn: '2026-12-19' })).overlaps).toEqual([])
    expect((await makeTerm(coordinator, { name: 'Weekends', startsOn: '2026-12-01', endsOn: '2027-02-01' })).overlaps).toEqual(['Fall', 'Spring'])
  })

  it('does not take the name of another one, nor end before it starts', async () => {
    const { termId } = await makeTerm(coordinator, spring)
    await expect(changeTerm(coordinator, { ...spring, termId, name: 'Fall' })).rejects.toMatchObject({ code: 'INVALID', fields: { name: expect.stringContaining('of this name') as string } })
    expect(changedTermSchema.safeParse({ ...spring, termId, endsOn: '2027-01-10' }).error?.issues).toMatchObject([{ path: ['endsOn'], message: 'A term ends on or after the day it starts.' }])
    expect(changedTermSchema.safeParse({ ...spring, termId, endsOn: '2027-02-30' }).error?.issues).toMatchObject([{ path: ['endsOn'], message: 'Give the day.' }])
  })

  it('archived archives its open classes; taken back it opens those again and no others', async () => {
    await setArchived(coordinator, { classId: school.otherClassId, archived: true })
    await setTermArchived(coordinator, { termId: school.termId, archived: true })
    await setTermArchived(coordinator, { termId: school.termId, archived: true })
    expect(await openClasses()).toBe(0)
    expect(await listTerms(coordinator)).toMatchObject([{ archived: true }])
    await setTermArchived(coordinator, { termId: school.termId, archived: false })
    await setTermArchived(coordinator, { termId: school.termId, archived: false })
    expect(await db().class.findMany({ where: { programId: school.programId, archivedAt: null }, select: { id: true } })).toEqual([{ id: school.classId }])
    expect(await audited()).toEqual(['class.archive', 'class.archive', 'term.archive', 'class.reopen', 'term.reopen'])
  })

  it('that has classes is never deleted; one without is, with an audit row', async () => {
    await setTermArchived(coordinator, { termId: school.termId, archived: true })
    await expect(removeTerm(coordinator, { termId: school.termId })).rejects.toMatchObject({ code: 'CONFLICT' })
    const { termId } = await makeTerm(coordinator, spring)
    await expect(setTermArchived(coordinator, { termId, archived: true })).rejects.toMatchObject({ code: 'CONFLICT' })
    await removeTerm(coordinator, { termId })
    expect((await listTerms(coordinator)).map(({ id }) => id)).toEqual([school.termId])
    expect((await audited()).at(-1)).toBe('term.remove')
  })
})

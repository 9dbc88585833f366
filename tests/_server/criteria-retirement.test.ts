// A version of the program's own criteria taken from choice: readable, kept by those who use it, chosen by nobody new.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, couponForm, viewerOf, type School } from '../support/school'
import { sendCoupon } from '@/app/learn/actions'
import { retireCriteria } from '@/app/program/criteria/actions'
import { saveExercise } from '@/app/teach/course/actions'
import { publishDraft, startDraft } from '@/app/_server/data/criteria-drafts'
import { findCriteria } from '@/app/_server/data/criteria'
import { db } from '@/app/_server/db'
import { criteriaList } from '@/app/_server/views/criteria-list'
import { criteriaSetView } from '@/app/_server/views/criteria-set'
import { exerciseEditor } from '@/app/_server/views/exercise-editor'
import { criteriaById } from '@/lib/criteria/catalogue'
import { draftOf } from '@/lib/criteria/draft/to-draft'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let school: School
let criteriaId: string
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  criteriaId = await publish('Tight undercut')
})

/** A copy of the shop rule, published as the program's own. */
async function publish(title: string): Promise<string> {
  const coordinator = await viewerOf(school, 'coordinator')
  const { draftId } = await startDraft(coordinator, { title, system: 'us', from: { id: 'shop-bead', version: 1 } })
  const { updatedAt } = await db().criteriaDraft.findFirstOrThrow({ where: { id: draftId }, select: { updatedAt: true } })
  return (await publishDraft(coordinator, { draftId, seen: updatedAt.toISOString(), document: { ...draftOf(criteriaById('shop-bead')), title } })).id
}

async function retire(retired = true) {
  await requestFrom({ school, who: 'coordinator' })
  return retireCriteria({ criteriaId, version: 1, retired })
}
async function editor() {
  const found = await exerciseEditor(await viewerOf(school, 'instructor'), school)
  if (!found) throw new Error('The exercise is not to be edited.')
  return found
}
async function save(over: object) {
  const { version, values } = await editor()
  await requestFrom({ school, who: 'instructor' })
  return saveExercise({ classId: school.classId, exerciseId: school.exerciseId, fromVersion: version, ...values, ...over })
}
const offered = async () => (await editor()).criteria.filter(({ value }) => value === `${criteriaId}@1`).map(({ label }) => label)
const use = () => save({ criteria: `${criteriaId}@1` })

describe('a retired version', () => {
  it('is offered to no exercise, can still be read, and is offered again when taken back', async () => {
    expect(await offered()).toEqual(['Tight undercut (version 1)'])
    expect(await retire()).toMatchObject({ ok: true })
    expect(await offered()).toEqual([])
    expect(await use()).toMatchObject({ ok: false, code: 'INVALID', fields: { criteria: expect.stringContaining('no longer offered') as string } })
    const instructor = await viewerOf(school, 'instructor')
    expect(await findCriteria(instructor, criteriaId, 1)).toMatchObject({ title: 'Tight undercut' })
    expect(await criteriaSetView(instructor, criteriaId, 1)).toMatchObject({ retired: true })
    expect((await criteriaList(instructor)).sets.find(({ id }) => id === criteriaId)?.versions).toMatchObject([{ version: 1, retired: true }])
    expect(await retire(false)).toMatchObject({ ok: true })
    expect(await use()).toMatchObject({ ok: true, value: { version: 2 } })
  })

  it('goes on judging the exercises that use it, through their next versions, and is not found again once they left it', async () => {
    await use()
    await retire()
    expect(await offered()).toEqual(['Tight undercut (version 1, retired)'])
    await requestFrom({ school, who: 'student' })
    const coupon = randomUUID()
    expect(await sendCoupon(couponForm(school, coupon))).toMatchObject({ ok: true })
    expect(await db().scorecard.findFirst({ where: { inspection: { couponId: coupon } }, select: { criteriaId: true } })).toEqual({ criteriaId })
    expect(await save({ title: 'Edited with the same criteria' })).toMatchObject({ ok: true, value: { version: 3 } })
    expect(await save({ criteria: 'shop-bead@1' })).toMatchObject({ ok: true, value: { version: 4 } })
    expect(await offered()).toEqual([])
  })

  it('is retired once however often it is asked, with one audit row for each change', async () => {
    await Promise.all([retire(), retire()])
    await retire()
    await retire(false)
    await retire(false)
    const events = await db().auditEvent.findMany({ where: { programId: school.programId, subjectId: criteriaId, action: { in: ['criteria.retire', 'criteria.offer'] } }, orderBy: { at: 'asc' }, select: { action: true, after: true } })
    expect(events).toEqual([{ action: 'criteria.retire', after: { version: 1 } }, { action: 'criteria.offer', after: { version: 1 } }])
  })

  it('is never one that ships with the application, nor one there is not', async () => {
    await requestFrom({ school, who: 'coordinator' })
    expect(await retireCriteria({ criteriaId: 'shop-bead', version: 1, retired: true })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    expect(await retireCriteria({ criteriaId, version: 2, retired: true })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    const foreign = await buildSchool(randomUUID())
    await requestFrom({ school: foreign, who: 'coordinator' })
    expect(await retireCriteria({ criteriaId, version: 1, retired: true })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    expect(await db().criteriaRetirement.count({ where: { programId: { in: [school.programId, foreign.programId] } } })).toBe(0)
  })
})

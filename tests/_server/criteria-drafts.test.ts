// Writing criteria: kept as typed, one saving at a time, published once and for good, and tried on the coupons there are.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, cleanReadings, logAs, viewerOf, type School } from '../support/school'
import { beginCriteria, beginNextVersion, dropCriteria, previewCriteria, publishCriteria, saveCriteria, tryLimits } from '@/app/program/criteria/actions'
import { criteriaSet, listCriteria } from '@/app/_server/data/criteria'
import { findDraft } from '@/app/_server/data/criteria-drafts'
import { sendInspection } from '@/app/teach/actions'
import { criteriaList } from '@/app/_server/views/criteria-list'
import { criteriaSetView } from '@/app/_server/views/criteria-set'
import { db } from '@/app/_server/db'
import type { Viewer } from '@/app/_server/auth/viewer'
import { criteriaById } from '@/lib/criteria/catalogue'
import { blankLimit, type DraftCriteria } from '@/lib/criteria/draft/draft'
import type { ReadingsForm } from '@/lib/schemas/readings'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let school: School
let coordinator: Viewer
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  coordinator = await viewerOf(school, 'coordinator')
  await requestFrom({ school, who: 'coordinator' })
})

async function begun(title = 'Tight undercut', from = 'shop-bead 1'): Promise<{ draftId: string; seen: string; document: DraftCriteria }> {
  const result = await beginCriteria({ title, from, system: 'us' })
  if (!result.ok) throw new Error(result.message)
  return stored(result.value.draftId)
}
async function stored(draftId: string) {
  const draft = await findDraft(coordinator, draftId)
  if (!draft) throw new Error('The draft is not there.')
  return { draftId, seen: draft.updatedAt.toISOString(), document: draft.document }
}
const withUndercut = (document: DraftCriteria, value: string, note = 'Half the welder test limit.'): DraftCriteria => ({
  ...document, rules: document.rules.map((rule) => (rule.id === 'undercut' ? { ...rule, max: { ...blankLimit(), value }, source: { ...rule.source, note } } : rule)),
})
const undercutAt = (document: DraftCriteria): number => document.rules.findIndex(({ id }) => id === 'undercut')
async function published(value = '1/64') {
  const draft = await begun()
  const result = await publishCriteria({ ...draft, document: withUndercut(draft.document, value) })
  if (!result.ok) throw new Error(JSON.stringify(result))
  return result.value
}

describe('a draft', () => {
  it('begins as a copy, or with nothing, under an id that no set that ships has', async () => {
    const copy = await begun()
    expect(copy.document).toMatchObject({ base: { id: 'shop-bead', version: 1 }, title: 'Tight undercut' })
    expect(copy.document.rules).toHaveLength(criteriaById('shop-bead').rules.length)
    expect((await begun('Tight: undercut', '')).document).toMatchObject({ base: null, rules: [] })
    const ids = (await db().criteriaDraft.findMany({ where: { programId: school.programId }, select: { criteriaId: true } })).map(({ criteriaId }) => criteriaId)
    expect(ids.sort()).toEqual(['own.tight-undercut', 'own.tight-undercut-2'])
  })

  it('needs a title and a set that is there', async () => {
    expect(await beginCriteria({ title: ' ', from: '', system: 'us' })).toMatchObject({ ok: false, code: 'INVALID', fields: { title: 'Type a title.' } })
    expect(await beginCriteria({ title: 'X', from: 'no-such 1', system: 'us' })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })

  it('needs a title of its own, when it begins and when it is published', async () => {
    const shop = criteriaById('shop-bead').title
    expect(await beginCriteria({ title: shop.toUpperCase(), from: '', system: 'us' })).toMatchObject({ ok: false, fields: { title: expect.stringContaining('another') } })
    const draft = await begun()
    expect(await beginCriteria({ title: 'tight undercut', from: '', system: 'us' })).toMatchObject({ ok: false, fields: { title: expect.stringContaining('being written') } })
    expect(await publishCriteria({ ...draft, document: { ...withUndercut(draft.document, '1/64'), title: shop } })).toMatchObject({ ok: false, fields: { title: expect.any(String) } })
  })

  it('is kept as typed, however wrong', async () => {
    const draft = await begun()
    const document = { ...withUndercut(draft.document, 'about a hair'), passMark: 'lots' }
    expect(await saveCriteria({ ...draft, document })).toMatchObject({ ok: true })
    expect((await stored(draft.draftId)).document).toEqual(document)
  })

  it('tells the second of two who edit it, and keeps the first', async () => {
    const draft = await begun()
    const first = { ...draft.document, title: 'First' }
    const saved = await saveCriteria({ ...draft, document: first })
    const second = await saveCriteria({ ...draft, document: { ...draft.document, title: 'Second' } })
    expect(second).toMatchObject({ ok: false, code: 'CONFLICT', message: expect.stringContaining('coordinator Test saved this draft') })
    expect((await stored(draft.draftId)).document.title).toBe('First')
    // Whoever wants theirs after all saves it over the one they were told of.
    expect(!second.ok && saved.ok && second.fields['seen'] === saved.value.seen).toBe(true)
    if (!second.ok) expect(await saveCriteria({ ...draft, seen: second.fields['seen'], document: { ...draft.document, title: 'Second' } })).toMatchObject({ ok: true })
    expect((await stored(draft.draftId)).document.title).toBe('Second')
  })

  it('of two savings at once keeps one', async () => {
    const draft = await begun()
    const answers = await Promise.all(['A', 'B', 'C'].map((title) => saveCriteria({ ...draft, document: { ...draft.document, title } })))
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
  })

  it('is gone once thrown away, and says so to whoever still has it open', async () => {
    const draft = await begun()
    expect(await dropCriteria({ draftId: draft.draftId })).toMatchObject({ ok: true })
    expect(await saveCriteria(draft)).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    expect(await db().auditEvent.findFirst({ where: { programId: school.programId, action: 'criteria.drop' } })).toMatchObject({ before: { document: { title: 'Tight undercut' } } })
  })
})

describe('publishing', () => {
  it('makes version 1, which never changes again, and puts the draft away', async () => {
    const key = await published()
    expect(key).toEqual({ id: 'own.tight-undercut', version: 1 })
    const set = await criteriaSet(school.programId, key.id, 1)
    expect(set.rules.find(({ id }) => id === 'undercut')).toMatchObject({ max: { form: 'fixed', mm: 25.4 / 64 } })
    expect(await db().criteriaDraft.count({ where: { programId: school.programId } })).toBe(0)
    await expect(db().criteriaSet.updateMany({ where: { programId: school.programId, id: key.id }, data: { title: 'Other' } })).rejects.toThrow()
    await expect(db().criteriaSet.deleteMany({ where: { programId: school.programId, id: key.id } })).rejects.toThrow()
    expect(await db().auditEvent.findFirst({ where: { programId: school.programId, action: 'criteria.publish' } })).toMatchObject({ subjectId: key.id, after: { version: 1 } })
  })

  it('makes the next version of the next edit and leaves exercises with theirs', async () => {
    const { id } = await published()
    await db().exerciseVersion.create({ data: { ...(await exerciseRow()), version: 2, criteriaId: id, criteriaVersion: 1 } })
    const next = await beginNextVersion({ criteriaId: id })
    const again = await beginNextVersion({ criteriaId: id })
    expect(next.ok && again.ok && next.value.draftId === again.value.draftId).toBe(true)
    if (!next.ok) return
    const draft = await stored(next.value.draftId)
    expect(draft.document.base).toEqual({ id, version: 1 })
    expect(await publishCriteria(draft)).toMatchObject({ ok: false, code: 'INVALID', message: 'Nothing differs from version 1, which is published already.' })
    expect(await publishCriteria({ ...draft, document: withUndercut(draft.document, '3/128', 'Between the two.') })).toMatchObject({ ok: true, value: { id, version: 2 } })
    expect(await db().exerciseVersion.findFirstOrThrow({ where: { exerciseId: school.exerciseId, version: 2 } })).toMatchObject({ criteriaId: id, criteriaVersion: 1 })
    expect((await listCriteria(coordinator)).filter((line) => line.id === id).map(({ version }) => version)).toEqual([2, 1])
    expect((await criteriaList(coordinator)).sets[0]).toMatchObject({ id, own: true, versions: [{ version: 2 }, { version: 1 }] })
    expect(await criteriaSetView(coordinator, id, 1)).toMatchObject({
      version: 1, newest: 2, own: true, from: { title: criteriaById('shop-bead').title, version: 1 }, changes: [{ name: 'Undercut', before: 'Undercut: depth at most 1/32 in.', after: 'Undercut: depth at most 1/64 in.' }],
    })
    expect(await criteriaSetView(coordinator, id, 2)).toMatchObject({ exercises: 0, from: { title: 'Tight undercut', version: 1 }, changes: [{ after: 'Undercut: depth at most 3/128 in.' }] })
    expect(await criteriaSetView(coordinator, 'shop-bead', 1)).toMatchObject({ own: false, from: null, changes: [] })
  })

  it('makes no next version of a set that ships with the application', async () => {
    expect(await beginNextVersion({ criteriaId: 'shop-bead' })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })

  it('says at the box what is wrong and keeps what was typed', async () => {
    const draft = await begun()
    const document = withUndercut(draft.document, 'thin')
    const box = `rules.${undercutAt(document)}.max.value`
    expect(await publishCriteria({ ...draft, document })).toMatchObject({ ok: false, code: 'INVALID', fields: { [box]: expect.stringContaining('“thin”') } })
    expect(await db().criteriaSet.count({ where: { programId: school.programId, id: 'own.tight-undercut' } })).toBe(0)
    expect((await stored(draft.draftId)).document).toEqual(draft.document)
  })

  it('asks for another note where the limit it spoke of has changed', async () => {
    const draft = await begun()
    const note = draft.document.rules[undercutAt(draft.document)]?.source.note ?? ''
    expect(await publishCriteria({ ...draft, document: withUndercut(draft.document, '1/64', note) }))
      .toMatchObject({ ok: false, code: 'INVALID', fields: { [`rules.${undercutAt(draft.document)}.source.note`]: expect.stringContaining('limit before') } })
  })

  it('happens once of two at once', async () => {
    const draft = await begun()
    const document = withUndercut(draft.document, '1/64')
    const answers = await Promise.all([publishCriteria({ ...draft, document }), publishCriteria({ ...draft, document })])
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ code: expect.stringMatching(/CONFLICT|NOT_FOUND/) })
    expect(await db().criteriaSet.count({ where: { programId: school.programId, id: 'own.tight-undercut' } })).toBe(1)
  })
})

const exerciseRow = async () => {
  const { boothCard, ...row } = await db().exerciseVersion.findFirstOrThrow({ where: { exerciseId: school.exerciseId, version: 1 } })
  return { ...row, boothCard: boothCard as object }
}

describe('trying limits', () => {
  const undercut = (depth: string): ReadingsForm => ({
    ...cleanReadings(),
    indications: [{ kind: 'undercut', at: '2', length: '1', depth, diameter: '', height: '', toe: 'A' }],
  })
  const log = async (who: 'student' | 'classmate' | 'otherStudent', readings: ReadingsForm): Promise<string> => {
    const id = randomUUID()
    await logAs(who === 'otherStudent' ? { ...school, classId: school.otherClassId } : school, await viewerOf(school, who), id, readings)
    return id
  }

  it('draws a sample coupon judged by the draft and says its rules', async () => {
    const { document } = await begun()
    const before = await previewCriteria({ document, sample: 'faults' })
    const after = await previewCriteria({ document: withUndercut(document, '1/64'), sample: 'faults' })
    expect([before.ok && before.value.look?.scorecard.verdict, after.ok && after.value.look?.scorecard.verdict]).toEqual(['accept', 'reject'])
    const deeper = { document, sample: 'clean', readings: { width: '', undercut: '3/64', pore: '' } }
    expect(await previewCriteria({ ...deeper, readings: { ...deeper.readings, undercut: '1/32' } })).toMatchObject({ ok: true, value: { readings: {}, look: { scorecard: { verdict: 'accept' } } } })
    expect(await previewCriteria(deeper), 'with a reading of the author’s own').toMatchObject({ ok: true, value: { readings: {}, look: { scorecard: { verdict: 'reject' } } } })
    expect(await previewCriteria({ ...deeper, readings: { ...deeper.readings, undercut: 'deep' } })).toMatchObject({ ok: true, value: { problems: {}, readings: { undercut: expect.stringContaining('no size') as string }, look: null } })
    const broken = await previewCriteria({ document: withUndercut(document, 'x'), sample: 'faults' })
    expect(broken).toMatchObject({ ok: true, value: { look: null, problems: { [`rules.${undercutAt(document)}.max.value`]: expect.any(String) } } })
    if (broken.ok) expect(broken.value.rules.map((rule) => rule === null)).toEqual(document.rules.map(({ id }) => id === 'undercut'))
  })

  it('judges the coupons there are again, says which way they change, and changes nothing', async () => {
    const clean = await log('student', cleanReadings())
    const edge = await log('classmate', undercut('1/32'))
    const deep = await log('otherStudent', undercut('1/16'))
    const cards = await db().scorecard.count({ where: { programId: school.programId } })
    const { document } = await begun()
    const tighter = await tryLimits({ document: withUndercut(document, '1/64'), of: { criteriaId: 'shop-bead' } })
    expect(tighter).toMatchObject({
      ok: true, value: { ok: true, sentence: 'With these limits, 1 of the last 3 coupons would change verdict.', ways: ['1 from accepted to rejected'], coupons: [{ couponId: edge, before: 'Accept', after: 'Reject', why: 'rejected by undercut' }] },
    })
    const looser = await tryLimits({ document: withUndercut(document, '1/8'), of: { exerciseId: school.exerciseId } })
    expect(looser).toMatchObject({ ok: true, value: { ways: ['1 from rejected to accepted'], coupons: [{ couponId: deep }] } })
    expect(await tryLimits({ document, of: { criteriaId: 'shop-bead' } })).toMatchObject({ ok: true, value: { sentence: 'With these limits, none of the last 3 coupons would change verdict.' } })
    expect(await db().scorecard.count({ where: { programId: school.programId } })).toBe(cards)
    expect(clean).not.toBe(edge)
  })

  it('reads the instructor’s look where there is one', async () => {
    const couponId = await log('student', cleanReadings())
    await requestFrom({ school, who: 'instructor' })
    expect(await sendInspection({ couponId, revision: 1, comment: '', readings: undercut('1/32') })).toMatchObject({ ok: true })
    await requestFrom({ school, who: 'coordinator' })
    const { document } = await begun()
    expect(await tryLimits({ document: withUndercut(document, '1/64'), of: { exerciseId: school.exerciseId } })).toMatchObject({ ok: true, value: { coupons: [{ couponId, before: 'Accept', after: 'Reject' }] } })
  })

  it('leaves out what waits for the viewer’s own blind look', async () => {
    await log('student', cleanReadings())
    const { programId, classId, people } = school
    await db().membership.create({ data: { programId, personId: people.coordinator, role: 'instructor' } })
    await db().classInstructor.create({ data: { programId, classId, personId: people.coordinator } })
    const { document } = await begun()
    const asked = () => tryLimits({ document, of: { exerciseId: school.exerciseId } })
    expect(await asked()).toMatchObject({ ok: true, value: { sentence: expect.stringContaining('No coupon') } })
    await db().coupon.updateMany({ where: { programId }, data: { waitingSince: null } })
    expect(await asked()).toMatchObject({ ok: true, value: { sentence: expect.stringContaining('the one coupon') } })
  })

  it('says so where a rule asks for what nobody measured', async () => {
    await log('student', cleanReadings())
    const { document } = await begun()
    const throat = { ...document.rules[0]!, key: '99', id: 'throat', kind: 'reading-range', reading: 'throat', min: { ...blankLimit(), value: '3/16' }, max: blankLimit('none') } as const
    expect(await tryLimits({ document: { ...document, rules: [...document.rules, throat] }, of: { criteriaId: 'shop-bead' } }))
      .toMatchObject({ ok: true, value: { ways: ['1 from accepted to incomplete'], notes: [expect.stringContaining('not measured')], coupons: [{ why: 'not measured for throat' }] } })
  })

  it('counts no coupon of an exercise that another set judges', async () => {
    await log('student', cleanReadings())
    const { document } = await begun()
    expect(await tryLimits({ document, of: { criteriaId: 'iso5817-c' } })).toMatchObject({ ok: true, value: { sentence: expect.stringContaining('No coupon has been judged here yet') } })
  })
})

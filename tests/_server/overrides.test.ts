// An instructor's own verdict over the computed one: once for a look, with a reason, and never in place of a measurement.
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { withoutAudit } from '../support/rows'
import { cleanReadings, readingsOfWidth, schoolWithCoupon, viewerOf, type School } from '../support/school'
import { sendInspection } from '@/app/teach/actions'
import { decideVerdict, dropSnippet, keepSnippet } from '@/app/teach/coupons/actions'
import { listSnippets } from '@/app/_server/data/snippets'
import { couponResult } from '@/app/_server/views/coupon-result'
import { db } from '@/app/_server/db'
import { MOST_SNIPPETS } from '@/lib/schemas/snippet'
import type { ReadingsForm } from '@/lib/schemas/readings'

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

const REASON = 'The band is narrow for this wire; the toes are even.'
const wide = () => readingsOfWidth('3/8')
const unlooked = (): ReadingsForm => ({ ...cleanReadings(), lookedFor: [] })
async function graded(readings: ReadingsForm, revision = 1): Promise<string> {
  expect(await sendInspection({ couponId, revision, comment: '', readings })).toMatchObject({ ok: true })
  return (await db().inspection.findFirstOrThrow({ where: { couponId, kind: 'instructor', revision } })).id
}
const decide = (inspectionId: string, over: Record<string, unknown> = {}) => decideVerdict({ couponId, inspectionId, verdict: 'accept', reason: REASON, ...over })
const coupon = () => db().coupon.findFirstOrThrow({ where: { id: couponId }, select: { verdict: true, mark: true } })

describe('deciding', () => {
  it('changes the verdict that stands and leaves the mark and the scorecard as computed', async () => {
    const id = await graded(wide())
    const before = await coupon()
    expect(await decide(id)).toMatchObject({ ok: true })
    expect(await coupon()).toEqual({ verdict: 'accept', mark: before.mark })
    expect((await db().scorecard.findFirstOrThrow({ where: { inspectionId: id } })).verdict).toBe('reject')
    expect(await db().skillSummary.findFirstOrThrow({ where: { studentId: school.people.student } })).toMatchObject({ acceptedCount: 1, lastVerdict: 'accept' })
  })

  it('is shown to the student with the computed verdict and the reason', async () => {
    await decide(await graded(wide()))
    const seen = await couponResult(await viewerOf(school, 'student'), couponId)
    expect(seen?.lead?.scorecard).toMatchObject({ verdict: 'accept', computed: 'reject', decision: { reason: REASON } })
  })

  it('happens once for a look, and a correction leaves it behind', async () => {
    const id = await graded(wide())
    expect(await decide(id)).toMatchObject({ ok: true })
    expect(await decide(id, { reason: 'Once more with feeling.' })).toMatchObject({ ok: false, code: 'CONFLICT' })
    await graded(wide(), 2)
    expect((await coupon()).verdict).toBe('reject')
    expect(await db().verdictOverride.count({ where: { programId: school.programId } })).toBe(1)
    expect(await decide(id)).toMatchObject({ ok: false, code: 'CONFLICT', message: expect.stringContaining('Another look') })
  })

  it('of two at once keeps one', async () => {
    const id = await graded(wide())
    const answers = await Promise.all([decide(id), decide(id), decide(id)])
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await db().verdictOverride.count({ where: { programId: school.programId } })).toBe(1)
  })

  it('cannot accept what nobody measured, but can reject it', async () => {
    const id = await graded(unlooked())
    expect((await coupon()).verdict).toBe('incomplete')
    expect(await decide(id)).toMatchObject({ ok: false, code: 'INVALID', fields: { verdict: expect.stringContaining('measured') } })
    expect(await decide(id, { verdict: 'reject' })).toMatchObject({ ok: true })
    expect((await coupon()).verdict).toBe('reject')
  })

  it('takes a reason that says something, and is not asked for what the readings give already', async () => {
    const id = await graded(wide())
    for (const reason of ['', 'ok', '  see above ']) expect(await decide(id, { reason }), reason).toMatchObject({ ok: false, code: 'INVALID', fields: { reason: expect.any(String) } })
    expect(await decide(id, { verdict: 'reject' })).toMatchObject({ ok: false, code: 'INVALID' })
    expect(await db().verdictOverride.count({ where: { programId: school.programId } })).toBe(0)
  })

  it('is a thing of the class’s instructors', async () => {
    const id = await graded(wide())
    for (const who of ['student', 'otherInstructor', 'coordinator'] as const) {
      await requestFrom({ school, who })
      expect(await decide(id), who).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    }
    await db().classInstructor.deleteMany({ where: { classId: school.classId } })
    await requestFrom({ school, who: 'instructor' })
    expect(await decide(id), 'removed from the class meanwhile').toMatchObject({ ok: false, code: 'NOT_FOUND' })
  })

  it('leaves an audit row, or nothing at all', async () => {
    const id = await graded(wide())
    expect(await withoutAudit(database, () => decide(id))).toBeInstanceOf(Error)
    expect((await coupon()).verdict).toBe('reject')
    expect(await decide(id)).toMatchObject({ ok: true })
    expect(await db().auditEvent.findMany({ where: { action: 'verdict.override', programId: school.programId } })).toMatchObject([{ before: { verdict: 'reject' }, after: { verdict: 'accept', reason: REASON } }])
  })
})

describe('sentences kept for next time', () => {
  it('are one’s own, each once', async () => {
    expect(await keepSnippet({ body: ' Even toes. ' })).toMatchObject({ ok: true, value: { body: 'Even toes.' } })
    expect(await keepSnippet({ body: 'Even toes.' })).toMatchObject({ ok: true })
    expect(await keepSnippet({ body: '  ' })).toMatchObject({ ok: false, code: 'INVALID' })
    const [own] = await listSnippets(await viewerOf(school, 'instructor'))
    expect(own).toMatchObject({ body: 'Even toes.' })
    expect(await listSnippets(await viewerOf(school, 'otherInstructor'))).toEqual([])
    await requestFrom({ school, who: 'otherInstructor' })
    expect(await dropSnippet({ snippetId: own!.id })).toMatchObject({ ok: false, code: 'NOT_FOUND' })
    await requestFrom({ school, who: 'instructor' })
    expect(await dropSnippet({ snippetId: own!.id })).toMatchObject({ ok: true })
    expect(await listSnippets(await viewerOf(school, 'instructor'))).toEqual([])
  })

  it('stop at what can be looked over', async () => {
    const own = { programId: school.programId, personId: school.people.instructor }
    await db().commentSnippet.createMany({ data: Array.from({ length: MOST_SNIPPETS - 1 }, (_, n) => ({ ...own, body: `Sentence ${n}` })) })
    const answers = await Promise.all(['a', 'b', 'c'].map((body) => keepSnippet({ body })))
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await db().commentSnippet.count({ where: own })).toBe(MOST_SNIPPETS)
  })
})

// The invented school: what the demonstration and the end-to-end tests stand on. The small one goes through the database.
import os from 'node:os'
import path from 'node:path'
import { mkdtempSync, rmSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { buildSchool, viewerOf } from '../support/school'
import { passwordMatches } from '@/app/_server/auth/passwords'
import { viewerForPerson, type Viewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { listClasses } from '@/app/_server/data/classes'
import { listWaiting } from '@/app/_server/data/waiting-coupons'
import { toExercise } from '@/app/_server/data/exercises'
import { judge, toScorecard } from '@/app/_server/data/scorecards'
import { findReadiness, listStudentSkills } from '@/app/_server/data/skills'
import { criteriaById } from '@/lib/criteria/catalogue'
import { passwordProblem } from '@/lib/schemas/password'
import { testPartsSchema } from '@/lib/schemas/test-attempt'
import { readStoredReadings } from '@/lib/schemas/readings'
import { parseLength } from '@/lib/units/length'
import { COURSE } from '@/prisma/seed/course'
import { SHOWCASE } from '@/prisma/seed/exercises-fcaw-s'
import { COORDINATOR, INSTRUCTORS, KNOWN, PASSWORDS, students } from '@/prisma/seed/people'
import type { Rows } from '@/prisma/seed/rows'
import { invent, NotEmpty, seedDatabase } from '@/prisma/seed/seed-database'

const asOf = new Date('2026-11-25T18:40:00Z')
const folder = process.env.TOELINE_DATA ?? mkdtempSync(path.join(os.tmpdir(), 'toeline-seed-'))
const hashes = { student: 'x', instructor: 'x', coordinator: 'x' }

let coordinator: Viewer
let programId: string
afterAll(() => rmSync(path.join(folder, 'photos'), { recursive: true, force: true }))

beforeAll(async () => {
  await testDatabase()
  await seedDatabase({ asOf, small: true, folder })
  const person = await db().person.findFirstOrThrow({ where: { signInName: COORDINATOR.signInName } })
  const viewer = await viewerForPerson(person.programId, person.id)
  if (!viewer) throw new Error('The coordinator cannot sign in.')
  coordinator = viewer
  programId = viewer.programId
}, 120_000)

const personId = async (signInName: string): Promise<string> => (await db().person.findFirstOrThrow({ where: { programId, signInName } })).id
const showcase = COURSE['FCAW-S'].find(({ key }) => key === SHOWCASE)
const showcaseId = async (): Promise<string> =>
  (await db().exerciseVersion.findFirstOrThrow({ where: { programId, title: showcase?.title ?? '' } })).exerciseId
const verdictsWhere = async (numbers: { lte: number } | { gte: number }) => {
  const rows = await db().coupon.groupBy({ by: ['verdict'], where: { programId, number: numbers, verdict: { in: ['accept', 'reject'] } }, _count: true })
  const count = (verdict: string) => rows.find((row) => row.verdict === verdict)?._count ?? 0
  return { accepted: count('accept'), rate: count('accept') / (count('accept') + count('reject')) }
}

describe('the invented school', () => {
  it('has two terms, four classes in each, and everyone who belongs there', async () => {
    expect(await db().program.count()).toBe(1)
    expect(await db().term.count()).toBe(2)
    const classes = await listClasses(coordinator)
    expect(classes.map(({ term, name }) => `${term.name} ${name}`)).toEqual(expect.arrayContaining(['Fall 2026 Stick (SMAW)', 'Summer 2026 Stick (SMAW)']))
    expect(classes).toHaveLength(8)
    const roles = await db().membership.groupBy({ by: ['role'], _count: true, orderBy: { role: 'asc' } })
    expect(Object.fromEntries(roles.map(({ role, _count }) => [role, _count]))).toEqual({ student: 24, instructor: 4, coordinator: 1 })
    expect(students(false)).toHaveLength(60)
    expect(new Set([...students(false), COORDINATOR, ...Object.values(INSTRUCTORS)].map(({ signInName }) => signInName)).size).toBe(65)
  })

  it('has a few hundred coupons, most of them inspected by an instructor', async () => {
    const coupons = await db().coupon.count()
    expect(coupons).toBeGreaterThan(150)
    expect(coupons).toBeLessThan(350)
    expect(await db().coupon.count({ where: { verdict: { not: null } } })).toBe(coupons - 12)
    expect(await db().inspection.count({ where: { kind: 'self' } })).toBe(coupons)
    expect(await db().coupon.count({ where: { OR: [{ verdict: 'incomplete' }, { selfVerdict: 'incomplete' }] } })).toBeGreaterThan(0)
  })

  it('signs in with the passwords it prints, which the rules for passwords allow', async () => {
    for (const [signInName, password] of [[KNOWN.withEstimate, PASSWORDS.student], [INSTRUCTORS['FCAW-S'].signInName, PASSWORDS.instructor], [COORDINATOR.signInName, PASSWORDS.coordinator]] as const) {
      const { passwordHash } = await db().person.findFirstOrThrow({ where: { signInName } })
      expect(await passwordMatches(passwordHash, password)).toBe(true)
      expect(passwordProblem(password, [signInName, 'toeline'], 'en')).toBeNull()
    }
  })

  it('refuses a database that already holds a program', async () => {
    await expect(seedDatabase({ asOf, small: true, folder })).rejects.toThrow(NotEmpty)
  })
})

describe('the evening that is going on', () => {
  it('has twelve coupons waiting at six booths, all of the last two hours and of one class', async () => {
    const teacher = await viewerForPerson(programId, await personId(INSTRUCTORS['FCAW-S'].signInName))
    const waiting = await db().coupon.findMany({ where: { waitingSince: { not: null } } })
    expect(waiting).toHaveLength(12)
    expect(new Set(waiting.map(({ booth }) => booth)).size).toBe(6)
    expect(new Set(waiting.map(({ classId }) => classId)).size).toBe(1)
    expect(Math.min(...waiting.map(({ receivedAt }) => receivedAt.getTime()))).toBeGreaterThan(asOf.getTime() - 2 * 3600_000)
    if (!teacher) throw new Error('The instructor cannot sign in.')
    expect(await listWaiting(teacher, waiting[0]?.classId ?? '')).toHaveLength(12)
  })

  it('lies in the middle of its class at any hour of any day, with nothing in the future', () => {
    // Midnight, a Sunday, and the nights on which clocks in Chicago change.
    for (const moment of ['2026-11-26T06:00:00Z', '2026-08-23T15:17:00Z', '2026-11-01T07:30:00Z', '2027-03-14T08:10:00Z', '2026-12-31T23:59:00Z']) {
      const now = new Date(moment)
      const rows = invent({ asOf: now, small: true }, hashes)
      const waiting = rows.Coupon.filter(({ waitingSince }) => waitingSince !== null)
      expect(waiting, moment).toHaveLength(12)
      const latest = Math.max(...rows.Coupon.map(({ receivedAt }) => receivedAt.getTime()), ...rows.Inspection.map(({ submittedAt }) => submittedAt.getTime()), ...rows.Comment.map(({ createdAt }) => createdAt.getTime()))
      expect(latest, moment).toBeLessThan(now.getTime())
      expect(Math.min(...waiting.map(({ receivedAt }) => receivedAt.getTime())), moment).toBeGreaterThan(now.getTime() - 2 * 3600_000)
      const person = new Map(rows.Person.map(({ id, signInName }) => [id, signInName]))
      const lap = rows.ExerciseVersion.find(({ title }) => title === showcase?.title)
      const lapsOf = (signInName: string) => rows.Coupon.filter((coupon) => coupon.exerciseId === lap?.exerciseId && person.get(coupon.studentId) === signInName)
      expect(lapsOf(KNOWN.withEstimate).filter(({ verdict }) => verdict !== null && verdict !== 'incomplete').length, moment).toBeGreaterThanOrEqual(5)
      expect(lapsOf(KNOWN.withFew), moment).toHaveLength(3)
      expect(lapsOf(KNOWN.beforeCautions), moment).toHaveLength(0)
      const [earlier, current] = rows.Term
      expect(earlier?.name, moment).not.toBe(current?.name)
      expect(earlier && current && earlier.endsOn < current.startsOn, moment).toBe(true)
    }
  })

  it('is the same school for the same moment', () => {
    expect(invent({ asOf, small: true }, hashes)).toEqual(invent({ asOf, small: true }, hashes))
  })
})

describe('the people with a set course', () => {
  it('one has an estimate of the lap joint, one has three coupons of it, one has not confirmed its cautions', async () => {
    const exerciseId = await showcaseId()
    const standing = async (signInName: string) =>
      (await listStudentSkills(coordinator, await personId(signInName))).find((skill) => skill.exerciseId === exerciseId)
    expect((await standing(KNOWN.withEstimate))?.probability).toBeGreaterThan(0)
    expect(await standing(KNOWN.withFew)).toMatchObject({ couponCount: 3, probability: null })
    expect(await standing(KNOWN.beforeCautions)).toBeUndefined()
    const confirmed = async (signInName: string) => db().safetyAcknowledgement.count({ where: { exerciseId, student: { signInName } } })
    expect(await confirmed(KNOWN.withFew)).toBe(1)
    expect(await confirmed(KNOWN.beforeCautions)).toBe(0)
  })
})

describe('the records', () => {
  it('hold scorecards that scoring their readings again gives', async () => {
    const rows = await db().inspection.findMany({ include: { coupon: { include: { exercise: true } }, scorecard: { include: { findings: true } } } })
    expect(rows.length).toBeGreaterThan(300)
    for (const { coupon, readings, scorecard } of rows) {
      if (!scorecard) throw new Error('An inspection has no scorecard.')
      const exercise = toExercise(coupon.exercise)
      const criteria = criteriaById(exercise.criteria.id)
      const again = judge(exercise, readStoredReadings(readings).inspection, criteria)
      expect(toScorecard(scorecard, criteria)).toEqual(again.scorecard)
      expect({ worstMargin: scorecard.worstMargin, attributesGood: scorecard.attributesGood }).toEqual({ worstMargin: again.worstMargin, attributesGood: again.attributesGood })
    }
  })

  it('keep beside every number the text it was read from', async () => {
    for (const row of await db().inspection.findMany({ select: { readings: true } })) {
      const { inspection, typed, units } = readStoredReadings(row.readings)
      inspection.stations.forEach((station, index) => {
        const text = typed.stations[index]?.width ?? ''
        expect(text === '' ? undefined : parseLength(text, units)).toBe(station.widthMm)
      })
      expect(typed.indications.map(({ kind }) => kind)).toEqual(inspection.indications.map(({ kind }) => kind))
    }
  })

  it('show on each coupon the verdicts of the inspections that stand', async () => {
    for (const coupon of await db().coupon.findMany({ include: { inspections: { where: { supersededAt: null }, include: { scorecard: true } } } })) {
      const of = (kind: string) => coupon.inspections.find((each) => each.kind === kind)?.scorecard
      expect({ verdict: coupon.verdict, mark: coupon.mark }).toEqual({ verdict: of('instructor')?.verdict ?? null, mark: of('instructor')?.mark ?? null })
      expect({ verdict: coupon.selfVerdict, mark: coupon.selfMark }).toEqual({ verdict: of('self')?.verdict, mark: of('self')?.mark })
    }
  })

  it('number each student’s coupons of an exercise without a gap', async () => {
    const groups = await db().coupon.groupBy({ by: ['studentId', 'exerciseId'], _count: true, _max: { number: true }, _min: { number: true } })
    for (const group of groups) expect([group._min.number, group._max.number]).toEqual([1, group._count])
  })

  it('hold a confirmation of the cautions before every first coupon of a term', async () => {
    const [unconfirmed] = await db().$queryRaw<{ count: bigint }[]>`
      SELECT count(*) FROM "Coupon" c JOIN "Class" k ON k."programId" = c."programId" AND k.id = c."classId"
      WHERE NOT EXISTS (
        SELECT FROM "SafetyAcknowledgement" a WHERE a."programId" = c."programId" AND a."studentId" = c."studentId"
          AND a."exerciseId" = c."exerciseId" AND a."termId" = k."termId" AND a."acknowledgedAt" < c."receivedAt")`
    expect(unconfirmed?.count).toBe(0n)
  })

  it('show that practice helps, on both sides of certainty', async () => {
    const first = await verdictsWhere({ lte: 2 })
    const later = await verdictsWhere({ gte: 5 })
    expect(later.rate).toBeGreaterThan(first.rate + 0.1)
    expect(first.accepted).toBeGreaterThan(0)
    expect(later.rate).toBeLessThan(1)
  })

  it('hold drawn photos under their own hash', async () => {
    // Not before the seed has drawn: where photos of strangers are read, SVG is not.
    const { readPhoto } = await import('@/app/_server/photos')
    const photos = await db().photo.findMany()
    expect(photos).toHaveLength(14)
    for (const photo of photos) expect((await new Response((await readPhoto(photo.sha256))?.body).arrayBuffer()).byteLength).toBe(photo.byteSize)
  })
})

describe('the standings', () => {
  it('match what the coupons give when they are worked out again', async () => {
    const summaries = await db().skillSummary.findMany()
    expect(summaries.length).toBeGreaterThan(24)
    for (const { studentId, exerciseId, ...summary } of summaries) {
      const coupons = await db().coupon.findMany({ where: { programId, studentId, exerciseId } })
      expect(summary).toMatchObject({
        couponCount: coupons.length,
        inspectedCount: coupons.filter(({ verdict }) => verdict === 'accept' || verdict === 'reject').length,
        acceptedCount: coupons.filter(({ verdict }) => verdict === 'accept').length,
        waitingCount: coupons.filter(({ waitingSince }) => waitingSince !== null).length,
      })
      if (!summary.lastCouponAt) throw new Error('A standing has no last coupon.')
      const readiness = await findReadiness(coordinator, { studentId, exerciseId }, summary.lastCouponAt)
      if (readiness?.assessment.kind === 'estimate') expect(summary.probability).toBeCloseTo(readiness.assessment.probability, 9)
      else expect(summary.probability).toBeNull()
    }
  })
})

describe('the large school', () => {
  let rows: Rows
  beforeAll(() => {
    rows = invent({ asOf, small: false }, hashes)
  }, 120_000)

  type Coupon = Rows['Coupon'][number]
  const rateOf = (coupons: readonly Coupon[]): number => {
    const judged = coupons.filter(({ verdict }) => verdict === 'accept' || verdict === 'reject')
    return judged.filter(({ verdict }) => verdict === 'accept').length / judged.length
  }

  it('has some five thousand coupons and twelve waiting at twelve booths', () => {
    expect(rows.Coupon.length).toBeGreaterThan(4500)
    expect(rows.Coupon.length).toBeLessThan(6000)
    const waiting = rows.Coupon.filter(({ waitingSince }) => waitingSince !== null)
    expect(waiting).toHaveLength(12)
    expect(new Set(waiting.map(({ booth }) => booth)).size).toBe(12)
  })

  it('sees a first coupon pass once in four, a later one three times in four, and no exercise always or never', () => {
    expect(rateOf(rows.Coupon.filter(({ number }) => number === 1))).toBeGreaterThan(0.18)
    expect(rateOf(rows.Coupon.filter(({ number }) => number === 1))).toBeLessThan(0.36)
    expect(rateOf(rows.Coupon.filter(({ number }) => number >= 10))).toBeGreaterThan(0.66)
    expect(rateOf(rows.Coupon.filter(({ number }) => number >= 10))).toBeLessThan(0.86)
    for (const { id } of rows.Exercise) {
      const rate = rateOf(rows.Coupon.filter(({ exerciseId }) => exerciseId === id))
      expect(rate).toBeGreaterThan(0.2)
      expect(rate).toBeLessThan(0.9)
    }
  })

  it('forgets over the holidays', () => {
    const current = rows.Term[1]
    if (!current) throw new Error('There is no current term.')
    const ways = new Map<string, { before: Coupon[]; after: Coupon[] }>()
    for (const coupon of rows.Coupon) {
      const key = `${coupon.studentId} ${coupon.exerciseId}`
      const way = ways.get(key) ?? { before: [], after: [] }
      ways.set(key, way)
      way[coupon.receivedAt < current.startsOn ? 'before' : 'after'].push(coupon)
    }
    const both = [...ways.values()].filter(({ before, after }) => before.length > 0 && after.length > 0)
    expect(both.length).toBeGreaterThan(20)
    expect(rateOf(both.flatMap(({ after }) => after.slice(0, 2)))).toBeLessThan(rateOf(both.flatMap(({ before }) => before.slice(-4))) - 0.05)
  })

  it('has students who see less on their own welds than their instructors do', () => {
    const undercuts = (kind: string) => rows.Inspection.filter((each) => each.kind === kind && each.supersededAt === null)
      .map(({ readings }) => readings.inspection.indications.filter((seen) => seen.kind === 'undercut').length)
    const mean = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0) / counts.length
    expect(mean(undercuts('self'))).toBeLessThan(0.85 * mean(undercuts('instructor')))
  })

  it('has one coupon in ten read twice, and a few that wait for it', () => {
    const share = rows.Program[0]?.secondReadShare ?? 0
    const read = rows.Inspection.filter(({ kind }) => kind === 'second').length
    const waiting = rows.Coupon.filter(({ secondWaitingSince }) => secondWaitingSince !== null)
    expect(share).toBe(0.1)
    expect((read + waiting.length) / rows.Coupon.length).toBeGreaterThan(0.09)
    expect((read + waiting.length) / rows.Coupon.length).toBeLessThan(0.115)
    expect(waiting.length).toBeGreaterThan(1)
    expect(waiting.length).toBeLessThan(15)
    expect(waiting.every(({ verdict, waitingSince }) => verdict !== null && waitingSince === null)).toBe(true)
  })

  it('has tests passed and failed, each with its parts and a forecast made before the result', () => {
    const attempts = rows.TestAttempt
    expect(attempts.filter(({ passed }) => passed).length).toBeGreaterThan(30)
    expect(attempts.filter(({ passed }) => !passed).length).toBeGreaterThan(15)
    for (const { parts, passed, forecast } of attempts) {
      const read = testPartsSchema.parse(parts)
      if (passed) expect(read.visual).toBe('accept')
      expect(forecast).toBeGreaterThan(0)
      expect(forecast).toBeLessThan(1)
    }
  })
})

describe('coupons read twice', () => {
  it('are most of the small school’s, forty of them at least by the same two instructors; none waits, and tests are offered none', async () => {
    const read = await db().inspection.findMany({ where: { kind: 'second' }, include: { inspector: true, coupon: { include: { inspections: { where: { kind: 'instructor', supersededAt: null }, include: { inspector: true } } } } } })
    const pairs = read.map(({ inspector, coupon }) => [inspector.signInName, coupon.inspections[0]?.inspector.signInName].sort().join(' '))
    const [stick, shielded] = [INSTRUCTORS.SMAW.signInName, INSTRUCTORS['FCAW-S'].signInName]
    expect(pairs.filter((pair) => pair === [stick, shielded].sort().join(' ')).length).toBeGreaterThanOrEqual(40)
    for (const { inspector, submittedAt, coupon } of read) {
      const first = coupon.inspections[0]
      expect(first?.inspectorId).not.toBe(inspector.id)
      expect(coupon.studentId).not.toBe(inspector.id)
      if (first?.revision === 1) expect(submittedAt.getTime()).toBeGreaterThan(first.submittedAt.getTime())
    }
    expect(await db().coupon.count({ where: { secondWaitingSince: { not: null } } })).toBe(0)
    expect((await db().program.findFirstOrThrow({ where: { id: programId } })).secondReadShare).toBe(0)
  })
})

describe('another program in the same database', () => {
  it('sees nothing of the invented school, nor is it seen', async () => {
    const other = await buildSchool('elsewhere')
    const foreign = await viewerOf(other, 'coordinator')
    const student = await personId(KNOWN.withEstimate)
    expect(await listStudentSkills(foreign, student)).toEqual([])
    expect(await findReadiness(foreign, { studentId: student, exerciseId: await showcaseId() }, asOf)).toBeNull()
    expect((await listClasses(foreign)).length).toBeGreaterThan(0)
    expect(await listClasses(coordinator)).toHaveLength(8)
  })
})

// A refit proposes, a coordinator decides, standings follow.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { moreStudents, practised, type Bead } from '../support/practice'
import { modelRow } from '../support/readiness-model'
import { normalNoise } from '../support/seeded-noise'
import { withoutAudit } from '../support/rows'
import { buildSchool, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { db } from '@/app/_server/db'
import { modelInUse } from '@/app/_server/data/model-in-use'
import { adoptModel, findModels, renewProgram } from '@/app/_server/data/readiness-models'
import { proposeModel } from '@/app/_server/data/refit-program'
import { findReadiness, listClassSkills, renewStandings } from '@/app/_server/data/skills'
import { modelVersions } from '@/app/_server/views/model-versions'
import { checkParameters, MODEL_VERSION, SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import { practiceLoss } from '@/lib/readiness/refit'
import { filterParametersSchema } from '@/lib/schemas/filter-parameters'

let database: TestDatabase
beforeAll(async () => {
  database = await testDatabase()
})

const NOW = new Date('2026-11-25T18:00:00Z')

/** Ten coupons over the autumn, wide at first and inside the band later; each student scatters in their own way. */
function learning(seed: number, count = 10): Bead[] {
  const noise = normalNoise(seed)
  const start = 1.2 + 0.3 * noise()
  return Array.from({ length: count }, (_, index) => ({
    on: `2026-10-${String(2 + 2 * index).padStart(2, '0')}`, widthMm: Number(Math.min(12, Math.max(4, 6.3 + start * Math.exp(-index / 4) + 0.25 * noise())).toFixed(2)),
  }))
}

const rowsOf = (programId: string) => db().readinessModel.findMany({ where: { programId }, orderBy: { proposedAt: 'asc' } })
const standingsOf = (programId: string) => db().skillSummary.findMany({ where: { programId }, orderBy: { studentId: 'asc' } })
const eventsOf = (programId: string, action: string) => db().auditEvent.findMany({ where: { programId, action }, orderBy: { at: 'asc' } })

describe('a refit', () => {
  it('does nothing with too few series, and counts only those with eight coupons judged by an instructor', async () => {
    const school = await buildSchool(randomUUID())
    const students = await moreStudents(school, 3)
    await practised(school, students[0]!, learning(1, 8))
    await practised(school, students[1]!, learning(2, 7))
    expect(await proposeModel(school.programId, { now: NOW })).toEqual({ kind: 'few', have: 1, need: 30 })
    expect(await rowsOf(school.programId)).toEqual([])
    expect(await eventsOf(school.programId, 'readiness-model.propose')).toEqual([])
    expect(await findModels(await viewerOf(school, 'coordinator'))).toMatchObject({ series: { have: 1, need: 30 }, proposals: [] })
  })

  describe('of thirty series', () => {
    let school: School
    let other: School
    let coordinator: Viewer
    let series: Awaited<ReturnType<typeof practiceOfAll>>
    const practiceOfAll = async () => {
      const found = []
      for (const { studentId, exerciseId } of await standingsOf(school.programId)) found.push((await findReadiness(coordinator, { studentId, exerciseId }, NOW))!.evidence.judged.map(({ coupon }) => coupon))
      return found
    }
    beforeAll(async () => {
      school = await buildSchool(randomUUID())
      other = await buildSchool(randomUUID())
      coordinator = await viewerOf(school, 'coordinator')
      for (const [index, student] of (await moreStudents(school, 30)).entries()) await practised(school, student, learning(index + 1))
      series = await practiceOfAll()
    }, 120_000)

    it('proposes parameters that forecast them better, and touches nothing else', async () => {
      const before = await standingsOf(school.programId)
      const outcome = await proposeModel(school.programId, { evaluations: 60, now: NOW })
      expect(outcome).toMatchObject({ kind: 'proposed', version: `${MODEL_VERSION}-refit-1`, series: 30, coupons: 300, standings: 30 })
      const [row, ...more] = await rowsOf(school.programId)
      expect(more).toEqual([])
      expect(row).toMatchObject({ version: `${MODEL_VERSION}-refit-1`, filterVersion: MODEL_VERSION, inUse: MODEL_VERSION, held: true, series: 30, coupons: 300, proposedAt: NOW, adoptedAt: null, adoptedById: null })
      const parameters = filterParametersSchema.parse(row!.parameters)
      expect(() => checkParameters(parameters)).not.toThrow()
      // The losses are those of the practice itself, under the shipped parameters and under the proposed ones.
      for (const [loss, tried] of [[row!.lossBefore, SHIPPED_PARAMETERS], [row!.lossAfter, parameters]] as const) {
        const { total, verdicts } = practiceLoss(series, tried)
        expect([verdicts, loss]).toEqual([300, expect.closeTo(total / verdicts, 10)])
      }
      expect(row!.lossAfter).toBeLessThan(row!.lossBefore)
      expect(await standingsOf(school.programId)).toEqual(before)
      expect(await modelInUse(school.programId)).toMatchObject({ version: MODEL_VERSION, since: null })
      expect(await eventsOf(school.programId, 'readiness-model.propose')).toMatchObject([{ actorId: null, subjectId: school.programId, after: { version: row!.version, series: 30, moved: row!.moved } }])
      expect(await rowsOf(other.programId)).toEqual([])
    })

    it('says how many standings it would move, as adopting it then does', async () => {
      const [row] = await rowsOf(school.programId)
      const before = new Map((await listClassSkills(coordinator, school.classId, NOW)).map((each) => [each.studentId, each.probability!]))
      await adoptModel(coordinator, { version: row!.version })
      expect(await renewProgram(coordinator)).toBe(30)
      const after = await listClassSkills(coordinator, school.classId, NOW)
      const moved = after.filter(({ studentId, probability }) => Math.abs(probability! - before.get(studentId)!) > 0.05)
      expect(moved).toHaveLength(row!.moved)
      expect(after).toHaveLength(row!.standings)
    })

    it('proposes nothing again while nothing was inspected, and numbers what it proposes later', async () => {
      expect(await proposeModel(school.programId, { evaluations: 60, now: NOW })).toEqual({ kind: 'same', version: `${MODEL_VERSION}-refit-1` })
      const [newcomer] = await moreStudents(school, 1)
      await practised(school, newcomer!, learning(99))
      const outcome = await proposeModel(school.programId, { evaluations: 5, now: NOW })
      // Five steps of the search do not beat the refit that is in use by now.
      expect(outcome).toMatchObject({ kind: 'no-better', series: 31 })
      await adoptModel(coordinator, { version: MODEL_VERSION })
      expect(await proposeModel(school.programId, { evaluations: 40, now: NOW })).toMatchObject({ kind: 'proposed', version: `${MODEL_VERSION}-refit-2`, series: 31 })
      expect(await rowsOf(school.programId)).toHaveLength(2)
    })
  })
})

describe('adopting', () => {
  let school: School
  let coordinator: Viewer
  const propose = (version: string, m0 = 0.3) => db().readinessModel.create({ data: modelRow(school.programId, version, { m0 }) })
  beforeEach(async () => {
    school = await buildSchool(randomUUID())
    coordinator = await viewerOf(school, 'coordinator')
  })

  it('takes a model into use from then on, with the coordinator’s name and an audit row', async () => {
    await propose('refit-1')
    await adoptModel(coordinator, { version: 'refit-1' })
    const { inUse, proposals } = await findModels(coordinator)
    expect(inUse).toMatchObject({ version: 'refit-1', shipped: false, adoptedBy: 'coordinator Test' })
    expect(Math.abs(Date.now() - inUse.since!.getTime())).toBeLessThan(60_000)
    expect(proposals).toMatchObject([{ version: 'refit-1', moved: 12, standings: 100 }])
    expect(await modelInUse(school.programId)).toMatchObject({ parameters: { ...SHIPPED_PARAMETERS, m0: 0.3 } })
    expect(await eventsOf(school.programId, 'readiness-model.adopt')).toMatchObject([{ actorId: coordinator.personId, before: { version: MODEL_VERSION }, after: { version: 'refit-1' } }])
  })

  it('can be followed by another one, and taken back to the shipped one', async () => {
    await propose('refit-1')
    await propose('refit-2', 0.1)
    for (const version of ['refit-1', 'refit-2', 'refit-1', MODEL_VERSION]) {
      await adoptModel(coordinator, { version })
      expect((await findModels(coordinator)).inUse.version).toBe(version)
    }
    expect((await findModels(coordinator)).inUse).toEqual({ version: MODEL_VERSION, since: null, shipped: true, adoptedBy: null })
    expect((await eventsOf(school.programId, 'readiness-model.adopt')).map(({ after }) => after)).toEqual(['refit-1', 'refit-2', 'refit-1', MODEL_VERSION].map((version) => ({ version })))
  })

  it('refuses what is in use, unknown, another program’s, or of an earlier filter', async () => {
    await expect(adoptModel(coordinator, { version: MODEL_VERSION })).rejects.toMatchObject({ code: 'CONFLICT' })
    await expect(adoptModel(coordinator, { version: 'nonsense' })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    const other = await buildSchool(randomUUID())
    await db().readinessModel.create({ data: modelRow(other.programId, 'theirs') })
    await expect(adoptModel(coordinator, { version: 'theirs' })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await db().readinessModel.create({ data: { ...modelRow(school.programId, 'old'), filterVersion: 'margin-state-space-0' } })
    await expect(adoptModel(coordinator, { version: 'old' })).rejects.toMatchObject({ code: 'NOT_FOUND' })
    expect((await findModels(coordinator)).proposals).toEqual([])
    expect(await eventsOf(school.programId, 'readiness-model.adopt')).toEqual([])
  })

  it('happens once when two coordinators press at the same moment', async () => {
    await propose('refit-1')
    const results = await Promise.allSettled([adoptModel(coordinator, { version: 'refit-1' }), adoptModel(coordinator, { version: 'refit-1' })])
    expect(results.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await eventsOf(school.programId, 'readiness-model.adopt')).toHaveLength(1)
  })

  it('is not there without its audit row', async () => {
    await propose('refit-1')
    expect(await withoutAudit(database, () => adoptModel(coordinator, { version: 'refit-1' }))).toBeInstanceOf(Error)
    expect((await findModels(coordinator)).inUse.version).toBe(MODEL_VERSION)
  })

  it('works the latest practised standings out at once, so many and no more, and the others when they are read', async () => {
    const students = await moreStudents(school, 3)
    for (const [index, student] of students.entries()) await practised(school, student, learning(index + 1, 6).map((bead) => ({ ...bead, on: bead.on.replace('-10-', index === 1 ? '-11-' : '-10-') })))
    await propose('refit-1')
    await adoptModel(coordinator, { version: 'refit-1' })
    expect(await renewStandings(school.programId, {}, { ms: 0 }), 'a bound of time stops it too').toBe(0)
    expect(await renewStandings(school.programId, {}, { count: 1 })).toBe(1)
    expect((await standingsOf(school.programId)).filter(({ modelVersion }) => modelVersion === 'refit-1').map(({ studentId }) => studentId)).toEqual([students[1]])
    const rows = await listClassSkills(coordinator, school.classId, NOW)
    expect((await standingsOf(school.programId)).map(({ modelVersion }) => modelVersion)).toEqual(['refit-1', 'refit-1', 'refit-1'])
    for (const { studentId, exerciseId, probability } of rows) {
      expect((await findReadiness(coordinator, { studentId, exerciseId }, NOW))!.assessment).toMatchObject({ probability, modelVersion: 'refit-1' })
    }
    expect(await renewProgram(coordinator), 'nothing is left').toBe(0)
  })

  it('never changes what was proposed', async () => {
    await propose('refit-1')
    for (const change of [`parameters = '{}'`, '"lossAfter" = 0', 'moved = 0', `version = 'better'`]) {
      await expect(database.query(`update "ReadinessModel" set ${change}`), change).rejects.toThrow('only ever added')
    }
    await expect(database.query('delete from "ReadinessModel"')).rejects.toThrow('only ever added')
  })
})

describe('what the coordinator reads', () => {
  it('says which model is in use, what a proposal rests on and what it would change', async () => {
    const school = await buildSchool(randomUUID())
    const coordinator = await viewerOf(school, 'coordinator')
    const shipped = await modelVersions(coordinator)
    expect(shipped).toMatchObject({ shipped: null, proposals: [] })
    expect(shipped.inUse).toContain(`${MODEL_VERSION}, with the parameters it is shipped with`)
    expect(shipped.what).toContain('It takes 30 series; there are 0 now')
    await db().readinessModel.create({ data: { ...modelRow(school.programId, 'refit-1'), proposedAt: new Date('2026-11-24T03:00:00Z') } })
    const [proposal] = (await modelVersions(coordinator)).proposals
    // 03:00 in London is the evening before in Chicago.
    expect(proposal).toMatchObject({ version: 'refit-1', head: 'refit-1, proposed on Nov 23, 2026', inUse: false })
    expect(proposal!.facts).toEqual([
      'Fitted to 40 series with 500 verdicts. They are few, so it was held near the shipped parameters.',
      expect.stringContaining(`mean log loss 0.580, against 0.600 with ${MODEL_VERSION}`),
      '12 of the 100 standings with an estimate would have moved by more than 0.05 that day.',
    ])
    await adoptModel(coordinator, { version: 'refit-1' })
    const adopted = await modelVersions({ ...coordinator, locale: 'es' } as Viewer)
    expect(adopted).toMatchObject({ shipped: MODEL_VERSION, proposals: [{ inUse: true }] })
    expect(adopted.inUse).toContain('Lo adoptó coordinator Test')
  })
})

// One step for one coupon: what a write stores going on from the stored belief is what working out the whole series gives.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { modelRow } from '../support/readiness-model'
import { buildSchool, cleanReadings, couponForm, LENGTH_MM, viewerOf, type School } from '../support/school'
import { db, type Transaction } from '@/app/_server/db'
import type { Viewer } from '@/app/_server/auth/viewer'
import { logCoupon } from '@/app/_server/data/coupons'
import { submitInspection } from '@/app/_server/data/inspections'
import { findReadiness, holdSkill, listClassSkills, listStudentSkills, refreshSkill } from '@/app/_server/data/skills'
import { readinessView } from '@/app/_server/views/readiness-view'
import { expectedWorst } from '@/lib/readiness/expected-worst'
import { readinessFilter } from '@/lib/readiness/filter'
import { startState } from '@/lib/readiness/incremental'
import { MODEL_VERSION, SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import { stationPlaces } from '@/lib/procedure/exercise'
import { couponSchema } from '@/lib/schemas/coupon'
import { filterStateSchema } from '@/lib/schemas/filter-state'
import { inspectionSchema } from '@/lib/schemas/inspection'
import { blankStation, type ReadingsForm } from '@/lib/schemas/readings'
import { formatForReader } from '@/lib/units/display'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'

let database: TestDatabase
let school: School
let student: Viewer
let instructor: Viewer
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  student = await viewerOf(school, 'student')
  instructor = await viewerOf(school, 'instructor')
})

const DAY_MS = 24 * 3600 * 1000
const FRAME = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') } as const
const MIDDLE = '6.3 mm'
const TOO_WIDE = '8 mm'

/** A bead of these widths, one a station; its legs are ample and everything else is clean. */
function readingsOf(widths: readonly string[]): ReadingsForm {
  const [station] = cleanReadings().stations
  const places = stationPlaces(LENGTH_MM, widths.length).map((at) => formatForReader(at, 'in'))
  return { ...cleanReadings(), stations: widths.map((width, index) => ({ ...(station ?? blankStation('')), at: places[index]!, width, legA: '3/8', legB: '3/8' })) }
}
const bead = (width: string, stations = 5): ReadingsForm => readingsOf(Array.from({ length: stations }, () => width))

async function weld(daysAgo = 0, readings = bead(MIDDLE)): Promise<string> {
  const id = randomUUID()
  const weldedAt = new Date(Date.now() - daysAgo * DAY_MS).toISOString()
  await logCoupon(student, couponSchema(FRAME, new Date()).parse({ ...couponForm(school, id, readings), weldedAt }))
  return id
}
const inspect = (couponId: string, readings = bead(MIDDLE), revision = 1) =>
  submitInspection(instructor, inspectionSchema(FRAME).parse({ couponId, revision, comment: '', readings }))

const skillKey = () => ({ programId: school.programId, studentId: student.personId, exerciseId: school.exerciseId })
const stored = async (tx: Transaction = db()) => {
  const { filterState, updatedAt: _, ...row } = await tx.skillSummary.findUniqueOrThrow({ where: { programId_studentId_exerciseId: skillKey() } })
  return { ...row, state: filterStateSchema.parse(filterState) }
}
const forget = (tx: Transaction) => tx.skillSummary.update({ where: { programId_studentId_exerciseId: skillKey() }, data: { printBefore: null } })

/** How many coupons the filter reads when the standing is worked out, by the stored belief or from the first coupon. */
const absorbed = async (whole = false): Promise<number> => db().$transaction(async (tx) => {
  await holdSkill(tx, skillKey())
  if (whole) await forget(tx)
  return (await refreshSkill(tx, skillKey())).absorbed
})

class UndoneOnPurpose extends Error {}

/** What working the whole series out would store; nothing of it stays. */
async function anew() {
  let found: Awaited<ReturnType<typeof stored>> | undefined
  await db().$transaction(async (tx) => {
    await holdSkill(tx, skillKey())
    await forget(tx)
    await refreshSkill(tx, skillKey())
    found = await stored(tx)
    throw new UndoneOnPurpose()
  }).catch((error: unknown) => {
    if (!(error instanceof UndoneOnPurpose)) throw error
  })
  return found!
}

async function expectTheSame(): Promise<void> {
  const { state, ...row } = await stored()
  const { state: whole, ...wholeRow } = await anew()
  expect(row.printBefore).not.toBeNull()
  expect({ ...row, stateBefore: null }).toEqual({ ...wholeRow, stateBefore: null })
  expect([state.day, state.coupons]).toEqual([whole.day, whole.coupons])
  state.mass.forEach((mass, index) => expect(Math.abs(mass - whole.mass[index]!)).toBeLessThan(1e-12))
}

describe('one step', () => {
  it('stores after every write of a term what the whole series gives', async () => {
    // Coupons of several days, some looked at late, one corrected; from the fifth comparison on the student's own looks count too.
    const widths = [TOO_WIDE, '7 mm', MIDDLE, '6.7 mm', TOO_WIDE, MIDDLE, '6.5 mm', '6 mm', MIDDLE]
    const ids: string[] = []
    for (const [index, width] of widths.entries()) {
      ids.push(await weld(20 - 2 * index, bead(width)))
      await expectTheSame()
      if (index === 3) continue
      await inspect(ids[index]!, bead(index === 6 ? TOO_WIDE : width))
      await expectTheSame()
    }
    await inspect(ids[3]!, bead(MIDDLE))
    await expectTheSame()
    await inspect(ids[8]!, bead('6.2 mm'), 2)
    await expectTheSame()
    expect((await stored()).state.coupons).toBe(9)
  })

  it('is what a write takes: it goes on from the stored belief', async () => {
    for (let index = 0; index < 6; index += 1) await inspect(await weld(10 - index))
    const { state } = await stored()
    // A belief nobody could have reached: had the write read all coupons, it would be gone.
    const { stateBefore } = await db().skillSummary.findUniqueOrThrow({ where: { programId_studentId_exerciseId: skillKey() } })
    const before = filterStateSchema.parse(stateBefore)
    const strange = { ...before, mass: state.mass.map((_, index) => (index === 0 ? 1 : 0)) }
    await db().skillSummary.update({ where: { programId_studentId_exerciseId: skillKey() }, data: { stateBefore: strange } })
    await weld(1)
    const gone = await anew()
    const kept = await stored()
    expect(kept.state.coupons).toBe(gone.state.coupons)
    expect(Math.abs(kept.state.mass[60]! - gone.state.mass[60]!)).toBeGreaterThan(1e-6)
  })

  it('is two coupons to read for a new one and one for another look at the last, however many there are', async () => {
    for (let index = 0; index < 7; index += 1) await inspect(await weld(10 - index))
    expect(await absorbed()).toBe(1)
    expect(await absorbed(true)).toBe(7)
    expect(await absorbed()).toBe(1)
  })

  it('asks the database as often for twelve coupons as for three', async () => {
    let asked = 0
    const counting = db().$extends({ query: { $allOperations({ args, query }) { asked += 1; return query(args) } } })
    const count = async (): Promise<number> => {
      asked = 0
      await counting.$transaction(async (tx) => {
        await forget(tx as unknown as Transaction)
        await refreshSkill(tx as unknown as Transaction, skillKey())
      })
      return asked
    }
    for (let index = 0; index < 3; index += 1) await inspect(await weld(20 - index, bead(MIDDLE, 7)), bead(MIDDLE, 7))
    const few = await count()
    for (let index = 3; index < 12; index += 1) await inspect(await weld(20 - index, bead(MIDDLE, 7)), bead(MIDDLE, 7))
    expect(await count()).toBe(few)
    expect(few).toBeGreaterThan(5)
  })
})

describe('the whole series', () => {
  const practise = async (count: number): Promise<string[]> => {
    const ids: string[] = []
    for (let index = 0; index < count; index += 1) {
      ids.push(await weld(10 - index))
      await inspect(ids[index]!)
    }
    return ids
  }

  it('is read again when an earlier coupon is looked at anew', async () => {
    const ids = await practise(4)
    await inspect(ids[0]!, bead(TOO_WIDE), 2)
    await expectTheSame()
    expect((await stored()).acceptedCount).toBe(3)
  })

  it('is read again when a comparison changes how far the student’s own looks count', async () => {
    await weld(12)
    await practise(5)
    const before = (await findReadiness(instructor, skillKey(), new Date()))!.evidence
    expect(before.judged[0]).toMatchObject({ coupon: { weight: before.trust.weight } })
    await inspect(await weld(1), bead(TOO_WIDE)) // the student had called it good
    const after = (await findReadiness(instructor, skillKey(), new Date()))!.evidence
    expect(after.trust.weight).toBeLessThan(before.trust.weight)
    await expectTheSame()
  })

  it('is read again under another model, and when what is stored is damaged', async () => {
    await practise(3)
    expect(await absorbed()).toBe(1)
    await db().readinessModel.create({ data: { ...modelRow(school.programId, 'other'), adoptedAt: new Date() } })
    expect(await absorbed()).toBe(3)
    expect(await absorbed()).toBe(1)
    await db().skillSummary.update({ where: { programId_studentId_exerciseId: skillKey() }, data: { stateBefore: { day: 'yesterday' } } })
    expect(await absorbed()).toBe(3)
  })

  it('begins with the prior when nobody has judged a coupon', async () => {
    await weld()
    expect((await stored()).state).toEqual(startState())
    expect(await stored()).toMatchObject({ modelVersion: MODEL_VERSION, probability: null, couponsUsed: 0 })
  })
})

describe('another number of stations than the exercise asks for', () => {
  /** Widths scatter within the bead; the worst lies 0.258 mm inside the upper limit of six diameters of 0.045 in, 6.858 mm. */
  const SCATTER = ['6.2 mm', '6.6 mm', '6.1 mm', '6.5 mm', '6.3 mm']
  const margins = async () => (await findReadiness(instructor, skillKey(), new Date()))!.evidence.judged.map(({ coupon }) => coupon.worstMargin!)

  it('moves the worst margin to what the asked number would have shown', async () => {
    for (let index = 0; index < 4; index += 1) await inspect(await weld(10 - index, readingsOf(SCATTER)), readingsOf(SCATTER))
    const [five] = await margins()
    // The same scatter read at ten stations: the worst of ten lies further out, so its margin is moved up to what five would have shown.
    await inspect(await weld(1, readingsOf([...SCATTER, ...SCATTER])), readingsOf([...SCATTER, ...SCATTER]))
    const ten = (await margins()).at(-1)!
    const judged = (await findReadiness(instructor, skillKey(), new Date()))!.evidence.judged.at(-1)!
    const { stations } = judged.lead
    expect(stations).toMatchObject({ fixed: 5, used: 10 })
    // Squares about the mean of 6.34: 0.172 a bead of five; four such beads have 16 degrees of freedom, the one of ten 9 and twice the squares.
    const sd = Math.sqrt((4 * 0.172 + 0.344) / (16 + 9))
    expect(stations!.withinBeadSd['width-in-band']).toBeCloseTo(sd, 9)
    expect(judged.worstRule).toBe('width-in-band')
    const scale = 0.258 / five! // what the rule’s margin is divided by, read off an uncorrected bead
    expect(ten - five!).toBeCloseTo(((expectedWorst(10) - expectedWorst(5)) * sd) / scale, 9)
    expect(ten).toBeGreaterThan(five!)
  })

  it('is corrected on the board as on the page, and no belief with a correction is gone on from', async () => {
    for (let index = 0; index < 5; index += 1) await inspect(await weld(10 - index, readingsOf(SCATTER)), readingsOf(SCATTER))
    await inspect(await weld(1, readingsOf([...SCATTER, ...SCATTER])), readingsOf([...SCATTER, ...SCATTER]))
    expect((await stored()).printBefore).toBeNull()
    expect(await absorbed()).toBe(6)
    const asOf = new Date()
    const [seen] = await listClassSkills(instructor, school.classId, asOf)
    const { assessment } = (await findReadiness(instructor, skillKey(), asOf))!
    expect(seen!.probability).toBe(assessment.kind === 'estimate' ? assessment.probability : null)
  })

  it('counts from the number the exercise asks for now, when that changes', async () => {
    for (let index = 0; index < 4; index += 1) await inspect(await weld(10 - index, readingsOf(SCATTER)), readingsOf(SCATTER))
    expect((await stored()).printBefore).not.toBeNull()
    const { exerciseId, version: _, createdAt: _at, boothCard, ...facts } = await db().exerciseVersion.findFirstOrThrow({ where: { exerciseId: school.exerciseId } })
    await db().exerciseVersion.create({ data: { ...facts, exerciseId, boothCard: boothCard as object, version: 2, stationCount: 10 } })
    await db().exercise.updateMany({ where: { id: exerciseId }, data: { currentVersion: 2 } })
    const { evidence } = (await findReadiness(instructor, skillKey(), new Date()))!
    expect(evidence.judged.map(({ lead }) => lead.stations)).toEqual(Array.from({ length: 4 }, () => expect.objectContaining({ fixed: 10, used: 5 })))
    expect(await absorbed()).toBe(4)
    expect((await stored()).printBefore).toBeNull()
  })
})

describe('the program’s model', () => {
  const WILD = { m0: 0.4, c: 1 }
  const adopt = (version: string, adoptedAt = new Date()) => db().readinessModel.create({ data: { ...modelRow(school.programId, version, WILD), adoptedAt } })
  const practise = async (): Promise<void> => {
    for (let index = 0; index < 6; index += 1) await inspect(await weld(10 - index, bead(index % 2 === 0 ? MIDDLE : TOO_WIDE)), bead(index % 2 === 0 ? MIDDLE : TOO_WIDE))
  }

  it('makes every standing, track and report, under its name', async () => {
    await practise()
    const asOf = new Date()
    const before = (await listClassSkills(instructor, school.classId, asOf))[0]!
    await adopt('refit-1')
    const [row] = await listClassSkills(instructor, school.classId, asOf)
    const { evidence, assessment, asOfDay } = (await findReadiness(instructor, skillKey(), asOf))!
    const byHand = readinessFilter(evidence.judged.map(({ coupon }) => coupon), asOfDay, { level: 0.95, parameters: { ...SHIPPED_PARAMETERS, ...WILD } })
    expect(row!.probability).toBeCloseTo(byHand.probability, 12)
    expect(Math.abs(row!.probability! - before.probability!)).toBeGreaterThan(0.01)
    expect(assessment).toMatchObject({ modelVersion: 'refit-1', probability: row!.probability })
    const view = (await readinessView(instructor, skillKey(), asOf))!
    expect(view.modelVersion).toBe('refit-1')
    const last = readinessFilter(evidence.judged.map(({ coupon }) => coupon), evidence.judged.at(-1)!.coupon.day, { level: 0.95, parameters: { ...SHIPPED_PARAMETERS, ...WILD } })
    expect(view.track.points.at(-1)!.estimate!.probability).toBeCloseTo(last.probability, 12)
    expect(await stored()).toMatchObject({ modelVersion: 'refit-1' })
  })

  it('is never mixed with another one on a board: standings of another model are worked out again when read', async () => {
    await practise()
    const classmate = await viewerOf(school, 'classmate')
    student = classmate
    await practise()
    await adopt('refit-1')
    student = await viewerOf(school, 'student')
    await weld() // a write brings its own standing along
    const versions = async () => (await database.query<{ v: string }>('select "modelVersion" as v from "SkillSummary" where "programId" = $1', [school.programId])).map(({ v }) => v).sort()
    expect(await versions()).toEqual([MODEL_VERSION, 'refit-1'].sort())
    const rows = await listClassSkills(instructor, school.classId)
    expect(await versions()).toEqual(['refit-1', 'refit-1'])
    for (const { studentId, exerciseId, probability } of rows) {
      const found = await findReadiness(instructor, { studentId, exerciseId }, new Date())
      expect(found!.assessment).toMatchObject({ kind: 'estimate', modelVersion: 'refit-1', probability })
    }
    expect(rows).toHaveLength(2)
  })

  it('leaves a standing without a chance rather than show one of another model', async () => {
    await practise()
    await adopt('refit-1')
    // As if yet another model were adopted while the standings are worked out.
    await database.query(`create function "meddle"() returns trigger language plpgsql as $$ begin new."modelVersion" := 'yet another'; return new; end $$`)
    await database.query('create trigger "meddle" before update on "SkillSummary" for each row execute function "meddle"()')
    try {
      const [row] = await listStudentSkills(student, student.personId)
      expect(row).toMatchObject({ couponCount: 6, probability: null, low: null, high: null, level: null, advice: null })
    } finally {
      await database.query('drop trigger "meddle" on "SkillSummary"')
      await database.query('drop function "meddle"()')
    }
    expect((await listStudentSkills(student, student.personId))[0]!.probability).not.toBeNull()
  })

  it('is corrected only by tests that it had spoken of', async () => {
    await practise()
    const asOf = new Date()
    const plain = (await listStudentSkills(student, student.personId, asOf))[0]!
    await db().testAttempt.createMany({ data: Array.from({ length: 20 }, () => ({
      programId: school.programId, classId: school.classId, studentId: school.people.classmate, exerciseId: school.exerciseId, exerciseVersion: 1, witnessId: school.people.instructor,
      testedOn: new Date('2026-11-20'), passed: false, parts: {}, forecast: 0.9, modelVersion: 'another',
    })) })
    expect((await listStudentSkills(student, student.personId, asOf))[0]).toEqual(plain)
    expect((await findReadiness(student, skillKey(), asOf))!.assessment).toMatchObject({ resultsUsed: 0, probability: plain.probability })
    await db().testAttempt.updateMany({ where: { programId: school.programId }, data: { modelVersion: MODEL_VERSION } })
    const corrected = (await listStudentSkills(student, student.personId, asOf))[0]!
    expect(corrected.probability).toBeLessThan(plain.probability! - 0.01)
    expect((await findReadiness(student, skillKey(), asOf))!.assessment).toMatchObject({ resultsUsed: 20, probability: corrected.probability })
  })

  it('is the shipped one when the adopted refit was of an earlier filter', async () => {
    await practise()
    await db().readinessModel.create({ data: { ...modelRow(school.programId, 'old', WILD), filterVersion: 'margin-state-space-0', adoptedAt: new Date() } })
    expect((await findReadiness(student, skillKey(), new Date()))!.assessment).toMatchObject({ modelVersion: MODEL_VERSION })
  })
})

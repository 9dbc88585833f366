import 'server-only'
import { problems } from '@/lib/language/problems'
import { qualification } from '@/lib/language/qualification'
import { say } from '@/lib/language/say'
import { judgeTestParts } from '@/lib/qualification/class-test'
import type { ProcessUse } from '@/lib/qualification/continuity'
import type { TestOutcome } from '@/lib/qualification/test-result'
import { calendarDay, dayOfDate } from '@/lib/reports/calendar'
import { explainQualificationReason } from '@/lib/reports/explain-qualification'
import { fullName } from '@/lib/reports/full-name'
import { testPartsSchema, type RecordedAttempt, type TestParts } from '@/lib/schemas/test-attempt'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { toExercise, type ExerciseRecord } from './exercises'
import { forecastFor, holdSkill, refreshSkill } from './skills'
import { classScope, studentScope, taughtClassScope } from './scope'

export type TestAttemptRecord = {
  readonly id: string
  readonly exerciseId: string
  readonly exerciseTitle: string
  readonly testedOn: Date
  readonly passed: boolean
  readonly forecast: number | null
  readonly note: string | null
}

/** A student's test attempts, oldest first. Empty when the student is not the viewer's to see. */
export async function listAttempts(viewer: Viewer, studentId: string): Promise<TestAttemptRecord[]> {
  const rows = await db().testAttempt.findMany({
    where: { programId: viewer.programId, studentId, student: studentScope(viewer) },
    orderBy: [{ testedOn: 'asc' }, { createdAt: 'asc' }],
    select: { id: true, exerciseId: true, testedOn: true, passed: true, forecast: true, note: true, exercise: { select: { title: true } } },
  })
  return rows.map(({ exercise, ...row }) => ({ ...row, exerciseTitle: exercise.title }))
}

/** A recorded test whole, with what it was welded as and what of the student's practice counts as use of the process. */
export type AttemptDetail = {
  readonly id: string
  readonly student: { readonly id: string; readonly name: string }
  readonly witness: string
  readonly classId: string
  readonly className: string
  readonly exercise: ExerciseRecord
  readonly testedOn: Date
  readonly passed: boolean
  readonly parts: TestParts
  readonly plateIdentity: string | null
  readonly wireIdentity: string | null
  readonly note: string | null
  readonly forecast: number | null
}

/** One test, or null when it does not exist or is not the viewer's to see. */
export async function findAttempt(viewer: Viewer, id: string): Promise<AttemptDetail | null> {
  const names = { select: { id: true, givenName: true, familyName: true } }
  const row = await db().testAttempt.findFirst({
    where: { programId: viewer.programId, id, student: studentScope(viewer) },
    include: { exercise: true, student: names, witness: names, class: { select: { name: true } } },
  })
  if (!row) return null
  return {
    id, student: { id: row.student.id, name: fullName(row.student) }, witness: fullName(row.witness), classId: row.classId, className: row.class.name,
    exercise: toExercise(row.exercise), testedOn: row.testedOn, passed: row.passed, parts: testPartsSchema.parse(row.parts),
    plateIdentity: row.plateIdentity, wireIdentity: row.wireIdentity, note: row.note, forecast: row.forecast,
  }
}

/** More days of welding than a school's record of one student holds. */
const MOST_USES = 2000

/** The days on which a student used a process, by coupons received and tests taken, newest first. Empty when the student is not the viewer's to see. */
export async function listProcessUses(viewer: Viewer, studentId: string, process: string): Promise<ProcessUse[]> {
  const where = { programId: viewer.programId, studentId, student: studentScope(viewer), exercise: { process } }
  const [coupons, tests] = await Promise.all([
    db().coupon.findMany({ where, orderBy: { receivedAt: 'desc' }, take: MOST_USES, select: { receivedAt: true } }),
    db().testAttempt.findMany({ where, orderBy: { testedOn: 'desc' }, take: MOST_USES, select: { testedOn: true } }),
  ])
  return [...coupons.map(({ receivedAt }) => ({ process, on: receivedAt })), ...tests.map(({ testedOn }) => ({ process, on: testedOn }))]
}

export type ClassAttempt = TestAttemptRecord & { readonly studentId: string; readonly student: string }

/** More tests than a class takes. */
const MOST_CLASS_TESTS = 200

/** The tests of a class, latest first. Empty when the class is not the viewer's to see, or for a student of it. */
export async function listClassAttempts(viewer: Viewer, classId: string): Promise<ClassAttempt[]> {
  const rows = await db().testAttempt.findMany({
    where: { programId: viewer.programId, classId, class: classScope(viewer), student: studentScope(viewer) },
    orderBy: [{ testedOn: 'desc' }, { createdAt: 'desc' }],
    take: MOST_CLASS_TESTS,
    select: {
      id: true, exerciseId: true, testedOn: true, passed: true, forecast: true, note: true, studentId: true,
      exercise: { select: { title: true } }, student: { select: { givenName: true, familyName: true } },
    },
  })
  return rows.map(({ exercise, student, ...row }) => ({ ...row, exerciseTitle: exercise.title, student: fullName(student) }))
}

export type AttemptCount = { readonly classId: string; readonly exerciseId: string; readonly passed: number; readonly attempts: number }

/** Test attempts and passes by class and exercise, over the classes the viewer can see. */
export async function countAttempts(viewer: Viewer): Promise<AttemptCount[]> {
  const rows = await db().testAttempt.groupBy({
    by: ['classId', 'exerciseId', 'passed'],
    where: { programId: viewer.programId, class: classScope(viewer) },
    _count: { _all: true },
  })
  return counted(rows.map((row) => ({ ...row, times: row._count._all })))
}

/** The same of each student's first attempt at an exercise in the classes the viewer can see: later ones are left out. */
export async function countFirstAttempts(viewer: Viewer): Promise<AttemptCount[]> {
  const rows = await db().testAttempt.findMany({
    where: { programId: viewer.programId, class: classScope(viewer) },
    distinct: ['studentId', 'exerciseId'],
    orderBy: [{ testedOn: 'asc' }, { createdAt: 'asc' }, { id: 'asc' }],
    select: { classId: true, exerciseId: true, passed: true },
  })
  return counted(rows.map((row) => ({ ...row, times: 1 })))
}

function counted(rows: readonly { classId: string; exerciseId: string; passed: boolean; times: number }[]): AttemptCount[] {
  const counts = new Map<string, { classId: string; exerciseId: string; passed: number; attempts: number }>()
  for (const { classId, exerciseId, passed, times } of rows) {
    const key = `${classId} ${exerciseId}`
    const count = counts.get(key) ?? { classId, exerciseId, passed: 0, attempts: 0 }
    count.attempts += times
    if (passed) count.passed += times
    counts.set(key, count)
  }
  return [...counts.values()]
}

/** A test result beside what the readiness model, before the program's own correction, had said of it. */
export type ForecastRecord = { readonly forecast: number | null; readonly passed: boolean }

/** More results than any correction reads; the latest of them. */
const MOST_FORECASTS = 2000

/** Test results of the classes the viewer can see with what had been said of them, latest first; `forecast` is null where nothing had been. */
export async function listForecasts(viewer: Viewer): Promise<ForecastRecord[]> {
  return db().testAttempt.findMany({
    where: { programId: viewer.programId, class: classScope(viewer) },
    orderBy: [{ testedOn: 'desc' }, { id: 'desc' }],
    take: MOST_FORECASTS,
    select: { forecast: true, passed: true },
  })
}

/** The exercise of a test that the viewer may record: of a class they teach, for a student of it who is not themselves. */
async function exerciseToTest(viewer: Viewer, { classId, studentId, exerciseId }: Pick<RecordedAttempt, 'classId' | 'studentId' | 'exerciseId'>): Promise<ExerciseRecord> {
  const { programId, personId } = viewer
  const row = await db().classExercise.findFirst({
    where: {
      programId, classId, exerciseId,
      class: { AND: [taughtClassScope(viewer), { enrolments: { some: { programId, personId: studentId, NOT: { personId } } } }] },
    },
    select: { exercise: { select: { currentVersion: true } } },
  })
  if (!row) throw notFound()
  const { currentVersion: version } = row.exercise
  return toExercise(await db().exerciseVersion.findUniqueOrThrow({ where: { programId_exerciseId_version: { programId, exerciseId, version } } }))
}

export type AttemptOutcome = { readonly id: string; readonly passed: boolean; readonly forecast: number | null; readonly created: boolean }

/**
 * Records a test that the viewer witnessed: judged by the structural code, kept with what the readiness model had said of it as of that
 * day, and carried to the student's standing in one transaction. The id is the form's, so sending it again makes nothing new.
 *
 * @throws Refusal NOT_FOUND for a student or class that is not the viewer's to test, INVALID for a day to come and for a test without a
 *   result: something not examined yet, or a specimen to be replaced
 */
export async function recordAttempt(viewer: Viewer, input: RecordedAttempt, now = new Date()): Promise<AttemptOutcome> {
  const { programId, personId, locale } = viewer
  const { id, classId, studentId, exerciseId, testedOn, parts, plateIdentity, wireIdentity, note } = input
  const exercise = await exerciseToTest(viewer, input)
  const { units, timeZone } = await db().program.findUniqueOrThrow({ where: { id: programId }, select: { units: true, timeZone: true } })
  const testDay = dayOfDate(testedOn)
  if (testDay > calendarDay(now, timeZone)) throw new Refusal('INVALID', say(problems, locale, 'future'), { testedOn: say(problems, locale, 'future') })
  const outcome = judgeTestParts(parts, exercise, units)
  if (outcome.result !== 'pass' && outcome.result !== 'fail') throw withoutResult(outcome, viewer, units)
  const passed = outcome.result === 'pass'
  const skill = { programId, studentId, exerciseId }
  try {
    return await db().$transaction(async (tx) => {
      await holdSkill(tx, skill)
      const standing = await tx.testAttempt.findFirst({ where: { programId, id }, select: { classId: true, studentId: true, exerciseId: true, passed: true, forecast: true } })
      if (standing) {
        if (standing.classId !== classId || standing.studentId !== studentId || standing.exerciseId !== exerciseId) throw notFound()
        return { id, passed: standing.passed, forecast: standing.forecast, created: false }
      }
      const said = await forecastFor(tx, skill, testDay)
      await tx.testAttempt.create({
        data: {
          programId, id, classId, studentId, exerciseId, exerciseVersion: exercise.version, witnessId: personId, testedOn, passed, parts, plateIdentity, wireIdentity, note,
          forecast: said?.forecast ?? null, modelVersion: said?.modelVersion ?? null,
        },
      })
      await refreshSkill(tx, skill)
      await recordAudit(tx, viewer, {
        action: 'test.record', subject: { type: 'test', id },
        after: { studentId, exerciseId, version: exercise.version, testedOn: testedOn.toISOString().slice(0, 10), passed, forecast: said?.forecast ?? null, modelVersion: said?.modelVersion ?? null },
      })
      return { id, passed, forecast: said?.forecast ?? null, created: true }
    })
  } catch (error) {
    // The id belongs to another test, recorded in the same instant: nothing of it is told.
    if (isTaken(error)) throw notFound()
    throw error
  }
}

function withoutResult({ result, reasons }: TestOutcome, { locale }: Viewer, rules: 'us' | 'si'): Refusal {
  const why = reasons.map((reason) => explainQualificationReason(reason, { locale, rules })).join(' ')
  return new Refusal('INVALID', `${say(qualification, locale, result)}. ${why}`, { parts: why })
}

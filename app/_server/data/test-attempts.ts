import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { classScope, studentScope } from './scope'

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

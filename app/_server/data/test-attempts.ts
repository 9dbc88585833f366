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
  const counts = new Map<string, { classId: string; exerciseId: string; passed: number; attempts: number }>()
  for (const row of rows) {
    const key = `${row.classId} ${row.exerciseId}`
    const count = counts.get(key) ?? { classId: row.classId, exerciseId: row.exerciseId, passed: 0, attempts: 0 }
    count.attempts += row._count._all
    if (row.passed) count.passed += row._count._all
    counts.set(key, count)
  }
  return [...counts.values()]
}

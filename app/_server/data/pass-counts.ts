import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { classScope } from './scope'

/** Coupons of one exercise in one class by the instructor's verdict; `uninspected` were never looked at by an instructor. */
export type VerdictCount = {
  readonly classId: string
  readonly exerciseId: string
  readonly accepted: number
  readonly rejected: number
  readonly incomplete: number
  readonly uninspected: number
}

/** The one count behind every pass rate: coupons by class, exercise and instructor's verdict. */
export async function countVerdicts(viewer: Viewer): Promise<VerdictCount[]> {
  const rows = await db().coupon.groupBy({
    by: ['classId', 'exerciseId', 'verdict'],
    where: { programId: viewer.programId, class: classScope(viewer) },
    _count: { _all: true },
  })
  const counts = new Map<string, { classId: string; exerciseId: string; accepted: number; rejected: number; incomplete: number; uninspected: number }>()
  for (const row of rows) {
    const key = `${row.classId} ${row.exerciseId}`
    const count = counts.get(key) ?? { classId: row.classId, exerciseId: row.exerciseId, accepted: 0, rejected: 0, incomplete: 0, uninspected: 0 }
    const field = row.verdict === 'accept' ? 'accepted' : row.verdict === 'reject' ? 'rejected' : row.verdict === 'incomplete' ? 'incomplete' : 'uninspected'
    count[field] += row._count._all
    counts.set(key, count)
  }
  return [...counts.values()]
}

/** Titles of the exercises in the viewer's classes, in their current version. */
export async function exerciseTitles(viewer: Viewer): Promise<ReadonlyMap<string, string>> {
  const rows = await db().exercise.findMany({
    where: { programId: viewer.programId, inClasses: { some: { programId: viewer.programId, class: classScope(viewer) } } },
    select: { id: true, currentVersion: true, versions: { orderBy: { version: 'desc' }, take: 1, select: { title: true } } },
  })
  return new Map(rows.map((row) => [row.id, row.versions[0]?.title ?? '']))
}

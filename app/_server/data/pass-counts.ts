import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { classScope, couponScope, secondLookScope } from './scope'

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

/** Titles, in their latest version, of the exercises set, practised or tested in the viewer's classes: those taken off a course too. */
export async function exerciseTitles(viewer: Viewer): Promise<ReadonlyMap<string, string>> {
  const { programId } = viewer
  const here = { some: { programId, class: classScope(viewer) } }
  const rows = await db().exercise.findMany({
    where: { programId, OR: [{ inClasses: here }, { versions: { some: { programId, OR: [{ coupons: here }, { attempts: here }] } } }] },
    select: { id: true, versions: { orderBy: { version: 'desc' }, take: 1, select: { title: true } } },
  })
  return new Map(rows.map((row) => [row.id, row.versions[0]?.title ?? '']))
}

export type CountedClass = { readonly id: string; readonly name: string; readonly term: { readonly id: string; readonly name: string; readonly startsOn: Date } }

/** Every class the counts may name, archived ones too, latest term first. */
export async function listCountedClasses(viewer: Viewer): Promise<CountedClass[]> {
  return db().class.findMany({
    where: classScope(viewer),
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select: { id: true, name: true, term: { select: { id: true, name: true, startsOn: true } } },
  })
}

/** One coupon of a student by what was said of it. */
export type CouponVerdict = {
  readonly exerciseId: string
  readonly number: number
  readonly receivedAt: Date
  /** The instructor's; null before the first look. */
  readonly verdict: 'accept' | 'reject' | 'incomplete' | null
  readonly mark: number | null
  /** The student's own. */
  readonly selfVerdict: 'accept' | 'reject' | 'incomplete' | null
}

/**
 * A student's coupons in every exercise, in the order the server received them. Empty when they are not the viewer's to see. One that the
 * viewer may have to read a second time is told as not inspected.
 */
export async function listCouponVerdicts(viewer: Viewer, studentId: string): Promise<CouponVerdict[]> {
  const { programId } = viewer
  const [unread, rows] = await Promise.all([
    db().coupon.findMany({ where: { AND: [{ studentId }, secondLookScope(viewer)] }, select: { id: true } }),
    db().coupon.findMany({
      where: { AND: [{ programId, studentId }, couponScope(viewer)] },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
      select: { id: true, exerciseId: true, number: true, receivedAt: true, verdict: true, mark: true, selfVerdict: true },
    }),
  ])
  const hidden = new Set(unread.map(({ id }) => id))
  return rows.map(({ id, ...row }) => (hidden.has(id) ? { ...row, verdict: null, mark: null } : row))
}

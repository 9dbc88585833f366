import 'server-only'
import { parseCriteriaSet } from '@/lib/criteria/schema'
import type { CriteriaSet } from '@/lib/criteria/types'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'

// A published set never changes, so one read per process is enough.
const held = new Map<string, CriteriaSet>()

/**
 * The criteria set an exercise or scorecard names. Not scoped by viewer: the rules a coupon is judged by are no secret in the program.
 *
 * @param from the transaction the caller is in: it holds a connection, and waiting for a second one could wait for ever
 */
export async function criteriaSet(programId: string, id: string, version: number, from: Transaction = db()): Promise<CriteriaSet> {
  const key = `${programId} ${id} ${version}`
  const known = held.get(key)
  if (known) return known
  const row = await from.criteriaSet.findUniqueOrThrow({
    where: { programId_id_version: { programId, id, version } },
    select: { document: true },
  })
  const set = read(row.document, id, version)
  held.set(key, set)
  return set
}

function read(document: unknown, id: string, version: number): CriteriaSet {
  const parsed = parseCriteriaSet(document)
  if (!parsed.ok) throw new Error(`The stored criteria ${id} version ${version} cannot be read: ${parsed.problems[0]?.message ?? 'unknown problem'}`)
  return parsed.value
}

/** A set as a list shows it, whether it was taken from choice, and how many exercises are judged by this version now. */
export type CriteriaLine = { readonly id: string; readonly version: number; readonly title: string; readonly createdAt: Date; readonly retired: boolean; readonly exercises: number }

/** Every version of every set of the viewer's program, by title, newest first; for staff, who choose among them. */
export async function listCriteria(viewer: Viewer): Promise<CriteriaLine[]> {
  if (!hasRole(viewer, 'coordinator') && !hasRole(viewer, 'instructor')) return []
  const { programId } = viewer
  const [sets, current] = await Promise.all([
    db().criteriaSet.findMany({ where: { programId }, orderBy: [{ title: 'asc' }, { id: 'asc' }, { version: 'desc' }], select: { id: true, version: true, title: true, createdAt: true, retirement: { select: { retiredAt: true } } } }),
    db().exercise.findMany({
      where: { programId, archivedAt: null },
      select: { currentVersion: true, versions: { select: { version: true, criteriaId: true, criteriaVersion: true } } },
    }),
  ])
  const used = new Map<string, number>()
  for (const { currentVersion, versions } of current) {
    const now = versions.find(({ version }) => version === currentVersion)
    if (now) used.set(`${now.criteriaId} ${now.criteriaVersion}`, 1 + (used.get(`${now.criteriaId} ${now.criteriaVersion}`) ?? 0))
  }
  return sets.map(({ retirement, ...set }) => ({ ...set, retired: retirement !== null, exercises: used.get(`${set.id} ${set.version}`) ?? 0 }))
}

/** One version of a set for staff to read, or null when the program has none such. */
export async function findCriteria(viewer: Viewer, id: string, version: number): Promise<CriteriaSet | null> {
  if (!hasRole(viewer, 'coordinator') && !hasRole(viewer, 'instructor')) return null
  const row = await db().criteriaSet.findUnique({ where: { programId_id_version: { programId: viewer.programId, id, version } }, select: { document: true } })
  return row && read(row.document, id, version)
}

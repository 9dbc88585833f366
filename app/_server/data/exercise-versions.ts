import 'server-only'
import { versionChanges } from '@/lib/course/version-changes'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import { fullName } from '@/lib/reports/full-name'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { versionData } from './course'
import { toExercise, type ExerciseRecord } from './exercises'
import { staffClassScope } from './scope'

/** Exercises a viewer may edit: those on the list of a class they keep that is not archived. */
function editableScope(viewer: Viewer, classId: string): Prisma.ExerciseWhereInput {
  const { programId } = viewer
  return { programId, archivedAt: null, inClasses: { some: { programId, classId, class: { AND: [{ archivedAt: null }, staffClassScope(viewer)] } } } }
}

type Key = { readonly classId: string; readonly exerciseId: string }

/** The exercise in its current version with how many other classes have it on their lists; null when it is not the viewer's to edit. */
export async function findEditable(viewer: Viewer, { classId, exerciseId }: Key): Promise<{ exercise: ExerciseRecord; otherClasses: number } | null> {
  const { programId } = viewer
  const row = await db().exercise.findFirst({
    where: { AND: [{ id: exerciseId }, editableScope(viewer, classId)] },
    select: { currentVersion: true, _count: { select: { inClasses: { where: { programId, class: { archivedAt: null } } } } } },
  })
  if (!row) return null
  const version = await db().exerciseVersion.findUniqueOrThrow({ where: { programId_exerciseId_version: { programId, exerciseId, version: row.currentVersion } } })
  return { exercise: toExercise(version), otherClasses: row._count.inClasses - 1 }
}

export type VersionRecord = { readonly exercise: ExerciseRecord; readonly madeAt: Date; readonly by: string | null; readonly coupons: number }

/** Every version of an exercise the viewer may edit, newest first, with who saved it and how many coupons were judged by it. */
export async function listVersions(viewer: Viewer, { classId, exerciseId }: Key): Promise<VersionRecord[]> {
  const { programId } = viewer
  const rows = await db().exerciseVersion.findMany({
    where: { programId, exerciseId, exercise: editableScope(viewer, classId) }, orderBy: { version: 'desc' }, include: { _count: { select: { coupons: true } } },
  })
  if (rows.length === 0) return []
  const saved = await db().auditEvent.findMany({ where: { programId, action: 'exercise.save', subjectId: exerciseId }, select: { actorId: true, after: true } })
  const people = await db().person.findMany({
    where: { programId, id: { in: saved.flatMap(({ actorId }) => (actorId === null ? [] : [actorId])) } }, select: { id: true, givenName: true, familyName: true },
  })
  const nameOf = (version: number): string | null => {
    const event = saved.find(({ after }) => typeof after === 'object' && after !== null && 'version' in after && after['version'] === version)
    const person = people.find(({ id }) => id === event?.actorId)
    return person ? fullName(person) : null
  }
  return rows.map(({ _count, ...row }) => ({ exercise: toExercise(row), madeAt: row.createdAt, by: nameOf(row.version), coupons: _count.coupons }))
}

/** Criteria of the program an exercise can be judged by: those on offer, and the one it has, retired or not. Staff only; empty for anyone else. */
export async function listCriteriaChoices(viewer: Viewer, has: ExerciseFacts['criteria'] | null): Promise<{ id: string; version: number; title: string; retired: boolean }[]> {
  if (!hasRole(viewer, 'instructor') && !hasRole(viewer, 'coordinator')) return []
  const { programId } = viewer
  const rows = await db().criteriaSet.findMany({
    where: { programId, OR: [{ retirement: { is: null } }, ...(has ? [{ id: has.id, version: has.version }] : [])] },
    orderBy: [{ title: 'asc' }, { version: 'desc' }], select: { id: true, version: true, title: true, retirement: { select: { retiredAt: true } } },
  })
  return rows.map(({ retirement, ...row }) => ({ ...row, retired: retirement !== null }))
}

/**
 * Saves an exercise as its next version. Coupons keep the version they were logged against.
 *
 * @throws Refusal NOT_FOUND for an exercise not on a list the viewer keeps; CONFLICT with `fields.version` when somebody saved a version
 *   since the form was opened; INVALID when nothing is different, or the criteria are none of the program's or retired
 */
export async function saveVersion(viewer: Viewer, { classId, exerciseId, fromVersion, facts }: Key & { fromVersion: number; facts: ExerciseFacts }): Promise<{ version: number }> {
  const { programId } = viewer
  return db().$transaction(async (tx) => {
    const editable: Prisma.ExerciseWhereInput = { AND: [{ id: exerciseId }, editableScope(viewer, classId)] }
    const version = fromVersion + 1
    const { count } = await tx.exercise.updateMany({ where: { AND: [editable, { currentVersion: fromVersion }] }, data: { currentVersion: version } })
    if (count === 0) {
      const standing = await tx.exercise.findFirst({ where: editable, select: { currentVersion: true } })
      if (!standing) throw notFound()
      throw new Refusal('CONFLICT', `Somebody saved version ${standing.currentVersion} while you wrote. Everything you typed is still here.`, { version: String(standing.currentVersion) })
    }
    const before = toExercise(await tx.exerciseVersion.findUniqueOrThrow({ where: { programId_exerciseId_version: { programId, exerciseId, version: fromVersion } } }))
    const changes = versionChanges(before, facts, viewer.units)
    if (changes.length === 0) throw new Refusal('INVALID', `Nothing is different from version ${fromVersion}, so there is nothing to save.`)
    const { id, version: criteriaVersion } = facts.criteria
    const chosen = await tx.criteriaSet.findUnique({ where: { programId_id_version: { programId, id, version: criteriaVersion } }, select: { retirement: { select: { retiredAt: true } } } })
    if (!chosen) throw new Refusal('INVALID', 'Look at the criteria.', { criteria: 'Choose criteria of your program.' })
    if (chosen.retirement && (id !== before.criteria.id || criteriaVersion !== before.criteria.version)) {
      throw new Refusal('INVALID', 'Look at the criteria.', { criteria: 'These criteria are no longer offered. Choose others.' })
    }
    await tx.exerciseVersion.create({ data: { programId, exerciseId, version, ...versionData(facts) } })
    await recordAudit(tx, viewer, { action: 'exercise.save', subject: { type: 'exercise', id: exerciseId }, before: { version: fromVersion }, after: { version, changes } })
    return { version }
  })
}

import 'server-only'
import { fromLibrary } from '@/lib/course/library'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { staffClassScope } from './scope'

/*
 * The list of exercises of a class. Instructors change the lists of the classes they teach, coordinators any; taking an exercise off a list never touches
 * the exercise or its coupons.
 */

type Listed = { readonly exerciseId: string; readonly sequence: number; readonly opensAfterId: string | null }

/** The list of a class the viewer keeps, its row held so that two changes of it wait for each other. Refuses an archived class. */
async function holdList(tx: Transaction, viewer: Viewer, classId: string): Promise<Listed[]> {
  const { programId } = viewer
  const { count } = await tx.class.updateMany({ where: { AND: [{ id: classId, archivedAt: null }, staffClassScope(viewer)] }, data: { archivedAt: null } })
  if (count === 0) throw notFound()
  return tx.classExercise.findMany({ where: { programId, classId }, orderBy: { sequence: 'asc' }, select: { exerciseId: true, sequence: true, opensAfterId: true } })
}

const nextSequence = (list: readonly Listed[]): number => (list.at(-1)?.sequence ?? 0) + 1
const gone = (): Refusal => new Refusal('CONFLICT', 'That exercise is no longer in the list. Somebody may have changed it: load the page again.')

/** The columns of a version that hold an exercise's facts. */
export const versionData = ({ boothCard, criteria, ...facts }: ExerciseFacts) => ({
  ...facts, boothCard: boothCard as unknown as Prisma.InputJsonObject, criteriaId: criteria.id, criteriaVersion: criteria.version,
})

/** An exercise of the program that could be put on a list, by its current title. */
export type ProgramExercise = { readonly id: string; readonly title: string; readonly process: string }

/** Exercises of the program, by title. Staff only; empty for anyone else. */
export async function listProgramExercises(viewer: Viewer): Promise<ProgramExercise[]> {
  if (!hasRole(viewer, 'instructor') && !hasRole(viewer, 'coordinator')) return []
  const rows = await db().exercise.findMany({
    where: { programId: viewer.programId, archivedAt: null },
    select: { id: true, currentVersion: true, versions: { select: { version: true, title: true, process: true } } },
  })
  return rows.flatMap(({ id, currentVersion, versions }) => {
    const current = versions.find(({ version }) => version === currentVersion)
    return current ? [{ id, title: current.title, process: current.process }] : []
  }).sort((a, b) => a.title.localeCompare(b.title, 'en'))
}

/** Classes of the program whose list can be copied, newest term first: lists are no secret among staff. Empty for anyone else. */
export async function listClassesToCopy(viewer: Viewer): Promise<{ id: string; name: string; term: string }[]> {
  if (!hasRole(viewer, 'instructor') && !hasRole(viewer, 'coordinator')) return []
  const rows = await db().class.findMany({
    where: { programId: viewer.programId, exercises: { some: { programId: viewer.programId } } },
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }], select: { id: true, name: true, term: { select: { name: true } } },
  })
  return rows.map(({ id, name, term }) => ({ id, name, term: term.name }))
}

/** Puts an exercise of the program at the end of a list. @throws Refusal NOT_FOUND, or CONFLICT when it is there already */
export async function addExercise(viewer: Viewer, { classId, exerciseId }: { classId: string; exerciseId: string }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    if (!(await tx.exercise.findFirst({ where: { programId, id: exerciseId, archivedAt: null }, select: { id: true } }))) throw notFound()
    if (list.some((each) => each.exerciseId === exerciseId)) throw new Refusal('CONFLICT', 'That exercise is in the list already.')
    await tx.classExercise.create({ data: { programId, classId, exerciseId, sequence: nextSequence(list), opensAfterId: null } })
    await recordAudit(tx, viewer, { action: 'course.add', subject: { type: 'class', id: classId }, after: { exerciseId } })
  })
}

/** Makes an exercise of the program from one of the library and puts it at the end of a list. Metric programs get the metric criteria. */
export async function addFromLibrary(viewer: Viewer, { classId, key }: { classId: string; key: string }): Promise<{ exerciseId: string }> {
  const { programId } = viewer
  const found = fromLibrary(key)
  if (!found) throw notFound()
  return db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    const { units } = await tx.program.findUniqueOrThrow({ where: { id: programId }, select: { units: true } })
    const id = units === 'si' ? found.facts.criteria.id.replace(/\.us$/, '.si') : found.facts.criteria.id
    const facts: ExerciseFacts = { ...found.facts, criteria: { id, version: found.facts.criteria.version } }
    const made = await tx.exercise.create({ data: { programId, versions: { create: { version: 1, ...versionData(facts) } } }, select: { id: true } })
    await tx.classExercise.create({ data: { programId, classId, exerciseId: made.id, sequence: nextSequence(list) } })
    await recordAudit(tx, viewer, { action: 'course.add', subject: { type: 'class', id: classId }, after: { exerciseId: made.id, library: key } })
    return { exerciseId: made.id }
  })
}

/** Copies the list of one class to the end of another's, in the same transaction; what is there already stays as it is. Gives how many came. */
export async function copyInto(tx: Transaction, programId: string, from: string, to: { readonly classId: string; readonly list: readonly Listed[] }): Promise<number> {
  const source = await tx.classExercise.findMany({
    where: { programId, classId: from, exercise: { archivedAt: null } }, orderBy: { sequence: 'asc' }, select: { exerciseId: true, opensAfterId: true },
  })
  const there = new Set(to.list.map(({ exerciseId }) => exerciseId))
  const fresh = source.filter(({ exerciseId }) => !there.has(exerciseId))
  const known = new Set([...there, ...fresh.map(({ exerciseId }) => exerciseId)])
  const first = nextSequence(to.list)
  await tx.classExercise.createMany({
    data: fresh.map(({ exerciseId, opensAfterId }, index) => ({
      programId, classId: to.classId, exerciseId, sequence: first + index, opensAfterId: opensAfterId !== null && known.has(opensAfterId) ? opensAfterId : null,
    })),
  })
  return fresh.length
}

/** Copies the whole list of another class of the program, prerequisites with it. */
export async function copyList(viewer: Viewer, { classId, from }: { classId: string; from: string }): Promise<{ added: number }> {
  const { programId } = viewer
  return db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    if (!(await tx.class.findFirst({ where: { programId, id: from }, select: { id: true } }))) throw notFound()
    const added = await copyInto(tx, programId, from, { classId, list })
    await recordAudit(tx, viewer, { action: 'course.copy', subject: { type: 'class', id: classId }, after: { from, added } })
    return { added }
  })
}

/** Moves an exercise one place up or down. At the end of the list it stays where it is. */
export async function moveExercise(viewer: Viewer, { classId, exerciseId, to }: { classId: string; exerciseId: string; to: 'up' | 'down' }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    const at = list.findIndex((each) => each.exerciseId === exerciseId)
    const [one, other] = [list[at], list[at + (to === 'up' ? -1 : 1)]]
    if (!one) throw gone()
    if (!other) return
    const put = (id: string, sequence: number) =>
      tx.classExercise.update({ where: { programId_classId_exerciseId: { programId, classId, exerciseId: id } }, data: { sequence } })
    // Two exercises may not hold one place even for a moment: the first steps aside.
    await put(one.exerciseId, nextSequence(list))
    await put(other.exerciseId, one.sequence)
    await put(one.exerciseId, other.sequence)
    await recordAudit(tx, viewer, { action: 'course.move', subject: { type: 'class', id: classId }, before: { exerciseId, sequence: one.sequence }, after: { exerciseId, sequence: other.sequence } })
  })
}

/** Says which exercise must be ready before another is suggested; null opens it from the start. @throws Refusal INVALID for a circle */
export async function setOpensAfter(viewer: Viewer, { classId, exerciseId, opensAfterId }: { classId: string; exerciseId: string; opensAfterId: string | null }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    const before = list.find((each) => each.exerciseId === exerciseId)
    if (!before || (opensAfterId !== null && !list.some((each) => each.exerciseId === opensAfterId))) throw gone()
    if (leadsBack(list, exerciseId, opensAfterId)) {
      const opensAfter = 'These would wait for each other, and neither would ever open. Choose one that does not wait for this one.'
      throw new Refusal('INVALID', opensAfter, { opensAfterId: opensAfter })
    }
    await tx.classExercise.update({ where: { programId_classId_exerciseId: { programId, classId, exerciseId } }, data: { opensAfterId } })
    await recordAudit(tx, viewer, { action: 'course.opens-after', subject: { type: 'class', id: classId }, before: { exerciseId, opensAfterId: before.opensAfterId }, after: { exerciseId, opensAfterId } })
  })
}

/** Whether waiting for `after` would in the end be waiting for the exercise itself. */
function leadsBack(list: readonly Listed[], exerciseId: string, after: string | null): boolean {
  const seen = new Set<string>()
  for (let at = after; at !== null && !seen.has(at); at = list.find((each) => each.exerciseId === at)?.opensAfterId ?? null) {
    if (at === exerciseId) return true
    seen.add(at)
  }
  return false
}

/** Takes an exercise off the list; it, its versions and its coupons stay. What waited for it now waits for what it waited for. */
export async function removeExercise(viewer: Viewer, { classId, exerciseId }: { classId: string; exerciseId: string }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const list = await holdList(tx, viewer, classId)
    const gone = list.find((each) => each.exerciseId === exerciseId)
    if (!gone) return
    await tx.classExercise.updateMany({ where: { programId, classId, opensAfterId: exerciseId }, data: { opensAfterId: gone.opensAfterId } })
    await tx.classExercise.delete({ where: { programId_classId_exerciseId: { programId, classId, exerciseId } } })
    await recordAudit(tx, viewer, { action: 'course.remove', subject: { type: 'class', id: classId }, before: { ...gone } })
  })
}

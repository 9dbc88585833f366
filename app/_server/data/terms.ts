import 'server-only'
import { overlapping } from '@/lib/reports/term-overlaps'
import type { ChangedTerm, TermForm } from '@/lib/schemas/term-form'
import { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'

/* Terms are made, changed and archived by the coordinator. A term that has classes is never deleted: archiving it archives its classes. */

/** `archived`: it has classes, and none of them is open. */
export type TermRecord = { readonly id: string; readonly name: string; readonly startsOn: Date; readonly endsOn: Date; readonly classes: number; readonly archived: boolean }

/** The program's terms, newest first. Empty for anyone but a coordinator. */
export async function listTerms(viewer: Viewer): Promise<TermRecord[]> {
  if (!hasRole(viewer, 'coordinator')) return []
  const rows = await db().term.findMany({
    where: { programId: viewer.programId }, orderBy: { startsOn: 'desc' },
    select: { id: true, name: true, startsOn: true, endsOn: true, classes: { select: { archivedAt: true } } },
  })
  return rows.map(({ classes, ...row }) => ({ ...row, classes: classes.length, archived: classes.length > 0 && classes.every(({ archivedAt }) => archivedAt !== null) }))
}

/** `overlaps`: the names of other terms that share days with it. */
export type WrittenTerm = { readonly termId: string; readonly overlaps: readonly string[] }

/** Makes a term. @throws Refusal INVALID when there is one of this name */
export async function makeTerm(viewer: Viewer, { name, startsOn, endsOn }: TermForm): Promise<WrittenTerm> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  return unlessNamed(db().$transaction(async (tx) => {
    const { id } = await tx.term.create({ data: { programId, name, startsOn: new Date(startsOn), endsOn: new Date(endsOn) }, select: { id: true } })
    await recordAudit(tx, viewer, { action: 'term.make', subject: { type: 'term', id }, after: { name, startsOn, endsOn } })
    return { termId: id, overlaps: await overlapsOf(tx, programId, id) }
  }))
}

/** Gives a term another name or other days. Saving it as it is changes nothing. @throws Refusal NOT_FOUND, INVALID when another one has the name */
export async function changeTerm(viewer: Viewer, { termId, name, startsOn, endsOn }: ChangedTerm): Promise<WrittenTerm> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  return unlessNamed(db().$transaction(async (tx) => {
    const before = await tx.term.findFirst({ where: { programId, id: termId }, select: { name: true, startsOn: true, endsOn: true } })
    if (!before) throw notFound()
    const was = { name: before.name, startsOn: dayOf(before.startsOn), endsOn: dayOf(before.endsOn) }
    if (was.name !== name || was.startsOn !== startsOn || was.endsOn !== endsOn) {
      await tx.term.update({ where: { programId_id: { programId, id: termId } }, data: { name, startsOn: new Date(startsOn), endsOn: new Date(endsOn) } })
      await recordAudit(tx, viewer, { action: 'term.change', subject: { type: 'term', id: termId }, before: was, after: { name, startsOn, endsOn } })
    }
    return { termId, overlaps: await overlapsOf(tx, programId, termId) }
  }))
}

const dayOf = (date: Date): string => date.toISOString().slice(0, 10)

async function overlapsOf(tx: Transaction, programId: string, termId: string): Promise<string[]> {
  const terms = await tx.term.findMany({ where: { programId }, orderBy: { startsOn: 'asc' }, select: { id: true, name: true, startsOn: true, endsOn: true } })
  const term = terms.find(({ id }) => id === termId)
  return term ? overlapping(term, terms.filter(({ id }) => id !== termId)).map(({ name }) => name) : []
}

async function unlessNamed<T>(work: Promise<T>): Promise<T> {
  try {
    return await work
  } catch (error) {
    if (!isTaken(error)) throw error
    const message = 'There is a term of this name. Choose another name.'
    throw new Refusal('INVALID', message, { name: message })
  }
}

/**
 * Archives a term, which archives its open classes; or takes it back, which opens again the classes that were archived together last.
 * Doing it twice changes nothing.
 *
 * @throws Refusal NOT_FOUND, CONFLICT for a term without classes: it is deleted instead
 */
export async function setTermArchived(viewer: Viewer, { termId, archived }: { termId: string; archived: boolean }): Promise<void> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    const term = await tx.term.findFirst({ where: { programId, id: termId }, select: { classes: { select: { id: true, archivedAt: true } } } })
    if (!term) throw notFound()
    if (term.classes.length === 0) throw new Refusal('CONFLICT', 'This term has no classes. Delete it instead.')
    const open = term.classes.filter(({ archivedAt }) => archivedAt === null)
    const latest = Math.max(...term.classes.map(({ archivedAt }) => archivedAt?.getTime() ?? 0))
    const touched = archived ? open : open.length > 0 ? [] : term.classes.filter(({ archivedAt }) => archivedAt?.getTime() === latest)
    if (touched.length === 0) return
    await tx.class.updateMany({ where: { programId, id: { in: touched.map(({ id }) => id) } }, data: { archivedAt: archived ? new Date() : null } })
    for (const { id } of touched) await recordAudit(tx, viewer, { action: archived ? 'class.archive' : 'class.reopen', subject: { type: 'class', id }, after: { termId } })
    await recordAudit(tx, viewer, { action: archived ? 'term.archive' : 'term.reopen', subject: { type: 'term', id: termId }, after: { classes: touched.length } })
  })
}

/** Deletes a term that never had a class. @throws Refusal NOT_FOUND, CONFLICT when it has classes */
export async function removeTerm(viewer: Viewer, { termId }: { termId: string }): Promise<void> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  const kept = (): Refusal => new Refusal('CONFLICT', 'This term has classes, and their record stays. Archive it instead.')
  try {
    await db().$transaction(async (tx) => {
      const term = await tx.term.findFirst({ where: { programId, id: termId }, select: { name: true, startsOn: true, endsOn: true, _count: { select: { classes: true } } } })
      if (!term) throw notFound()
      if (term._count.classes > 0) throw kept()
      await tx.term.delete({ where: { programId_id: { programId, id: termId } } })
      await recordAudit(tx, viewer, {
        action: 'term.remove', subject: { type: 'term', id: termId }, before: { name: term.name, startsOn: dayOf(term.startsOn), endsOn: dayOf(term.endsOn) },
      })
    })
  } catch (error) {
    // A class made in it between our looking and our deleting.
    if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2003') throw kept()
    throw error
  }
}

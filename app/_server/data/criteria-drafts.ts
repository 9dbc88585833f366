import 'server-only'
import { copiedSourceProblems } from '@/lib/criteria/draft/copied-source'
import { blankDraft, type CriteriaKey, type DraftCriteria } from '@/lib/criteria/draft/draft'
import { draftSchema } from '@/lib/criteria/draft/draft-schema'
import { readDraft, type BoxProblems } from '@/lib/criteria/draft/from-draft'
import { isOwn, ownId } from '@/lib/criteria/draft/own-id'
import { draftOf } from '@/lib/criteria/draft/to-draft'
import type { CriteriaSet } from '@/lib/criteria/types'
import { fullName } from '@/lib/reports/full-name'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { criteriaSet } from './criteria'
import { coordinatedScope } from './scope'

export type DraftLine = { readonly id: string; readonly criteriaId: string; readonly title: string; readonly updatedAt: Date; readonly updatedBy: string }
export type DraftRecord = DraftLine & { readonly document: DraftCriteria }

const by = { select: { givenName: true, familyName: true } } as const
const lineSelect = { id: true, criteriaId: true, title: true, updatedAt: true, updatedBy: by } as const

type LineRow = Prisma.CriteriaDraftGetPayload<{ select: typeof lineSelect }>
const toLine = ({ updatedBy, ...row }: LineRow): DraftLine => ({ ...row, updatedBy: fullName(updatedBy) })

/** Drafts are the coordinators' business: others choose among what is published. */
const own = (viewer: Viewer) => ({ programId: viewer.programId, program: coordinatedScope(viewer) })

/** The sets being written in the viewer's program, last changed first. */
export async function listDrafts(viewer: Viewer): Promise<DraftLine[]> {
  const rows = await db().criteriaDraft.findMany({ where: own(viewer), orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }], select: lineSelect })
  return rows.map(toLine)
}

/** One of them with what is in its boxes, or null when it is gone or not the viewer's. */
export async function findDraft(viewer: Viewer, id: string): Promise<DraftRecord | null> {
  const row = await db().criteriaDraft.findFirst({ where: { ...own(viewer), id }, select: { ...lineSelect, document: true } })
  if (!row) return null
  const { document, ...line } = row
  return { ...toLine(line), document: draftSchema.parse(document) }
}

export type NewDraft = {
  readonly title: string
  readonly system: 'us' | 'si'
  /** What to copy; null begins with nothing. */
  readonly from: CriteriaKey | null
}

/**
 * Begins a set of the program's own, as a copy of another or with nothing. It gets an id that no set of the program, nor any that ships, has.
 *
 * @throws Refusal NOT_FOUND for anyone but a coordinator, and for a set that is not there; INVALID when another set or draft has its title
 */
export async function startDraft(viewer: Viewer, input: NewDraft): Promise<{ draftId: string }> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  return db().$transaction(async (tx) => {
    await refuseTakenTitle(tx, viewer.programId, input.title, null)
    const copied = input.from && draftOf(await there(tx, viewer, input.from))
    const document: DraftCriteria = copied ? { ...copied, title: input.title } : blankDraft(input.system, input.title)
    const criteriaId = ownId(input.title, await takenIds(tx, viewer.programId))
    return { draftId: await create(tx, viewer, criteriaId, document) }
  })
}

/**
 * Begins the next version of one of the program's own sets, or finds the draft of it that is being written already.
 *
 * @throws Refusal NOT_FOUND for anyone but a coordinator, and for a set that ships with the application: of those a copy is made
 */
export async function startNextVersion(viewer: Viewer, input: { readonly criteriaId: string }): Promise<{ draftId: string }> {
  const { criteriaId } = input
  if (!hasRole(viewer, 'coordinator') || !isOwn(criteriaId)) throw notFound()
  const written = () => db().criteriaDraft.findFirst({ where: { ...own(viewer), criteriaId }, select: { id: true } })
  const found = await written()
  if (found) return { draftId: found.id }
  try {
    return await db().$transaction(async (tx) => {
      const version = await newestVersion(tx, viewer.programId, criteriaId)
      const set = await there(tx, viewer, { id: criteriaId, version })
      return { draftId: await create(tx, viewer, criteriaId, draftOf(set)) }
    })
  } catch (error) {
    if (!isTaken(error)) throw error
    const other = await written() // someone else began it in the same moment
    if (!other) throw notFound()
    return { draftId: other.id }
  }
}

async function create(tx: Transaction, viewer: Viewer, criteriaId: string, document: DraftCriteria): Promise<string> {
  const { id } = await tx.criteriaDraft.create({
    data: { programId: viewer.programId, criteriaId, title: document.title, document: document as unknown as Prisma.InputJsonObject, updatedById: viewer.personId },
    select: { id: true },
  })
  await recordAudit(tx, viewer, { action: 'criteria.draft', subject: { type: 'criteria', id: criteriaId }, after: { draftId: id, title: document.title, from: document.base } })
  return id
}

async function there(tx: Transaction, viewer: Viewer, { id, version }: CriteriaKey): Promise<CriteriaSet> {
  const row = await tx.criteriaSet.findUnique({ where: { programId_id_version: { programId: viewer.programId, id, version } }, select: { id: true } })
  if (!row) throw notFound()
  return criteriaSet(viewer.programId, id, version, tx)
}

/** Ids that a new set may not take: published ones and those of other drafts. Sets that ship never begin as own ones do. */
async function takenIds(tx: Transaction, programId: string): Promise<ReadonlySet<string>> {
  const [sets, drafts] = [
    await tx.criteriaSet.findMany({ where: { programId }, distinct: ['id'], select: { id: true } }),
    await tx.criteriaDraft.findMany({ where: { programId }, select: { criteriaId: true } }),
  ]
  return new Set([...sets.map(({ id }) => id), ...drafts.map(({ criteriaId }) => criteriaId)])
}

/** Two sets of one title could not be told apart where one is chosen. */
async function refuseTakenTitle(tx: Transaction, programId: string, title: string, criteriaId: string | null): Promise<void> {
  const same = { equals: title.trim(), mode: 'insensitive' } as const
  const set = await tx.criteriaSet.findFirst({ where: { programId, title: same, ...(criteriaId !== null && { id: { not: criteriaId } }) }, select: { id: true } })
  const draft = await tx.criteriaDraft.findFirst({ where: { programId, title: same, ...(criteriaId !== null && { criteriaId: { not: criteriaId } }) }, select: { id: true } })
  const sentence = set ? 'There is a set of this title. Give yours another.' : 'A set of this title is being written. Go on with that one, or give yours another title.'
  if (set || draft) throw new Refusal('INVALID', sentence, { title: sentence })
}

/** 0 when there is none yet. */
async function newestVersion(tx: Transaction, programId: string, id: string): Promise<number> {
  const row = await tx.criteriaSet.findFirst({ where: { programId, id }, orderBy: { version: 'desc' }, select: { version: true } })
  return row?.version ?? 0
}

export type SavedDraft = {
  readonly draftId: string
  /** When the draft was saved that the form was opened with: whoever saved since is not written over unawares. */
  readonly seen: string
  readonly document: DraftCriteria
}

/**
 * Keeps a draft as typed, right or wrong.
 *
 * @returns when it was saved, for the next saving
 * @throws Refusal NOT_FOUND when it is gone or not the viewer's, CONFLICT when someone saved it since it was opened
 */
export async function saveDraft(viewer: Viewer, input: SavedDraft): Promise<{ seen: string }> {
  return db().$transaction((tx) => keep(tx, viewer, input))
}

async function keep(tx: Transaction, viewer: Viewer, { draftId, seen, document }: SavedDraft): Promise<{ seen: string; criteriaId: string }> {
  const where = { ...own(viewer), id: draftId }
  const before = await tx.criteriaDraft.findFirst({ where, select: lineSelect })
  if (!before) throw notFound()
  // A moment later than the one before, so that two savings never carry the same time.
  const updatedAt = new Date(Math.max(Date.now(), before.updatedAt.getTime() + 1))
  const { count } = await tx.criteriaDraft.updateMany({
    where: { programId: viewer.programId, id: draftId, updatedAt: new Date(seen) },
    data: { title: document.title, document: document as unknown as Prisma.InputJsonObject, updatedById: viewer.personId, updatedAt },
  })
  if (count === 0) throw savedMeanwhile((await tx.criteriaDraft.findFirst({ where, select: lineSelect })) ?? before)
  await recordAudit(tx, viewer, {
    action: 'criteria.save', subject: { type: 'criteria', id: before.criteriaId }, before: { title: before.title }, after: { draftId, title: document.title, rules: document.rules.length },
  })
  return { seen: updatedAt.toISOString(), criteriaId: before.criteriaId }
}

const savedMeanwhile = (row: LineRow): Refusal =>
  new Refusal('CONFLICT', `${fullName(row.updatedBy)} saved this draft after you opened it. Nothing of yours is saved, and it still stands in the boxes.`, { seen: row.updatedAt.toISOString() })

/** Throws a draft away; published versions stay. @throws Refusal NOT_FOUND when it is gone or not the viewer's */
export async function dropDraft(viewer: Viewer, input: { readonly draftId: string }): Promise<void> {
  await db().$transaction(async (tx) => {
    const row = await tx.criteriaDraft.findFirst({ where: { ...own(viewer), id: input.draftId }, select: { criteriaId: true, document: true } })
    if (!row) throw notFound()
    await tx.criteriaDraft.deleteMany({ where: { programId: viewer.programId, id: input.draftId } })
    await recordAudit(tx, viewer, {
      action: 'criteria.drop', subject: { type: 'criteria', id: row.criteriaId }, before: { draftId: input.draftId, document: row.document as Prisma.InputJsonObject },
    })
  })
}

/**
 * Publishes what is in the boxes as the next version of its set, which never changes again, and puts the draft away. Exercises keep the
 * version they were made with until someone chooses another.
 *
 * @throws Refusal NOT_FOUND when it is gone or not the viewer's, CONFLICT when someone saved or published it meanwhile, INVALID with a
 *   sentence at each box that is wrong
 */
export async function publishDraft(viewer: Viewer, input: SavedDraft): Promise<CriteriaKey> {
  const { programId } = viewer
  try {
    return await db().$transaction(async (tx) => {
      const { criteriaId } = await keep(tx, viewer, input)
      const before = await newestVersion(tx, programId, criteriaId)
      const key = { id: criteriaId, version: before + 1 }
      const set = await checked(tx, viewer, input.document, key, before)
      await tx.criteriaSet.create({ data: { programId, ...key, title: set.title, document: set as unknown as Prisma.InputJsonObject } })
      await tx.criteriaDraft.deleteMany({ where: { programId, id: input.draftId } })
      await recordAudit(tx, viewer, {
        action: 'criteria.publish', subject: { type: 'criteria', id: criteriaId }, ...(before > 0 && { before: { version: before } }),
        after: { version: key.version, title: set.title, rules: set.rules.length, draftId: input.draftId },
      })
      return key
    })
  } catch (error) {
    if (isTaken(error)) throw new Refusal('CONFLICT', 'This version was published in the meantime. What you typed still stands in the boxes.')
    throw error
  }
}

async function checked(tx: Transaction, viewer: Viewer, draft: DraftCriteria, key: CriteriaKey, before: number): Promise<CriteriaSet> {
  const read = readDraft(draft, key)
  if (!read.ok) throw invalid(read.problems)
  await refuseTakenTitle(tx, viewer.programId, read.value.title, key.id)
  if (draft.base) {
    const problems = copiedSourceProblems(draft, read.value, await there(tx, viewer, draft.base))
    if (Object.keys(problems).length > 0) throw invalid(problems)
  }
  if (before > 0 && sameSet(read.value, await criteriaSet(viewer.programId, key.id, before, tx))) {
    throw new Refusal('INVALID', `Nothing differs from version ${before}, which is published already.`)
  }
  return read.value
}

const invalid = (problems: BoxProblems): Refusal => new Refusal('INVALID', 'Some boxes need another look before this can be published.', problems)

const sameSet = (one: CriteriaSet, other: CriteriaSet): boolean => printOf(one) === printOf(other)
const printOf = ({ title, edition, system, passMark, rules }: CriteriaSet): string => JSON.stringify(draftOf({ id: '', version: 1, title, edition, system, passMark, rules }))

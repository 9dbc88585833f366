import 'server-only'
import { MOST_SNIPPETS } from '@/lib/schemas/snippet'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'

export type SnippetRecord = { readonly id: string; readonly body: string }

/** The viewer's own remarks kept for use again, oldest first, so that each keeps its place and number. Nobody else sees them. */
export async function listSnippets(viewer: Viewer): Promise<SnippetRecord[]> {
  if (!hasRole(viewer, 'instructor')) return []
  return db().commentSnippet.findMany({
    where: { programId: viewer.programId, personId: viewer.personId }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }], select: { id: true, body: true }, take: MOST_SNIPPETS,
  })
}

/**
 * Keeps a remark for use again. Keeping the same words twice keeps them once.
 *
 * @throws Refusal NOT_FOUND for anyone but an instructor, INVALID when there is no room for one more
 */
export async function addSnippet(viewer: Viewer, input: { readonly body: string }): Promise<SnippetRecord> {
  if (!hasRole(viewer, 'instructor')) throw notFound()
  const own = { programId: viewer.programId, personId: viewer.personId }
  return db().$transaction(async (tx) => {
    // Two tabs must not fill the last place at once: whoever adds one waits for the other here.
    await tx.$queryRaw`SELECT 1 FROM "Person" WHERE "programId" = ${own.programId}::uuid AND "id" = ${own.personId}::uuid FOR UPDATE`
    const kept = await tx.commentSnippet.findMany({ where: own, select: { id: true, body: true } })
    const same = kept.find(({ body }) => body === input.body)
    if (same) return same
    if (kept.length >= MOST_SNIPPETS) throw new Refusal('INVALID', `There is room for ${MOST_SNIPPETS} remarks. Remove one first.`)
    const snippet = await tx.commentSnippet.create({ data: { ...own, body: input.body }, select: { id: true, body: true } })
    await recordAudit(tx, viewer, { action: 'snippet.add', subject: { type: 'person', id: viewer.personId }, after: { snippetId: snippet.id } })
    return snippet
  })
}

/** Removes one of the viewer's own. @throws Refusal NOT_FOUND when it is not theirs, or gone */
export async function removeSnippet(viewer: Viewer, input: { readonly snippetId: string }): Promise<void> {
  await db().$transaction(async (tx) => {
    const { count } = await tx.commentSnippet.deleteMany({ where: { programId: viewer.programId, personId: viewer.personId, id: input.snippetId } })
    if (count === 0) throw notFound()
    await recordAudit(tx, viewer, { action: 'snippet.remove', subject: { type: 'person', id: viewer.personId }, before: { snippetId: input.snippetId } })
  })
}

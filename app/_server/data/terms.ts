import 'server-only'
import type { TermForm } from '@/lib/schemas/term-form'
import { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'

export type TermRecord = { readonly id: string; readonly name: string; readonly startsOn: Date; readonly endsOn: Date }

/** The program's terms, newest first. Empty for anyone but a coordinator. */
export async function listTerms(viewer: Viewer): Promise<TermRecord[]> {
  if (!hasRole(viewer, 'coordinator')) return []
  return db().term.findMany({ where: { programId: viewer.programId }, orderBy: { startsOn: 'desc' }, select: { id: true, name: true, startsOn: true, endsOn: true } })
}

/** Makes a term. @throws Refusal INVALID when there is one of this name */
export async function makeTerm(viewer: Viewer, { name, startsOn, endsOn }: TermForm): Promise<{ termId: string }> {
  if (!hasRole(viewer, 'coordinator')) throw notFound()
  const { programId } = viewer
  try {
    return await db().$transaction(async (tx) => {
      const { id } = await tx.term.create({ data: { programId, name, startsOn: new Date(startsOn), endsOn: new Date(endsOn) }, select: { id: true } })
      await recordAudit(tx, viewer, { action: 'term.make', subject: { type: 'term', id }, after: { name, startsOn, endsOn } })
      return { termId: id }
    })
  } catch (error) {
    if (!(error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002')) throw error
    const message = 'There is a term of this name. Choose another name.'
    throw new Refusal('INVALID', message, { name: message })
  }
}

import 'server-only'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import type { Transaction } from '../db'

export type AuditEntry = {
  readonly action: string
  readonly subject: { readonly type: string; readonly id: string }
  readonly before?: Prisma.InputJsonObject
  readonly after?: Prisma.InputJsonObject
}

/** Who changed something; `personId` null: a job of the server's own. */
export type Actor = Pick<Viewer, 'programId'> & { readonly personId: string | null }

/** Adds the audit row of a change; takes the change's own transaction, so neither is ever there without the other. */
export async function recordAudit(tx: Transaction, viewer: Actor, entry: AuditEntry): Promise<void> {
  await tx.auditEvent.create({
    data: {
      programId: viewer.programId,
      actorId: viewer.personId,
      action: entry.action,
      subjectType: entry.subject.type,
      subjectId: entry.subject.id,
      ...(entry.before && { before: entry.before }),
      ...(entry.after && { after: entry.after }),
    },
  })
}

import 'server-only'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'
import { coordinatedScope } from './scope'

/** The share of graded coupons that are offered to a second reader, from 0 to 1. For the coordinator; null for anyone else. */
export async function findSecondShare(viewer: Viewer): Promise<number | null> {
  const program = await db().program.findFirst({ where: coordinatedScope(viewer), select: { secondReadShare: true } })
  return program?.secondReadShare ?? null
}

/** Sets it, for coupons graded from now on. Those that wait already go on waiting. @throws Refusal NOT_FOUND for anyone but the coordinator */
export async function setSecondShare(viewer: Viewer, { share }: { share: number }): Promise<void> {
  await db().$transaction(async (tx) => {
    const before = await tx.program.findFirst({ where: coordinatedScope(viewer), select: { secondReadShare: true } })
    if (!before) throw notFound()
    const after = { secondReadShare: share }
    await tx.program.update({ where: { id: viewer.programId }, data: after })
    await recordAudit(tx, viewer, { action: 'program.second-share', subject: { type: 'program', id: viewer.programId }, before, after })
  })
}

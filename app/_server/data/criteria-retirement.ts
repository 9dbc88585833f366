import 'server-only'
import { isOwn } from '@/lib/criteria/draft/own-id'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound } from '../refusal'
import { recordAudit } from './audit'

/**
 * Takes a version of one of the program's own sets from choice, or offers it again. It stays readable as it was published, and exercises that
 * use it go on with it. Done twice it changes nothing.
 *
 * @throws Refusal NOT_FOUND for anyone but a coordinator, and for a set that ships with the application
 */
export async function setRetired(viewer: Viewer, { criteriaId, version, retired }: { criteriaId: string; version: number; retired: boolean }): Promise<void> {
  if (!hasRole(viewer, 'coordinator') || !isOwn(criteriaId)) throw notFound()
  const { programId, personId } = viewer
  await db().$transaction(async (tx) => {
    if (!(await tx.criteriaSet.findUnique({ where: { programId_id_version: { programId, id: criteriaId, version } }, select: { id: true } }))) throw notFound()
    const key = { programId, criteriaId, criteriaVersion: version }
    const { count } = retired
      ? await tx.criteriaRetirement.createMany({ data: [{ ...key, retiredById: personId }], skipDuplicates: true })
      : await tx.criteriaRetirement.deleteMany({ where: key })
    if (count > 0) await recordAudit(tx, viewer, { action: retired ? 'criteria.retire' : 'criteria.offer', subject: { type: 'criteria', id: criteriaId }, after: { version } })
  })
}

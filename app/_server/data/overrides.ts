import 'server-only'
import type { DecidedOverride } from '@/lib/schemas/override'
import { overrideProblem } from '@/lib/scoring/override'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { gradableCouponScope } from './scope'
import { holdSkill, refreshSkill } from './skills'

/**
 * An instructor's own verdict over the computed one of the look that stands, with the reason.
 *
 * Any instructor of the class may decide, as any of them may correct the look: they answer for the class together, and the decision
 * carries its maker's name. A decision is made once for a look; a correction is a new look, judged by its readings, and leaves the
 * decision behind with the one it replaces. The mark stays the computed one. The readiness estimate reads the decided verdict without the
 * look's margins, which do not explain it.
 *
 * @throws Refusal NOT_FOUND when the coupon is not the viewer's to grade, CONFLICT when another look stands now or it was decided
 *   already, INVALID when the verdict may not be decided
 */
export async function overrideVerdict(viewer: Viewer, input: DecidedOverride): Promise<{ couponId: string }> {
  const { programId } = viewer
  const where = { AND: [{ id: input.couponId }, gradableCouponScope(viewer)] }
  const found = await db().coupon.findFirst({ where, select: { studentId: true, exerciseId: true } })
  if (!found) throw notFound()
  const skill = { programId, ...found }
  try {
    await db().$transaction(async (tx) => {
      await holdSkill(tx, skill)
      const coupon = await tx.coupon.findFirst({
        where,
        select: {
          verdict: true,
          inspections: {
            where: { kind: 'instructor', supersededAt: null }, orderBy: { revision: 'desc' }, take: 1,
            select: { id: true, scorecard: { select: { verdict: true, override: { select: { verdict: true } } } } },
          },
        },
      })
      const look = coupon?.inspections[0]
      if (!coupon || !look?.scorecard) throw notFound()
      if (look.id !== input.inspectionId) throw new Refusal('CONFLICT', 'Another look at this coupon stands now. Read it before you decide; your reason is still here.')
      if (look.scorecard.override) throw decidedAlready()
      const problem = overrideProblem(look.scorecard.verdict, input.verdict)
      if (problem !== null) throw new Refusal('INVALID', problem, { verdict: problem })
      await tx.verdictOverride.create({ data: { programId, inspectionId: look.id, verdict: input.verdict, reason: input.reason, byId: viewer.personId } })
      await tx.coupon.update({ where: { programId_id: { programId, id: input.couponId } }, data: { verdict: input.verdict } })
      await refreshSkill(tx, skill)
      await recordAudit(tx, viewer, {
        action: 'verdict.override', subject: { type: 'coupon', id: input.couponId },
        before: { verdict: coupon.verdict }, after: { verdict: input.verdict, computed: look.scorecard.verdict, inspectionId: look.id, reason: input.reason },
      })
    })
  } catch (error) {
    if (isTaken(error)) throw decidedAlready()
    throw error
  }
  return { couponId: input.couponId }
}

const decidedAlready = (): Refusal =>
  new Refusal('CONFLICT', 'This verdict was decided already. To decide again, correct the inspection: the decision stays on record with the look it was made on.')

import 'server-only'
import { readStoredReadings } from '@/lib/schemas/readings'
import type { ComparedLook, WidthAt } from '@/lib/reports/eye-over-time'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { couponScope, settledCouponScope } from './scope'

/**
 * A student's latest coupons that they and an instructor both looked at, oldest first: their own for themselves, and for their staff those
 * that no look of the staff's own is still to come for. Empty when the student is not the viewer's to see.
 */
export async function listComparedLooks(viewer: Viewer, studentId: string, most: number): Promise<ComparedLook[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ studentId, verdict: { not: null }, selfVerdict: { not: null } }, couponScope(viewer), settledCouponScope(viewer)] },
    orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }],
    take: most,
    select: {
      id: true, verdict: true, selfVerdict: true,
      inspections: { where: { supersededAt: null, kind: { in: ['self', 'instructor'] } }, select: { kind: true, readings: true } },
    },
  })
  return rows.reverse().flatMap(({ id, verdict, selfVerdict, inspections }) => {
    const widths = (kind: 'self' | 'instructor'): WidthAt[] => widthsOf(inspections.find((each) => each.kind === kind)?.readings)
    return verdict && selfVerdict ? [{ key: id, own: { verdict: selfVerdict, widths: widths('self') }, theirs: { verdict, widths: widths('instructor') } }] : []
  })
}

function widthsOf(readings: unknown): WidthAt[] {
  if (readings === undefined) return []
  return readStoredReadings(readings).inspection.stations.flatMap(({ atMm, widthMm }) => (widthMm === undefined ? [] : [{ atMm, widthMm }]))
}
